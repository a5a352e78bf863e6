#include "core/analysis/facts/arc_sides.h"

namespace streamwright::analysis {

namespace sides_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

struct Ordering {
    const graph::NetworkGraph& network;
    const Tree& tree;
    const VlanSnooping& snooping;
    TreeOrder order;
    int next = 0;

    struct Step {
        int bridge, tried;  // how many of its arcs were tried
    };

    void enter(int bridge, std::vector<Step>& path) {
        order.position[at(bridge)] = next++;
        path.push_back({bridge, 0});
    }

    void number_part(int root) {
        const int low = next;
        std::vector<Step> path;
        enter(root, path);
        while (!path.empty()) {
            auto& step = path.back();
            const auto arcs = snooping.out(step.bridge);
            if (step.tried == static_cast<int>(arcs.size())) {
                order.branch_end[at(order.position[at(step.bridge)])] = next;
                path.pop_back();
                continue;
            }
            const int arc = arcs[at(step.tried++)];
            if (!network.is_link_arc(arc) || !tree.forwards(arc / 2)) continue;
            const int bridge = network.bridge_after(arc);
            if (order.position[at(bridge)] >= 0) continue;
            order.parent_arc[at(bridge)] = arc;
            enter(bridge, path);
        }
        for (int p = low; p < next; ++p) {
            order.part_low[at(p)] = low;
            order.part_high[at(p)] = next;
        }
    }
};

}  // namespace sides_detail

TreeOrder order_tree(const graph::NetworkGraph& network, const Tree& tree, const VlanSnooping& snooping) {
    const auto count = network.bridges.size();
    sides_detail::Ordering run{network, tree, snooping, {}};
    run.order.position.assign(count, -1);
    run.order.parent_arc.assign(count, -1);
    run.order.branch_end.assign(count, 0);
    run.order.part_low.assign(count, 0);
    run.order.part_high.assign(count, 0);
    run.order.heard.assign(count, false);
    for (const int querier : snooping.queriers)
        if (run.order.position[static_cast<std::size_t>(querier)] < 0) run.number_part(querier);
    for (std::size_t b = 0; b < count; ++b)
        if (run.order.position[b] < 0) run.number_part(static_cast<int>(b));
    for (std::size_t b = 0; b < count; ++b)
        run.order.heard[static_cast<std::size_t>(run.order.position[b])] = snooping.querier_of[b] >= 0;
    return std::move(run.order);
}

std::vector<bool> looped_parts(const graph::NetworkGraph& network, const Tree& tree, const TreeOrder& order) {
    using sides_detail::at;
    const auto part = [&](int bridge) { return at(order.part_low[at(order.position[at(bridge)])]); };
    std::vector<int> spare(network.bridges.size(), 0);  // per part: links beyond those of a tree
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i)
        if (tree.forwards(i)) ++spare[part(network.links[at(i)].a)];
    for (int b = 0; b < static_cast<int>(network.bridges.size()); ++b)
        if (order.parent_arc[at(b)] >= 0) --spare[part(b)];
    std::vector<bool> looped;
    for (int b = 0; b < static_cast<int>(network.bridges.size()); ++b) looped.push_back(spare[part(b)] > 0);
    return looped;
}

std::optional<ArcSides> sides_of(const graph::NetworkGraph& network, const VlanPaths& paths, const TreeOrder& order,
                                 VlanIndex vlan, int arc) {
    using sides_detail::at;
    ArcSides sides;
    if (!network.is_link_arc(arc)) {
        const auto& leaf = paths.leaves[at(arc / 2) - network.links.size()];
        if (network.bridge_after(arc) >= 0 || !leaf.carries(vlan)) return {};
        sides.leaf = true;
        sides.low = order.position[at(network.leaves[at(arc / 2) - network.links.size()].bridge)];
        sides.high = sides.low + 1;
    } else {
        const int to = network.bridge_after(arc), from = network.bridge_before(arc);
        const bool inward = order.parent_arc[at(to)] == arc;
        const bool outward = order.parent_arc[at(from)] == (arc ^ 1);
        if (!inward && !outward) return {};
        sides.outside = !inward;
        sides.low = order.position[at(inward ? to : from)];
        sides.high = order.branch_end[at(sides.low)];
    }
    sides.part_low = order.part_low[at(sides.low)];
    sides.part_high = order.part_high[at(sides.low)];
    return sides;
}

}  // namespace streamwright::analysis
