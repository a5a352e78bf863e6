// The network facts of a design without some of its parts, kept ready between one failure and the next: what a failure
// leaves as it was is not worked out again.
#pragma once

#include "core/analysis/facts/forwarding.h"
#include "core/graph/network_cut.h"

#include <vector>

namespace streamwright::analysis {

/// The facts of the whole design that failures are worked out from.
struct WholeNetwork {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
};

class LostState {
public:
    explicit LostState(const WholeNetwork& whole);
    void apply(const graph::Lost& lost);

    const graph::NetworkCut& cut() const { return cut_; }
    const graph::NetworkGraph& network() const { return cut_.network(); }
    const std::vector<std::optional<base::BitRate>>& capacity() const { return capacity_.arcs; }
    const VlanPaths& paths() const { return paths_; }
    const SpanningTrees& trees() const { return trees_; }
    const Forwarding& forwarding() const { return forwarding_; }
    /// Only devices at the edge are touched: trees and snooping are those of the whole network.
    bool edge_only() const { return edge_only_; }
    /// What stands carries VLANs as before, and no stream has moved to another VLAN.
    bool vlans_stand() const { return vlans_stand_; }
    /// Streams whose way into the network differs.
    const std::vector<int>& moved_streams() const { return moved_streams_; }

private:
    static std::size_t at(int index) { return static_cast<std::size_t>(index); }
    bool touches_edge_only(const graph::Lost& lost) const;
    void restore();
    void take_capacity();
    void find_moved_streams();
    bool carries_as_before() const;

    WholeNetwork whole_;
    graph::NetworkCut cut_;
    LinkCapacity capacity_;
    VlanPaths paths_;
    SpanningTrees trees_;
    Forwarding forwarding_;
    std::vector<std::vector<int>> streams_of_device_;  // by encoder
    std::vector<bool> speaks_;                         // per device: asks or routes in some VLAN
    std::vector<int> moved_streams_, dark_arcs_;
    bool edge_only_ = true, vlans_stand_ = true;
};

}  // namespace streamwright::analysis
