// Prompt. Where streams go: queriers, router ports, snooping state per VLAN and bridge, then the arcs of each stream
// that are loaded whether or not anyone subscribes, and those a subscription adds (RFC 4541).
#pragma once

#include "core/analysis/facts/spanning_tree.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace streamwright::analysis {

/// Snooping of one VLAN on one bridge.
struct BridgeSnooping {
    bool in_vlan = false;
    bool snoops = false;
    bool keeps_members = false;  // hears a querier, so that memberships do not fade
    bool floods_all = false;     // no snooping, or a type that floods when it hears no querier
    catalogue::UnknownGroups unknown = catalogue::UnknownGroups::router_ports;
    catalogue::GroupLookup lookup = catalogue::GroupLookup::ip;
    bool unstated = false;         // a fact that decides is not stated by its type; results say "not known"
    std::vector<int> router_arcs;  // arcs leaving this bridge toward router ports, sorted
    friend bool operator==(const BridgeSnooping&, const BridgeSnooping&) = default;
};

struct VlanSnooping {
    std::vector<int> queriers;            // bridges that ask, elected first; one a part of the network
    std::vector<int> querier_of;          // per bridge: the bridge whose queries it hears; -1: none
    std::vector<BridgeSnooping> bridges;  // per bridge
    /// Arcs out of each bridge that carry the VLAN and whose near end forwards, also into a blocked far end.
    std::vector<int> out_starts, out_arcs;  // per bridge + 1: ranges into out_arcs, sorted
    std::span<const int> out(int bridge) const {
        const auto at = static_cast<std::size_t>(bridge);
        return {out_arcs.data() + out_starts[at], out_arcs.data() + out_starts[at + 1]};
    }
    friend bool operator==(const VlanSnooping&, const VlanSnooping&) = default;
};

/// A group as switches tell it apart. Streams without a group each count as a group of their own.
struct GroupName {
    std::uint64_t name = 0;  // the address, or a number above all addresses
    bool stated() const { return name >> 32 == 0; }
    /// 224.0.0.0/24, flooded by every switch (RFC 4541 2.1.2).
    bool link_local() const { return stated() && name >> 8 == 0xE00000; }
    /// The low 23 bits that its group MAC address keeps (RFC 1112 6.4).
    std::uint64_t mac() const { return stated() ? name & 0x7FFFFF : name; }
    bool shares_link_local_mac() const { return stated() && mac() >> 8 == 0; }
    friend auto operator<=>(const GroupName&, const GroupName&) = default;
};

/// The way of one stream. A stream whose encoder is not on the network has no arcs.
struct StreamWay {
    VlanIndex vlan = 0;
    GroupName group;
    std::optional<int> source_leaf;    // or
    std::optional<int> source_bridge;  // an endpoint that is itself a bridge
    bool on_network() const { return source_leaf || source_bridge; }
    /// The bridge that it comes to first; only of streams on the network.
    int first_bridge(const graph::NetworkGraph& network) const {
        return source_bridge ? *source_bridge : network.leaves[static_cast<std::size_t>(*source_leaf)].bridge;
    }
    friend bool operator==(const StreamWay&, const StreamWay&) = default;
};

struct Forwarding {
    std::vector<VlanSnooping> vlans;  // per VLAN index
    std::vector<StreamWay> streams;   // per stream, by id
    friend bool operator==(const Forwarding&, const Forwarding&) = default;
};

/// The ways of some streams found again, for a network that differs at their encoders.
void find_ways_again(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, std::span<const int> streams,
                     std::vector<StreamWay>& ways);

/// One who would ask in a VLAN if nobody outranked it.
struct Asker {
    int bridge = 0;             // itself, or the one that its leaf hangs on
    bool itself = true;         // false: a device behind a leaf
    bool with_address = false;  // else it asks from 0.0.0.0
};
std::vector<Asker> would_ask(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const Tree&,
                             VlanIndex vlan);
/// As if this bridge asked in the VLAN, from an address, and nobody else in its part of the network. Nothing where it
/// would send no queries: it is not in the VLAN, or does not snoop and does not say that it asks all the same.
std::optional<VlanSnooping> snooping_asked_from(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                                const Tree&, VlanIndex vlan, int bridge);

/// An access port set by hand as router port stands for a multicast router behind it: every bridge sends that way.
/// A trunk port set by hand counts on its own bridge only.
Forwarding find_forwarding(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const SpanningTrees&);

}  // namespace streamwright::analysis
