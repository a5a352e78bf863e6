#include "core/analysis/tree_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis {

using catalogue::Bpdus;

model::CableId link_cable(const graph::Wiring& wiring, const graph::Runs& runs, const graph::Link& link) {
    return cable_id(wiring, runs.list[at(link.runs.front())].cables.front());
}

std::vector<base::Ref> bridge_refs(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                   const std::vector<int>& bridges) {
    std::vector<base::Ref> refs;
    for (const int bridge : bridges)
        refs.push_back(named(device_id(wiring, network.bridges[at(bridge)].devices.front())));
    return refs;
}

namespace tree_help_detail {

int far_bridge(const graph::NetworkGraph& network, int link, int bridge) {
    return network.links[at(link)].a == bridge ? network.links[at(link)].b : network.links[at(link)].a;
}

}  // namespace tree_help_detail

ActiveForest active_forest(const graph::NetworkGraph& network, const Tree& tree) {
    const auto bridges = network.bridges.size();
    std::vector<std::vector<int>> links_of(bridges);
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
        if (!tree.forwards(i)) continue;
        links_of[at(network.links[at(i)].a)].push_back(i);
        links_of[at(network.links[at(i)].b)].push_back(i);
    }
    ActiveForest forest{std::vector<int>(bridges, -1), std::vector<int>(bridges, -1)};
    for (int top = 0; top < static_cast<int>(bridges); ++top) {
        if (forest.depth[at(top)] >= 0) continue;
        forest.depth[at(top)] = 0;
        std::vector<int> open{top};
        for (std::size_t next = 0; next < open.size(); ++next)
            for (const int link : links_of[at(open[next])]) {
                const int there = tree_help_detail::far_bridge(network, link, open[next]);
                if (forest.depth[at(there)] >= 0) continue;
                forest.depth[at(there)] = forest.depth[at(open[next])] + 1;
                forest.up[at(there)] = link;
                open.push_back(there);
            }
    }
    return forest;
}

std::optional<std::vector<int>> active_way(const graph::NetworkGraph& network, const ActiveForest& forest, int from,
                                           int to) {
    std::vector<int> way;
    while (from != to) {
        int& lower = forest.depth[at(from)] >= forest.depth[at(to)] ? from : to;
        const int link = forest.up[at(lower)];
        if (link < 0) return std::nullopt;
        way.push_back(link);
        lower = tree_help_detail::far_bridge(network, link, lower);
    }
    return way;
}

std::optional<int> bridge_heard(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                const LinkCapacity& capacity, LinkEnd end) {
    const auto& link = network.links[at(end.link)];
    const int own = end.at_a ? link.a : link.b;
    std::vector<int> open{end.at_a ? link.b : link.a};
    std::set<int> seen{own, open.front()};
    if (open.front() == own) return std::nullopt;
    for (std::size_t next = 0; next < open.size(); ++next) {
        const int here = open[next];
        const auto bpdus = bpdus_of(wiring, network.bridges[at(here)]);
        if (bpdus == Bpdus::run) return here;
        if (bpdus == Bpdus::dropped) continue;
        for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
            const auto& row = network.links[at(i)];
            if ((row.a != here && row.b != here) || !capacity.arcs[at(network.link_arc(i, true))]) continue;
            const int there = row.a == here ? row.b : row.a;
            if (seen.insert(there).second) open.push_back(there);
        }
    }
    return std::nullopt;
}

std::vector<RootPart> root_parts(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                 const SpanningTrees& trees) {
    std::map<int, std::pair<std::set<int>, std::set<int>>> parts;
    for (const auto& tree : trees.trees) {
        for (int b = 0; b < static_cast<int>(tree.root_of.size()); ++b) {
            const int root = tree.root_of[at(b)];
            if (root >= 0 && bpdus_of(wiring, network.bridges[at(b)]) == Bpdus::run) parts[root].first.insert(b);
        }
        for (const auto& end : tree.blocked()) {
            const int root = tree.root_of[at(network.links[at(end.link)].a)];
            if (root >= 0) parts[root].second.insert(end.link);
        }
    }
    std::vector<RootPart> list;
    for (const auto& [root, held] : parts) {
        if (bpdus_of(wiring, network.bridges[at(root)]) != Bpdus::run) continue;
        auto bridges = held.first;
        bridges.insert(root);
        list.push_back({root, {bridges.begin(), bridges.end()}, {held.second.begin(), held.second.end()}});
    }
    return list;
}

std::vector<LinkEnd> uncosted_ends(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                   const LinkCapacity& capacity, int bridge) {
    std::vector<LinkEnd> ends;
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
        const auto& link = network.links[at(i)];
        if (link.a == link.b || !capacity.arcs[at(network.link_arc(i, true))]) continue;
        for (const bool at_a : {true, false}) {
            if ((at_a ? link.a : link.b) != bridge) continue;
            const auto& ports = at_a ? link.a_ports : link.b_ports;
            const bool costed = std::any_of(ports.begin(), ports.end(), [&](const auto port) {
                const auto* set = wiring.port_override(port);
                return set && set->path_cost;
            });
            if (!costed) ends.push_back({i, at_a});
        }
    }
    return ends;
}

graph::PortAt end_port(const graph::NetworkGraph& network, LinkEnd end) {
    const auto& link = network.links[at(end.link)];
    return (end.at_a ? link.a_ports : link.b_ports).front();
}

}  // namespace streamwright::analysis
