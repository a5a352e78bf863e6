#include "core/analysis/facts/worst_input.h"

#include "core/analysis/facts/twins.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis {

namespace worst_input_detail {
std::size_t at(int index) { return static_cast<std::size_t>(index); }
}  // namespace worst_input_detail

WorstInput::WorstInput(const graph::Wiring& w, const graph::NetworkGraph& n, const VlanPaths& p, const SpanningTrees& t,
                       const Forwarding& f, const LinkLoads& l, const Compatibility& c, WorstFlow kind)
    : wiring(w), network(n), paths(p), trees(t), forwarding(f), loads(l), compatibility(c), flow(kind) {
    for (std::size_t v = 0; v < paths.vlans.size(); ++v)
        orders.push_back(order_tree(network, trees.trees[v], forwarding.vlans[v]));
    for (const auto& row : w.design.streams) pictures.push_back(row.kind == catalogue::StreamKind::video);
    streams.resize(paths.vlans.size());
    for (std::size_t s = 0; s < forwarding.streams.size(); ++s)
        if (forwarding.streams[s].on_network())
            streams[worst_input_detail::at(forwarding.streams[s].vlan)].push_back(static_cast<int>(s));
}

bool WorstInput::tagged_on(int arc, VlanIndex vlan) const {
    using worst_input_detail::at;
    if (network.is_link_arc(arc)) return paths.links[at(arc / 2)].a.tags(vlan);
    return paths.leaves[at(arc / 2) - network.links.size()].tags(vlan);
}

std::optional<WorstInput::Place> WorstInput::place_of(int device, VlanIndex vlan) const {
    using worst_input_detail::at;
    if (const int bridge = network.bridge_of_device[at(device)]; bridge >= 0) {
        if (!forwarding.vlans[at(vlan)].bridges[at(bridge)].in_vlan) return std::nullopt;
        return Place{bridge, -1};
    }
    for (const int leaf : network.leaves_of_device[at(device)])
        if (paths.leaves[at(leaf)].carries(vlan))
            return Place{network.leaves[at(leaf)].bridge, network.leaf_arc(leaf, false)};
    return std::nullopt;
}

std::vector<std::pair<VlanIndex, ArcSides>> WorstInput::sides(int arc) const {
    std::vector<std::pair<VlanIndex, ArcSides>> result;
    for (VlanIndex vlan = 0; vlan < vlan_count(); ++vlan)
        if (const auto side = sides_of(network, paths, orders[worst_input_detail::at(vlan)], vlan, arc))
            result.emplace_back(vlan, *side);
    return result;
}

/// Moves the class of the later twin to that of the earlier one.
void StreamClasses::join_twins(const WorstInput& input, std::map<std::uint64_t, std::vector<int>>& classes) {
    std::map<int, std::uint64_t> class_of;
    for (const auto& [name, streams] : classes)
        for (const int s : streams) class_of[s] = name;
    for (int s = 0; s < static_cast<int>(twins.size()); ++s) {
        const int twin = twins[worst_input_detail::at(s)];
        if (twin < s || !input.way(s).on_network() || !input.way(twin).on_network()) continue;
        twins_apart = twins_apart || input.way(s).vlan != input.way(twin).vlan;
        if (!class_of.contains(s) || !class_of.contains(twin) || class_of[s] == class_of[twin]) continue;
        auto moved = std::move(classes[class_of[twin]]);
        classes.erase(class_of[twin]);
        for (const int each : moved) class_of[each] = class_of[s];
        auto& into = classes[class_of[s]];
        into.insert(into.end(), moved.begin(), moved.end());
        std::ranges::sort(into);
    }
}

StreamClasses::StreamClasses(const WorstInput& input)
    : alone(input.forwarding.streams.size(), true), twins(twin_streams(input.wiring)) {
    for (std::size_t v = 0; v < input.streams.size(); ++v) {
        const bool by_mac = std::ranges::any_of(input.forwarding.vlans[v].bridges, [](const BridgeSnooping& bridge) {
            return bridge.in_vlan && bridge.lookup == catalogue::GroupLookup::mac;
        });
        std::map<std::uint64_t, std::vector<int>> classes;
        for (const int s : input.streams[v]) {
            const auto& group = input.way(s).group;
            classes[by_mac ? group.mac() : group.name].push_back(s);
        }
        join_twins(input, classes);
        auto& list = shared.emplace_back();
        for (auto& [name, streams] : classes) {
            if (streams.size() < 2) continue;
            for (const int s : streams) alone[worst_input_detail::at(s)] = false;
            list.push_back(std::move(streams));
        }
    }
}

}  // namespace streamwright::analysis
