// Prompt. Where streams go: queriers, router ports, snooping state per VLAN and bridge, then the arcs of each stream
// that are loaded whether or not anyone subscribes, and those a subscription adds (RFC 4541).
#pragma once

#include "core/analysis/facts/spanning_tree.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace streamwright::analysis {

/// Snooping of one VLAN on one bridge.
struct BridgeSnooping {
    bool in_vlan = false;
    bool snoops = false;
    catalogue::UnknownGroups unknown = catalogue::UnknownGroups::router_ports;
    catalogue::GroupLookup lookup = catalogue::GroupLookup::ip;
    bool unstated = false;                     // a fact that decides is not stated by its type; results say "not known"
    std::vector<int> router_arcs;              // arcs leaving this bridge toward router ports, sorted
    friend bool operator==(const BridgeSnooping&, const BridgeSnooping&) = default;
};

struct VlanSnooping {
    std::vector<int> queriers;                 // bridges that ask, elected first
    std::vector<BridgeSnooping> bridges;       // per bridge
    friend bool operator==(const VlanSnooping&, const VlanSnooping&) = default;
};

/// The way of one stream. A stream whose encoder is not on the network has no arcs.
struct StreamWay {
    VlanIndex vlan = 0;
    std::optional<int> source_leaf;            // or
    std::optional<int> source_bridge;          // an endpoint that is itself a bridge
    friend bool operator==(const StreamWay&, const StreamWay&) = default;
};

struct Forwarding {
    std::vector<VlanSnooping> vlans;           // per VLAN index
    std::vector<StreamWay> streams;            // per stream, by id
    friend bool operator==(const Forwarding&, const Forwarding&) = default;
};

Forwarding find_forwarding(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const SpanningTrees&);

}  // namespace streamwright::analysis
