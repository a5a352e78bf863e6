#include "core/analysis/facts/stream_walk.h"

#include <algorithm>

namespace streamwright::analysis {

using catalogue::GroupLookup;
using catalogue::UnknownGroups;

std::optional<Receiver> receiver_of(const graph::NetworkGraph& network, const VlanPaths& paths, int device,
                                    VlanIndex vlan) {
    const auto at = static_cast<std::size_t>(device);
    if (const int bridge = network.bridge_of_device[at]; bridge >= 0) return Receiver{bridge, -1};
    for (const int leaf : network.leaves_of_device[at])
        if (paths.leaves[static_cast<std::size_t>(leaf)].carries(vlan))
            return Receiver{network.leaves[static_cast<std::size_t>(leaf)].bridge, network.leaf_arc(leaf, false)};
    return std::nullopt;
}

StreamWalk::StreamWalk(const graph::NetworkGraph& network, const SpanningTrees& trees, const Forwarding& forwarding)
    : network_(network),
      trees_(trees),
      forwarding_(forwarding),
      arc_mark_(static_cast<std::size_t>(network.arc_count()), 0),
      bridge_mark_(network.bridges.size(), 0),
      at_bridge_(network.bridges.size()) {}

/// Goes on into the bridge at the end of a link, if that end takes frames in and was not reached before.
void StreamWalk::enter(const Tree& tree, int arc) {
    if (!network_.is_link_arc(arc) || !tree.forwards(arc / 2)) return;
    const int bridge = network_.bridge_after(arc);
    auto& mark = bridge_mark_[static_cast<std::size_t>(bridge)];
    if (mark == walk_) return;
    mark = walk_;
    open_.push_back({bridge, arc});
}

void StreamWalk::report(VlanIndex vlan, Receiver receiver, GroupName group, std::vector<Membership>& learned) {
    const auto& snooping = forwarding_.vlans[static_cast<std::size_t>(vlan)];
    const auto& tree = trees_.trees[static_cast<std::size_t>(vlan)];
    ++walk_;
    bridge_mark_[static_cast<std::size_t>(receiver.bridge)] = walk_;
    open_.assign(1, {receiver.bridge, -1});
    while (!open_.empty()) {
        const auto step = open_.back();
        open_.pop_back();
        const auto& bridge = snooping.bridges[static_cast<std::size_t>(step.bridge)];
        if (bridge.keeps_members) {
            const int back = step.came_by < 0 ? receiver.arc : step.came_by ^ 1;
            learned.push_back({step.bridge, back, group});
        }
        if (visits_) visits_->push_back({step.bridge, !bridge.snoops});
        const auto ways = bridge.snoops ? std::span<const int>(bridge.router_arcs) : snooping.out(step.bridge);
        for (const int arc : ways)
            if (step.came_by < 0 || arc != (step.came_by ^ 1)) enter(tree, arc);
    }
}

void StreamWalk::take(int arc, int came_by) {
    if (came_by >= 0 && arc == (came_by ^ 1)) return;
    auto& mark = arc_mark_[static_cast<std::size_t>(arc)];
    if (mark == walk_) return;
    mark = walk_;
    next_.push_back(arc);
}

/// What a bridge does with a packet: RFC 4541 2.1.2.
void StreamWalk::send(const VlanSnooping& vlan, const StreamWay& stream, const Step& step) {
    const auto& bridge = vlan.bridges[static_cast<std::size_t>(step.bridge)];
    next_.clear();
    const bool by_mac = bridge.lookup == GroupLookup::mac;
    bool known = false;
    for (const auto& member : at_bridge_[static_cast<std::size_t>(step.bridge)])
        known = known || by_mac || member.group == stream.group;
    const bool local = stream.group.link_local() || (by_mac && stream.group.shares_link_local_mac());
    const bool flooded = bridge.floods_all || local || (!known && bridge.unknown == UnknownGroups::flood);
    if (visits_) visits_->push_back({step.bridge, flooded});
    if (flooded) {
        for (const int arc : vlan.out(step.bridge)) take(arc, step.came_by);
        return;
    }
    for (const auto& member : at_bridge_[static_cast<std::size_t>(step.bridge)])
        if (member.arc >= 0 && (by_mac || member.group == stream.group)) take(member.arc, step.came_by);
    if (known || bridge.unknown == UnknownGroups::router_ports)
        for (const int arc : bridge.router_arcs) take(arc, step.came_by);
}

void StreamWalk::walk(const StreamWay& stream, std::span<const Membership> known, std::vector<int>& arcs) {
    ++walk_;
    if (!stream.on_network()) return;
    for (const auto& member : known) at_bridge_[static_cast<std::size_t>(member.bridge)].push_back(member);
    const auto& vlan = forwarding_.vlans[static_cast<std::size_t>(stream.vlan)];
    const auto& tree = trees_.trees[static_cast<std::size_t>(stream.vlan)];
    int start = stream.source_bridge.value_or(0);
    int first = -1;
    if (stream.source_leaf) {
        first = network_.leaf_arc(*stream.source_leaf, true);
        start = network_.bridge_after(first);
        arc_mark_[static_cast<std::size_t>(first)] = walk_;
        arcs.push_back(first);
    }
    bridge_mark_[static_cast<std::size_t>(start)] = walk_;
    open_.assign(1, {start, first});
    while (!open_.empty()) {
        const auto step = open_.back();
        open_.pop_back();
        send(vlan, stream, step);
        arcs.insert(arcs.end(), next_.begin(), next_.end());
        for (const int arc : next_) enter(tree, arc);
    }
    for (const auto& member : known) at_bridge_[static_cast<std::size_t>(member.bridge)].clear();
}

}  // namespace streamwright::analysis
