// Moves one end of a cable to another port, or leaves it open, and carries the new bends with it.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>
#include <vector>

namespace streamwright::model {

enum class WhichEnd { a, b };

struct Reconnect {
    CableId cable;
    WhichEnd end = WhichEnd::a;
    std::optional<PortRef> port;  // none: left open
    std::optional<SheetId> sheet;
    std::vector<SheetPoint> bends;
    friend bool operator==(const Reconnect&, const Reconnect&) = default;
};

base::Result<Delta> make(const Design& design, const Reconnect& edit);

}  // namespace streamwright::model
