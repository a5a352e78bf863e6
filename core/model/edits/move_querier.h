// Lets another switch ask for members in a VLAN: it becomes the querier, and the one that asked before asks no more.
// One edit, for between the two steps nobody, or both, would ask.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>

namespace streamwright::model {

struct MoveQuerier {
    VlanId vlan;
    DeviceId from, to;
    std::optional<base::Ipv4> address;  // to ask from; none: 0.0.0.0
    friend bool operator==(const MoveQuerier&, const MoveQuerier&) = default;
};

/// Refuses where `from` does not ask in the VLAN, `to` is no switch, or the address is outside the VLAN's subnet.
base::Result<Delta> make(const Design& design, const MoveQuerier& edit);

}  // namespace streamwright::model
