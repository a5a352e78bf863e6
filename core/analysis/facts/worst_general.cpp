#include "core/analysis/facts/worst_general.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace general_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

int group_of_need(const SiteSet& need, int groups) {
    int group = 0;
    need.each([&](int element) { group = element % groups; });
    return group;
}

}  // namespace general_detail

WorstGeneral::WorstGeneral(const WorstInput& input, const StreamClasses& classes, RateTable& rates)
    : input_(input),
      classes_(classes),
      rates_(rates),
      cells_(input),
      walk_(input.network, input.trees, input.forwarding),
      idle_mark_(input.forwarding.streams.size(), -1) {
    using general_detail::at;
    for (VlanIndex v = 0; v < input.vlan_count(); ++v) {
        readers_.emplace_back(input.network, input.paths, input.trees.trees[at(v)], input.forwarding.vlans[at(v)],
                              input.orders[at(v)], v, cells_.has_inputs()[at(v)]);
        auto& sources = sources_.emplace_back(input.network.bridges.size());
        for (const int s : input.streams[at(v)])
            if (classes.alone[at(s)] || input.flow == WorstFlow::paths_only)
                sources[at(input.source_bridge(s))].push_back(s);
    }
}

Weight WorstGeneral::parts(const Problem& p, int stream) const {
    return rates_.parts(stream, input_.tagged_on(p.arc, input_.way(stream).vlan));
}

bool WorstGeneral::is_idle(int arc, int stream) const { return idle_mark_[general_detail::at(stream)] == arc; }

std::vector<bool> WorstGeneral::kinds_showing(const std::vector<int>& streams) const {
    std::vector<bool> kinds;
    for (int kind = 0; kind < static_cast<int>(input_.compatibility.takes.size()); ++kind)
        kinds.push_back(std::ranges::any_of(streams, [&](int s) { return input_.compatibility.shows(kind, s); }));
    return kinds;
}

void WorstGeneral::judge(int arc, ArcWorst& worst, std::optional<int> most) {
    using general_detail::at;
    const int bridge = input_.network.bridge_before(arc);
    const bool forwarded = input_.flow == WorstFlow::forwarded;
    if (bridge < 0 && forwarded) return;
    if (forwarded)
        for (const int stream : input_.loads.idle.arcs[at(arc)].streams) idle_mark_[at(stream)] = arc;
    Problem p{arc, cells_.of_arc(arc, readers_), {}, {}, {}, {}, {}};
    for (const auto& cell : p.cells.cells()) p.routing.cells.push_back(static_cast<int>(cell.slots.size()));
    const bool counted = !most || count_beyond(p);
    if (counted) p.routing.most = most;
    for (VlanIndex vlan = 0; vlan < input_.vlan_count(); ++vlan) {
        if (!forwarded) {
            add_paths(p, vlan);
            continue;
        }
        if (!std::ranges::binary_search(input_.forwarding.vlans[at(vlan)].out(bridge), arc)) continue;
        if (!readers_[at(vlan)].is_looped(bridge)) {
            add_alone(p, vlan);
            for (const auto& streams : classes_.shared[at(vlan)]) add_class(p, vlan, streams);
            continue;
        }
        for (const auto& list : sources_[at(vlan)])
            for (const int s : list) add_tried(p, vlan, {s});
        for (const auto& streams : classes_.shared[at(vlan)]) add_tried(p, vlan, streams);
    }
    if (p.asked.empty()) return;
    read(p, choose_routing(p.routing), worst);
    worst.at_most = worst.at_most || !counted;
}

const CrossingReader::Behind& WorstGeneral::behind(Problem& p, VlanIndex vlan, const GroupView& view) const {
    auto found = p.behind.find({vlan, view});
    if (found == p.behind.end())
        found = p.behind
                    .emplace(std::pair(vlan, view),
                             readers_[general_detail::at(vlan)].behind(p.arc, view, p.cells.has_inputs_here(vlan)))
                    .first;
    return found->second;
}

