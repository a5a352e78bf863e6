// Prompt. Every address in use, sorted, so that doubles and strays stand side by side.
#pragma once

#include "core/base/net_address.h"
#include "core/graph/runs.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

struct HostUse {
    base::Ipv4 address;
    int device = 0;
    std::optional<model::VlanId> vlan;  // stated, else untagged on the switch port it is cabled to, else the usual one
    bool querier = false;               // the address of a querier
    friend auto operator<=>(const HostUse&, const HostUse&) = default;
};

struct GroupUse {
    base::Ipv4 group;
    base::MacAddress mac;  // RFC 1112 6.4
    int stream = 0;        // index by id
    std::optional<model::VlanId> vlan;
    friend auto operator<=>(const GroupUse&, const GroupUse&) = default;
};

struct AddressPlan {
    std::vector<HostUse> hosts;    // by address, then device
    std::vector<GroupUse> groups;  // by group, then stream
    friend bool operator==(const AddressPlan&, const AddressPlan&) = default;
};

/// The VLAN that an address of the device is in: the untagged one of the switch port that this port, or else its first
/// cabled network port, is cabled to; else the usual one. A switch's own address is in the usual one.
std::optional<model::VlanId> vlan_of_address(const graph::Wiring&, const graph::Runs&, int device,
                                             const std::optional<model::PortKey>& port);

AddressPlan find_address_plan(const graph::Wiring&, const graph::Runs&);

}  // namespace streamwright::analysis
