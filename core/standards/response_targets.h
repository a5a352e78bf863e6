// Delays that people notice: in talk, at a pointer, and between a picture and what stands beside it. Settings of a
// design, by their names; most are habits of the trade and none is a verdict.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

struct ResponseTarget {
    std::string_view name;
    base::Duration good;  // up to here nobody minds
    base::Duration most;  // beyond here people complain
    Citation source;
};
std::span<const ResponseTarget> response_targets();
const ResponseTarget* response_target(std::string_view name);  // null: not known

}  // namespace streamwright::standards
