// One stream's way through the bridges, step by step, given what each bridge learned from reports: the one truth about
// where multicast goes. It touches only the bridges and arcs that the stream or report reaches.
#pragma once

#include "core/analysis/facts/forwarding.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace streamwright::analysis {

/// Someone who wants a group: behind a leaf arc of a bridge, or the bridge itself (arc -1).
struct Receiver {
    int bridge = 0;
    int arc = -1;
    friend auto operator<=>(const Receiver&, const Receiver&) = default;
};

/// Where a device would receive in the VLAN; nothing where none of its network ports carries it.
std::optional<Receiver> receiver_of(const graph::NetworkGraph& network, const VlanPaths& paths, int device,
                                    VlanIndex vlan);

/// A bridge has learned that the group is wanted out of this arc (-1: by itself).
struct Membership {
    int bridge = 0;
    int arc = -1;
    GroupName group;
    friend auto operator<=>(const Membership&, const Membership&) = default;
};

/// What a walk or report has asked of a bridge. Flooded: what it did there depends on every way out, else on the
/// memberships and the router ports alone.
struct Visit {
    int bridge = 0;
    bool flooded = false;
};

class StreamWalk {
public:
    StreamWalk(const graph::NetworkGraph& network, const SpanningTrees& trees, const Forwarding& forwarding);

    /// A report travels toward router ports only, and everywhere through bridges that do not snoop; each snooping
    /// bridge that it reaches learns the port it came in by.
    void report(VlanIndex vlan, Receiver receiver, GroupName group, std::vector<Membership>& learned);

    /// Appends the arcs of the stream, each once; `known` holds the memberships of all groups of its group MAC address.
    void walk(const StreamWay& stream, std::span<const Membership> known, std::vector<int>& arcs);

    /// Notes the visits of each walk and report to come; null: no more.
    void watch(std::vector<Visit>* visits) { visits_ = visits; }

    /// Of the last walk.
    bool loaded(int arc) const { return arc_mark_[static_cast<std::size_t>(arc)] == walk_; }
    bool visited(int bridge) const { return bridge_mark_[static_cast<std::size_t>(bridge)] == walk_; }

private:
    struct Step {
        int bridge, came_by;  // the arc it came by; -1: it starts here
    };
    void enter(const Tree& tree, int arc);
    void send(const VlanSnooping& vlan, const StreamWay& stream, const Step& step);
    void take(int arc, int came_by);

    const graph::NetworkGraph& network_;
    const SpanningTrees& trees_;
    const Forwarding& forwarding_;
    std::vector<std::uint32_t> arc_mark_, bridge_mark_;
    std::uint32_t walk_ = 0;
    std::vector<Step> open_;
    std::vector<int> next_;                           // arcs chosen at one bridge
    std::vector<std::vector<Membership>> at_bridge_;  // of the walk under way
    std::vector<Visit>* visits_ = nullptr;
};

}  // namespace streamwright::analysis
