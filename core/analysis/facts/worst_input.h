// What every way to a worst case reads, and what its parts share.
#pragma once

#include "core/analysis/facts/arc_sides.h"
#include "core/analysis/facts/rate_table.h"
#include "core/analysis/facts/worst_case.h"

#include <cstdint>
#include <map>
#include <utility>
#include <vector>

namespace streamwright::analysis {

struct WorstInput {
    WorstInput(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const SpanningTrees&,
               const Forwarding&, const LinkLoads&, const Compatibility&, WorstFlow);

    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
    const LinkLoads& loads;
    const Compatibility& compatibility;
    WorstFlow flow;
    std::vector<TreeOrder> orders;          // per VLAN
    std::vector<std::vector<int>> streams;  // per VLAN, those on the network
    std::vector<bool> pictures;             // per stream

    VlanIndex vlan_count() const { return static_cast<VlanIndex>(orders.size()); }
    bool tagged_on(int arc, VlanIndex vlan) const;
    const StreamWay& way(int stream) const { return forwarding.streams[static_cast<std::size_t>(stream)]; }
    int source_bridge(int stream) const { return way(stream).first_bridge(network); }
    bool is_picture(int stream) const { return pictures[static_cast<std::size_t>(stream)]; }
    /// The arc leads to the leaf that the stream comes from.
    bool is_own_leaf(int stream, int arc) const {
        const auto& leaf = way(stream).source_leaf;
        return leaf && network.leaf_arc(*leaf, false) == arc;
    }
    /// Where a decoder hears a VLAN: its bridge, or its first leaf that carries it. Nothing if nowhere.
    struct Place {
        int bridge = 0, leaf_arc = -1;
    };
    std::optional<Place> place_of(int device, VlanIndex vlan) const;
    /// VLANs that the arc carries, with what lies on either side (arc_sides).
    std::vector<std::pair<VlanIndex, ArcSides>> sides(int arc) const;
};

/// Streams of one VLAN that come and stay away together: of one group, or of one group MAC address where some bridge
/// looks groups up by it, and twins, since who asks for one asks for both.
struct StreamClasses {
    explicit StreamClasses(const WorstInput& input);
    std::vector<std::vector<std::vector<int>>> shared;  // per VLAN: classes of two and more
    std::vector<bool> alone;                            // per stream: no other in its class
    std::vector<int> twins;                             // per stream; -1: none
    bool twins_apart = false;                           // some twins are in two VLANs

private:
    void join_twins(const WorstInput& input, std::map<std::uint64_t, std::vector<int>>& classes);
};

}  // namespace streamwright::analysis
