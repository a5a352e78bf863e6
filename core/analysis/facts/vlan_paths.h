// Prompt. Which VLANs each bridge port and link carries, and how they leave it (tagged or not).
#pragma once

#include "core/analysis/facts/link_capacity.h"
#include "core/graph/network_graph.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace streamwright::analysis {

/// Index into VlanPaths::vlans. Without any VLAN row the design has one nameless VLAN, index 0, untagged everywhere.
using VlanIndex = int;

struct PortVlans {
    std::optional<VlanIndex> untagged;
    std::vector<VlanIndex> tagged;  // sorted
    bool carries(VlanIndex vlan) const;
    bool tags(VlanIndex vlan) const;
    friend bool operator==(const PortVlans&, const PortVlans&) = default;
};

/// A link carries a VLAN only when both ends have it; tagged where both tag, untagged where both are untagged in it.
struct LinkVlans {
    PortVlans a, b;
    std::vector<VlanIndex> carried;  // sorted
    friend bool operator==(const LinkVlans&, const LinkVlans&) = default;
};

struct VlanPaths {
    std::vector<std::optional<model::VlanId>> vlans;  // by vid; none: the nameless one
    std::vector<LinkVlans> links;                     // per link of the network; down links carry nothing
    std::vector<PortVlans> leaves;  // per leaf: the bridge port's; a leaf that is down carries nothing
    std::optional<VlanIndex> index(std::optional<model::VlanId> vlan) const;
    friend bool operator==(const VlanPaths&, const VlanPaths&) = default;
};

VlanPaths find_vlan_paths(const graph::Wiring&, const graph::Runs&, const graph::NetworkGraph&, const LinkCapacity&);

}  // namespace streamwright::analysis
