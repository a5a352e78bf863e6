// Sets up a VLAN in one step: its row, whether it is the usual one, and the switch that asks for members in it.
// A design that has none yet is made to have one by a single undoable edit, as a remedy must be.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>

namespace streamwright::model {

struct SetUpVlan {
    Vlan row;
    bool usual = false;                // untagged on ports that say nothing
    std::optional<DeviceId> asked_by;  // becomes its querier
    std::optional<base::Ipv4> from;    // the querier's address; none: it asks from 0.0.0.0
    friend bool operator==(const SetUpVlan&, const SetUpVlan&) = default;
};

/// Refuses a number or a subnet that another VLAN has, a querier that is no switch, and an address outside the subnet.
base::Result<Delta> make(const Design& design, const SetUpVlan& edit);

}  // namespace streamwright::model
