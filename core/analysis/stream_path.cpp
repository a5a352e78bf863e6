#include "core/analysis/stream_path.h"

#include "core/analysis/facts/stream_walk.h"

#include <algorithm>

namespace streamwright::analysis {

namespace stream_path_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// The arcs between two bridges of the VLAN's active tree; nothing where none leads there.
std::optional<std::vector<int>> between(const graph::NetworkGraph& network, const Tree& tree,
                                        const VlanSnooping& snooping, int from, int to) {
    std::vector<int> came_by(network.bridges.size(), -2), open{from};
    came_by[at(from)] = -1;
    for (std::size_t i = 0; i < open.size(); ++i)
        for (const int arc : snooping.out(open[i])) {
            if (!network.is_link_arc(arc) || !tree.forwards(arc / 2)) continue;
            const int next = network.bridge_after(arc);
            if (came_by[at(next)] != -2) continue;
            came_by[at(next)] = arc;
            open.push_back(next);
        }
    if (came_by[at(to)] == -2) return std::nullopt;
    std::vector<int> arcs;
    for (int bridge = to; came_by[at(bridge)] >= 0; bridge = network.bridge_before(came_by[at(bridge)]))
        arcs.push_back(came_by[at(bridge)]);
    std::reverse(arcs.begin(), arcs.end());
    return arcs;
}

}  // namespace stream_path_detail

std::optional<std::vector<int>> stream_path(const graph::NetworkGraph& network, const VlanPaths& paths,
                                            const SpanningTrees& trees, const Forwarding& forwarding, int stream,
                                            int decoder) {
    using namespace stream_path_detail;
    const auto& way = forwarding.streams[stream_path_detail::at(stream)];
    if (!way.on_network()) return std::nullopt;
    const auto receiver = receiver_of(network, paths, decoder, way.vlan);
    if (!receiver) return std::nullopt;
    const auto vlan = stream_path_detail::at(way.vlan);
    auto arcs =
        between(network, trees.trees[vlan], forwarding.vlans[vlan], way.first_bridge(network), receiver->bridge);
    if (!arcs) return std::nullopt;
    if (way.source_leaf) arcs->insert(arcs->begin(), network.leaf_arc(*way.source_leaf, true));
    if (receiver->arc >= 0) arcs->push_back(receiver->arc);
    return arcs;
}

}  // namespace streamwright::analysis