void WorstGeneral::add_alone(Problem& p, VlanIndex vlan) {
    using general_detail::at;
    for (const bool local_mac : {false, true}) {
        std::map<std::pair<int, int>, std::vector<int>> like;  // by crossing and kind
        const auto wanted = [&](int s) {
            const auto& group = input_.way(s).group;
            return group.shares_link_local_mac() == local_mac && !group.link_local() && !is_idle(p.arc, s) &&
                   !input_.is_own_leaf(s, p.arc);
        };
        const auto any = [&](const auto& list) { return std::ranges::any_of(list, wanted); };
        if (std::ranges::none_of(sources_[at(vlan)], any)) continue;
        const auto& all = behind(p, vlan, {1, 0, local_mac});
        for (const auto& [bridge, crossing] : all.bridges)
            for (const int s : sources_[at(vlan)][at(bridge)])
                if (wanted(s)) like[{crossing, input_.compatibility.stream_kind[at(s)]}].push_back(s);
        for (auto& [key, streams] : like) add_like(p, vlan, all.crossings[at(key.first)], std::move(streams));
    }
}

/// Any one input beyond, whatever the bridges do.
void WorstGeneral::add_paths(Problem& p, VlanIndex vlan) {
    using general_detail::at;
    const auto side = sides_of(input_.network, input_.paths, input_.orders[at(vlan)], vlan, p.arc);
    const bool from_leaf = !input_.network.is_link_arc(p.arc) && p.arc % 2 == 0;
    if (!side && !from_leaf) return;
    std::map<int, std::vector<int>> by_kind;
    for (const int s : input_.streams[at(vlan)]) {
        const int position = input_.orders[at(vlan)].position[at(input_.source_bridge(s))];
        const bool own = input_.is_own_leaf(s, p.arc | 1);
        const bool comes = from_leaf ? own : side->leaf ? !own && side->part(position) : side->behind(position);
        if (comes) by_kind[input_.compatibility.stream_kind[at(s)]].push_back(s);
    }
    Crossing crossing;
    crossing.need(readers_[at(vlan)].beyond(p.arc));
    for (auto& [kind, streams] : by_kind) add_like(p, vlan, crossing, std::move(streams));
}

void WorstGeneral::add_like(Problem& p, VlanIndex vlan, Crossing crossing, std::vector<int> streams) {
    using general_detail::at;
    Asked asked;
    asked.askable = {vlan, {kinds_showing({streams.front()})}};
    const int kind = input_.compatibility.stream_kind[at(streams.front())];
    auto known = p.occupied.find({vlan, kind});
    if (known == p.occupied.end())
        known = p.occupied.emplace(std::pair(vlan, kind), p.cells.occupied(asked.askable)).first;
    crossing.keep(known->second);
    auto across = ways_across(crossing);
    if (!across.complete)
        for (const int s : streams) asked.unexplored += parts(p, s);
    for (auto& needs : across.ways) asked.ways.push_back({std::move(needs), {}, {}, 0});
    asked.like = std::move(streams);
    pose(p, std::move(asked));
}

int WorstGeneral::need_id(Problem& p, std::vector<int> cells) {
    const auto id = p.need_ids.try_emplace(cells, static_cast<int>(p.need_ids.size()));
    if (id.second) p.routing.needs.push_back(std::move(cells));
    return id.first->second;
}

/// By falling rate, no more than inputs could bring.
void WorstGeneral::keep_heaviest(const Problem& p, const RoutingDemand& demand, std::vector<int>& streams) const {
    using general_detail::at;
    std::size_t most = 0;
    for (const auto& way : demand.ways) {
        auto fewest = streams.size();
        for (const int need : way.needs) {
            std::size_t inputs = 0;
            for (const int cell : p.routing.needs[at(need)]) inputs += at(p.routing.cells[at(cell)]);
            fewest = std::min(fewest, inputs);
        }
        most = std::max(most, fewest);
    }
    const auto heavier = [&](int a, int b) { return std::pair(-parts(p, a), a) < std::pair(-parts(p, b), b); };
    std::ranges::partial_sort(streams, streams.begin() + static_cast<std::ptrdiff_t>(most), heavier);
    streams.resize(most);
}

