// Lengths that the trade reckons with where standards give only electrical limits, or none. All may be overridden by a
// type or a setting: they give advice, never a verdict.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

struct TradeLength {
    std::string_view name;  // "HDMI 18 Gbit/s, passive copper"
    base::Length from;      // the careful figure
    base::Length to;        // the hopeful one
    Citation source;
};
std::span<const TradeLength> trade_lengths();
const TradeLength* trade_length(std::string_view name);  // null: not known

}  // namespace streamwright::standards
