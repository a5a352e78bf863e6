#include "core/analysis/facts/querier_place.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis {

namespace querier_place_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

struct Trials {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
    const LinkLoads& loads;
    const std::stop_token& stop;

    const Tree& tree(VlanIndex vlan) const { return trees.trees[at(vlan)]; }

    /// Roots of the parts where streams of the VLAN enter.
    std::set<int> parts_with_streams(VlanIndex vlan) const {
        std::set<int> roots;
        for (const auto& way : forwarding.streams) {
            if (way.vlan != vlan || !way.on_network()) continue;
            roots.insert(tree(vlan).root_of[at(way.first_bridge(network))]);
        }
        return roots;
    }

    /// The switches that ask alone in their part, from an address.
    std::vector<int> lone_queriers(VlanIndex vlan) const {
        std::map<int, std::vector<Asker>> by_part;
        for (const auto& asker : would_ask(wiring, network, paths, tree(vlan), vlan))
            by_part[tree(vlan).root_of[at(asker.bridge)]].push_back(asker);
        const auto streams = parts_with_streams(vlan);
        std::vector<int> lone;
        for (const auto& [root, askers] : by_part)
            if (askers.size() == 1 && askers.front().itself && askers.front().with_address && streams.contains(root))
                lone.push_back(askers.front().bridge);
        std::sort(lone.begin(), lone.end());
        return lone;
    }

    std::vector<int> switches_beside(VlanIndex vlan, int querier) const {
        const auto& root_of = tree(vlan).root_of;
        std::vector<int> bridges;
        for (int b = 0; b < static_cast<int>(network.bridges.size()); ++b)
            if (b != querier && !network.bridges[at(b)].endpoint && root_of[at(b)] == root_of[at(querier)])
                bridges.push_back(b);
        return bridges;
    }

    /// Nothing if stopped.
    std::optional<QuerierPlace> judge(VlanIndex vlan, int querier) const {
        const auto now = fullest_arc(network, paths, loads, vlan);
        QuerierPlace place{vlan, querier, querier, now, now};
        const auto bridges = switches_beside(vlan, querier);
        if (now.arc < 0 || static_cast<std::int64_t>(bridges.size()) * network.arc_count() > most_querier_trials)
            return place;
        auto tried = forwarding;
        for (const int bridge : bridges) {
            if (stop.stop_requested()) return std::nullopt;
            auto snooping = snooping_asked_from(wiring, network, paths, tree(vlan), vlan, bridge);
            if (!snooping) continue;
            tried.vlans[at(vlan)] = std::move(*snooping);
            const auto fullest =
                fullest_arc(network, paths, find_link_loads(wiring, network, paths, trees, tried), vlan);
            if (fullest.wire >= place.with_best.wire) continue;
            place.best = bridge;
            place.with_best = fullest;
        }
        return place;
    }
};

}  // namespace querier_place_detail

FullestArc fullest_arc(const graph::NetworkGraph& network, const VlanPaths& paths, const LinkLoads& loads,
                       VlanIndex vlan) {
    FullestArc fullest;
    const auto look = [&](const PresetLoad& load, int arc) {
        const auto& wire = load.arcs[static_cast<std::size_t>(arc)].wire;
        if (fullest.arc < 0 || wire > fullest.wire) fullest = {arc, wire};
    };
    for (int arc = 0; arc < 2 * static_cast<int>(network.links.size()); ++arc) {
        const auto& carried = paths.links[static_cast<std::size_t>(arc / 2)].carried;
        if (!std::binary_search(carried.begin(), carried.end(), vlan)) continue;
        look(loads.idle, arc);
        for (const auto& preset : loads.presets) look(preset, arc);
    }
    return fullest;
}

std::optional<QuerierPlaces> find_querier_places(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                                 const VlanPaths& paths, const SpanningTrees& trees,
                                                 const Forwarding& forwarding, const LinkLoads& loads,
                                                 const std::stop_token& stop) {
    const querier_place_detail::Trials trials{wiring, network, paths, trees, forwarding, loads, stop};
    QuerierPlaces all;
    for (VlanIndex vlan = 0; vlan < static_cast<VlanIndex>(paths.vlans.size()); ++vlan) {
        if (!paths.vlans[static_cast<std::size_t>(vlan)]) continue;  // nobody can be set to ask in the nameless one
        for (const int querier : trials.lone_queriers(vlan)) {
            auto place = trials.judge(vlan, querier);
            if (!place) return std::nullopt;
            all.places.push_back(*place);
        }
    }
    return all;
}

}  // namespace streamwright::analysis
