#include "core/analysis/facts/lost_state.h"

#include <algorithm>

namespace streamwright::analysis {

LostState::LostState(const WholeNetwork& whole)
    : whole_(whole),
      cut_(whole.wiring, whole.runs, whole.network),
      capacity_(whole.capacity),
      paths_(whole.paths),
      trees_(whole.trees),
      forwarding_(whole.forwarding),
      streams_of_device_(whole.wiring.devices.size()),
      speaks_(whole.wiring.devices.size()) {
    const auto& streams = whole.wiring.streams;
    for (int s = 0; s < static_cast<int>(streams.size()); ++s)
        if (const int encoder = streams[at(s)].encoder; encoder >= 0) streams_of_device_[at(encoder)].push_back(s);
    for (std::size_t i = 0; i < speaks_.size(); ++i) {
        const auto& set = whole.wiring.devices[i].row->bridging;
        speaks_[i] = !set.queriers.empty() || !set.multicast_router_vlans.empty();
    }
}

/// A device that hangs on a bridge changes nothing for others, unless it asks or routes, or its port stands for one
/// that does.
bool LostState::touches_edge_only(const graph::Lost& lost) const {
    if (!cut_.links().empty()) return false;
    for (const int device : lost.devices)
        if (whole_.network.bridge_of_device[at(device)] >= 0) return false;
    for (const int device : cut_.devices())
        if (speaks_[at(device)]) return false;
    return std::none_of(cut_.leaves().begin(), cut_.leaves().end(), [&](int leaf) {
        const auto* set = whole_.wiring.port_override(whole_.network.leaves[at(leaf)].bridge_port);
        return set && set->router_port;
    });
}

void LostState::restore() {
    for (const int arc : dark_arcs_) capacity_.arcs[at(arc)] = whole_.capacity.arcs[at(arc)];
    dark_arcs_.clear();
    if (edge_only_) {
        for (const int stream : moved_streams_) forwarding_.streams[at(stream)] = whole_.forwarding.streams[at(stream)];
    } else {
        paths_ = whole_.paths;
        trees_ = whole_.trees;
        forwarding_ = whole_.forwarding;
    }
    moved_streams_.clear();
}

void LostState::take_capacity() {
    const auto set = [&](int arc, std::optional<base::BitRate> rate) {
        for (const int each : {arc, arc + 1}) {
            capacity_.arcs[at(each)] = rate;
            dark_arcs_.push_back(each);
        }
    };
    for (const int link : cut_.links()) {
        std::optional<base::BitRate> sum;
        for (const int run : network().links[at(link)].runs)
            if (const auto rate = capacity_.runs[at(run)].rate) sum = sum.value_or(base::BitRate{}) + *rate;
        set(network().link_arc(link, true), sum);
    }
    for (const int leaf : cut_.leaves()) set(network().leaf_arc(leaf, true), std::nullopt);
}

void LostState::find_moved_streams() {
    if (edge_only_) {
        for (const int device : cut_.devices()) {
            const auto& streams = streams_of_device_[at(device)];
            moved_streams_.insert(moved_streams_.end(), streams.begin(), streams.end());
        }
        find_ways_again(whole_.wiring, network(), paths_, moved_streams_, forwarding_.streams);
    } else {
        for (int s = 0; s < static_cast<int>(forwarding_.streams.size()); ++s)
            if (forwarding_.streams[at(s)] != whole_.forwarding.streams[at(s)]) moved_streams_.push_back(s);
    }
}

bool LostState::carries_as_before() const {
    for (const int s : moved_streams_)
        if (forwarding_.streams[at(s)].on_network() &&
            forwarding_.streams[at(s)].vlan != whole_.forwarding.streams[at(s)].vlan)
            return false;
    if (edge_only_) return true;
    for (std::size_t i = 0; i < paths_.links.size(); ++i)
        if (!network().links[i].gone() && paths_.links[i] != whole_.paths.links[i]) return false;
    for (std::size_t i = 0; i < paths_.leaves.size(); ++i)
        if (!cut_.leaf_gone(static_cast<int>(i)) && paths_.leaves[i] != whole_.paths.leaves[i]) return false;
    return true;
}

void LostState::apply(const graph::Lost& lost) {
    restore();
    cut_.apply(lost);
    take_capacity();
    edge_only_ = touches_edge_only(lost);
    if (!edge_only_) {
        paths_ = find_vlan_paths(whole_.wiring, whole_.runs, network(), capacity_);
        trees_ = find_spanning_trees(whole_.wiring, whole_.runs, network(), capacity_, paths_);
        forwarding_ = find_forwarding(whole_.wiring, network(), paths_, trees_);
    }
    find_moved_streams();
    vlans_stand_ = carries_as_before();
}

}  // namespace streamwright::analysis