/// Inputs for pictures beyond the arc count. False if some are beyond in one VLAN and not in another.
bool WorstGeneral::count_beyond(Problem& p) const {
    using general_detail::at;
    std::vector<SiteSet> beyond;
    for (const auto& reader : readers_) beyond.push_back(reader.beyond(p.arc));
    const auto is_picture_kind = [&](int kind) {
        for (int s = 0; s < static_cast<int>(input_.pictures.size()); ++s)
            if (input_.is_picture(s) && input_.compatibility.shows(kind, s)) return true;
        return false;
    };
    bool clear = true;
    for (const auto& cell : p.cells.cells()) {
        bool some = false, all = true;
        for (std::size_t v = 0; v < beyond.size(); ++v) {
            if (cell.sites[v] < 0) continue;
            some = some || beyond[v].has(cell.sites[v]);
            all = all && beyond[v].has(cell.sites[v]);
        }
        const bool pictures = some && is_picture_kind(cell.kind);
        p.routing.counted.push_back(pictures);
        clear = clear && (!pictures || all);
    }
    return clear;
}

void WorstGeneral::pose(Problem& p, Asked asked) {
    if (asked.ways.empty() && asked.unexplored == 0) return;
    RoutingDemand demand;
    demand.unexplored = asked.unexplored;
    if (asked.unexplored > 0)
        demand.unexplored_need = need_id(p, p.cells.meeting(asked.askable, p.cells.occupied(asked.askable)));
    Weight most = 0;
    for (const auto& way : asked.ways) most = std::max(most, way.gain);
    for (const auto& way : asked.ways) {
        RoutingWay each;
        each.less = most - way.gain;
        for (const auto& need : way.needs) {
            each.needs.push_back(need_id(p, p.cells.meeting(asked.askable, need)));
            if (asked.askable.groups() > 1)
                each.apart.push_back(general_detail::group_of_need(need, asked.askable.groups()));
        }
        demand.ways.push_back(std::move(each));
    }
    keep_heaviest(p, demand, asked.like);
    if (asked.like.empty()) demand.weights.push_back(most);
    for (const int s : asked.like) demand.weights.push_back(parts(p, s));
    p.routing.demands.push_back(std::move(demand));
    p.asked.push_back(std::move(asked));
}

void WorstGeneral::read(const Problem& p, const RoutingChoice& choice, ArcWorst& worst) {
    using general_detail::at;
    std::vector<std::size_t> used(p.routing.cells.size(), 0);
    std::vector<int> lost;
    for (const auto& taken : choice.taken) {
        const auto& asked = p.asked[at(taken.demand)];
        const auto& way = asked.ways[at(taken.way)];
        const auto& rule = p.routing.demands[at(taken.demand)].ways[at(taken.way)];
        worst.routed.insert(worst.routed.end(), way.adds.begin(), way.adds.end());
        if (!asked.like.empty()) worst.routed.push_back(asked.like[at(taken.stream)]);
        lost.insert(lost.end(), way.loses.begin(), way.loses.end());
        for (std::size_t i = 0; i < taken.cells.size(); ++i) {
            std::size_t first = 0;
            while (first < i && (taken.cells[first] != taken.cells[i] || !rule.one_input(first, i))) ++first;
            if (first < i) continue;
            const auto& cell = p.cells.cells()[at(taken.cells[i])];
            const auto& slot = input_.compatibility.slots[at(cell.slots[used[at(taken.cells[i])]++])];
            int stream = asked.like.empty() ? -1 : asked.like[at(taken.stream)];
            if (stream < 0)
                stream = *std::ranges::find_if(
                    asked.of_group[at(p.cells.group_asked(asked.askable, way.needs[i], taken.cells[i]))],
                    [&](int s) { return input_.compatibility.shows(cell.kind, s); });
            worst.witness.push_back({stream, slot.device, slot.input});
        }
    }
    if (!lost.empty()) {
        std::ranges::sort(lost);
        std::erase_if(worst.unasked, [&](int s) { return std::ranges::binary_search(lost, s); });
        const auto tagged = [&](int s) { return input_.tagged_on(p.arc, input_.way(s).vlan); };
        worst.wire = rates_.sum(worst.unasked, tagged);
    }
    if (choice.at_most <= choice.gain && rates_.parts_exact()) return;
    worst.at_most = true;
    worst.wire = input_.loads.idle.arcs[at(p.arc)].wire + base::Rate(rates_.whole(choice.at_most));
}

}  // namespace streamwright::analysis
