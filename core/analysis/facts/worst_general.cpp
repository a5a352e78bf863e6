#include "core/analysis/facts/worst_general.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace general_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

constexpr std::size_t most_units = 6;    // a class of more is looked at in part: 64 combinations
constexpr std::size_t most_splits = 64;  // of the needs of a way by groups

/// Whoever meets the needs of one meets those of the other.
bool harder(const NeedList& one, const NeedList& other) {
    return std::ranges::all_of(other, [&](const SiteSet& need) {
        return std::ranges::any_of(one, [&](const SiteSet& each) { return each.within(need); });
    });
}

/// Leaves out ways that gain nothing, or no more than an easier one.
template <class Way>
void keep_useful(std::vector<Way>& ways) {
    std::erase_if(ways, [](const Way& way) { return way.gain <= 0; });
    std::vector<Way> kept;
    for (auto& way : ways) {
        const auto beats = [](const Way& a, const Way& b) { return a.gain >= b.gain && harder(b.needs, a.needs); };
        if (std::ranges::any_of(kept, [&](const Way& each) { return beats(each, way); })) continue;
        std::erase_if(kept, [&](const Way& each) { return beats(way, each); });
        kept.push_back(std::move(way));
    }
    ways = std::move(kept);
}

/// The needs with each met by one group only, for an input asks for one group.
std::vector<NeedList> split_by_group(const NeedList& needs, int groups) {
    std::vector<NeedList> lists{{}};
    for (const auto& need : needs) {
        std::vector<NeedList> longer;
        for (int g = 0; g < groups; ++g) {
            auto part = need;
            auto others = need;
            need.each([&](int element) {
                if (element % groups == g) return;
                SiteSet one = need;
                one.drop(one);
                one.add(element);
                part.drop(one);
            });
            if (part.empty()) continue;
            for (auto list : lists) {
                list.push_back(part);
                longer.push_back(std::move(list));
            }
        }
        lists = std::move(longer);
        if (lists.size() > most_splits) return {};
    }
    return lists;
}

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

void WorstGeneral::judge(int arc, ArcWorst& worst) {
    using general_detail::at;
    const int bridge = input_.network.bridge_before(arc);
    const bool forwarded = input_.flow == WorstFlow::forwarded;
    if (bridge < 0 && forwarded) return;
    if (forwarded)
        for (const int stream : input_.loads.idle.arcs[at(arc)].streams) idle_mark_[at(stream)] = arc;
    Problem p{arc, cells_.of_arc(arc, readers_), {}, {}, {}, {}};
    for (const auto& cell : p.cells.cells()) p.routing.cells.push_back(static_cast<int>(cell.slots.size()));
    for (VlanIndex vlan = 0; vlan < input_.vlan_count(); ++vlan) {
        if (!forwarded) {
            add_paths(p, vlan);
            continue;
        }
        if (!std::ranges::binary_search(input_.forwarding.vlans[at(vlan)].out(bridge), arc)) continue;
        if (readers_[at(vlan)].is_forest()) {
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
        const auto behind = readers_[at(vlan)].behind(p.arc, {1, 0, local_mac});
        for (const auto& [bridge, crossing] : behind.bridges)
            for (const int s : sources_[at(vlan)][at(bridge)])
                if (wanted(s)) like[{crossing, input_.compatibility.stream_kind[at(s)]}].push_back(s);
        for (auto& [key, streams] : like) add_like(p, vlan, behind.crossings[at(key.first)], std::move(streams));
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
    std::ranges::sort(streams, [&](int a, int b) { return std::pair(-parts(p, a), a) < std::pair(-parts(p, b), b); });
    if (!across.complete)
        for (const int s : streams) asked.unexplored += parts(p, s);
    for (auto& needs : across.ways) asked.ways.push_back({std::move(needs), {}, {}, parts(p, streams.front())});
    asked.like = std::move(streams);
    pose(p, std::move(asked));
}

WorstGeneral::Asked WorstGeneral::class_of(VlanIndex vlan, const std::vector<int>& streams) const {
    Asked asked;
    asked.askable.vlan = vlan;
    std::map<GroupName, std::vector<int>> groups;
    for (const int s : streams) groups[input_.way(s).group].push_back(s);
    for (auto& [name, list] : groups) {
        asked.askable.kinds.push_back(kinds_showing(list));
        asked.of_group.push_back(std::move(list));
    }
    return asked;
}

std::vector<WorstGeneral::Unit> WorstGeneral::units_of(const Problem& p, const Asked& asked,
                                                       const std::vector<int>& streams) {
    using general_detail::at;
    const auto vlan = asked.askable.vlan;
    const auto occupied = p.cells.occupied(asked.askable);
    std::map<GroupView, CrossingReader::Behind> seen;
    std::vector<Unit> units;
    for (const int s : streams) {
        const auto& group = input_.way(s).group;
        if (group.link_local() || input_.is_own_leaf(s, p.arc)) continue;
        GroupView view{asked.askable.groups(), 0, group.shares_link_local_mac()};
        while (input_.way(asked.of_group[at(view.group)].front()).group != group) ++view.group;
        auto found = seen.find(view);
        if (found == seen.end()) found = seen.emplace(view, readers_[at(vlan)].behind(p.arc, view)).first;
        for (const auto& [bridge, index] : found->second.bridges) {
            if (bridge != input_.source_bridge(s)) continue;
            auto crossing = found->second.crossings[at(index)];
            crossing.keep(occupied);
            if (crossing.needs.empty() && crossing.floods.empty()) break;  // there whatever is routed
            if (std::ranges::any_of(crossing.needs, [](const SiteSet& need) { return need.empty(); })) break;
            auto unit = std::ranges::find(units, crossing, &Unit::crossing);
            if (unit == units.end()) unit = units.insert(units.end(), {std::move(crossing), {}, 0});
            unit->streams.push_back(s);
            unit->weight += parts(p, s);
        }
    }
    return units;
}

/// Every set of units that can come together, against those that come unasked.
void WorstGeneral::combine(const std::vector<Unit>& units, Asked& asked) {
    using general_detail::at;
    Weight total = 0;
    for (const auto& unit : units) total += unit.unasked() ? 0 : unit.weight;
    const bool all = units.size() <= general_detail::most_units;
    if (!all) asked.unexplored = total;
    const auto try_these = [&](const auto& among) {
        Way way;
        Crossing crossing;
        for (std::size_t u = 0; u < units.size(); ++u) {
            const auto& unit = units[u];
            if (among(u)) crossing.join(unit.crossing);
            if (among(u) == unit.unasked()) continue;
            way.gain += among(u) ? unit.weight : -unit.weight;
            auto& list = among(u) ? way.adds : way.loses;
            list.insert(list.end(), unit.streams.begin(), unit.streams.end());
        }
        if (way.gain <= 0) return;
        auto across = ways_across(crossing);
        if (!across.complete) asked.unexplored = total;
        for (auto& needs : across.ways) {
            way.needs = std::move(needs);
            asked.ways.push_back(way);
        }
    };
    const auto sets = std::size_t{1} << std::min(units.size(), general_detail::most_units);
    if (all)
        for (std::size_t set = 1; set < sets; ++set) try_these([&](std::size_t u) { return (set >> u & 1U) != 0; });
    else
        try_these([](std::size_t) { return true; });
    general_detail::keep_useful(asked.ways);
}

void WorstGeneral::add_class(Problem& p, VlanIndex vlan, const std::vector<int>& streams) {
    auto asked = class_of(vlan, streams);
    const auto units = units_of(p, asked, streams);
    if (std::ranges::all_of(units, &Unit::unasked)) return;
    combine(units, asked);
    if (asked.askable.groups() > 1) {
        std::vector<Way> ways;
        for (auto& way : asked.ways) {
            if (way.needs.size() < 2) {
                ways.push_back(std::move(way));
                continue;
            }
            auto lists = general_detail::split_by_group(way.needs, asked.askable.groups());
            if (lists.empty())
                for (const auto& unit : units) asked.unexplored += unit.unasked() ? 0 : unit.weight;
            for (auto& needs : lists) ways.push_back({std::move(needs), way.adds, way.loses, way.gain});
        }
        asked.ways = std::move(ways);
    }
    pose(p, std::move(asked));
}

/// Where a loop lets a stream come by several ways: walked with each single input asking. Exact if all inputs do alike
/// and bring all that could come; else what could come is the bound.
void WorstGeneral::add_tried(Problem& p, VlanIndex vlan, const std::vector<int>& streams) {
    using general_detail::at;
    const auto& order = input_.orders[at(vlan)];
    const int first = input_.network.bridge_before(p.arc);
    const auto part = [&](int bridge) { return order.part_low[at(order.position[at(bridge)])]; };
    std::vector<int> possible;
    for (const int s : streams)
        if (!is_idle(p.arc, s) && !input_.is_own_leaf(s, p.arc) && part(input_.source_bridge(s)) == part(first))
            possible.push_back(s);
    if (possible.empty()) return;
    auto asked = class_of(vlan, streams);
    for (const int s : possible) asked.unexplored += parts(p, s);
    const auto occupied = p.cells.occupied(asked.askable);
    const auto nobody = [&] { return SiteSet(readers_[at(vlan)].site_count() * asked.askable.groups()); };
    std::vector<int> ignored;
    std::vector<Membership> known;
    bool all_tried = true;
    occupied.each([&](int element) {
        if (walks_left_ < static_cast<int>(streams.size())) {
            all_tried = false;
            return;
        }
        walks_left_ -= static_cast<int>(streams.size());
        const int site = element / asked.askable.groups();
        const bool here = site == readers_[at(vlan)].here();
        const Receiver receiver{here ? first : readers_[at(vlan)].bridge_of(site), here ? p.arc : -1};
        known.clear();
        walk_.report(vlan, receiver, input_.way(asked.of_group[at(element % asked.askable.groups())].front()).group,
                     known);
        Way way;
        for (const int s : streams) {
            ignored.clear();
            walk_.walk(input_.way(s), known, ignored);
            if (walk_.loaded(p.arc) == is_idle(p.arc, s)) continue;
            (is_idle(p.arc, s) ? way.loses : way.adds).push_back(s);
            way.gain += is_idle(p.arc, s) ? -parts(p, s) : parts(p, s);
        }
        auto same = std::ranges::find_if(
            asked.ways, [&](const Way& each) { return each.adds == way.adds && each.loses == way.loses; });
        if (same == asked.ways.end()) {
            way.needs.push_back(nobody());
            same = asked.ways.insert(same, std::move(way));
        }
        same->needs.front().add(element);
    });
    if (all_tried && asked.ways.size() == 1 && asked.ways.front().adds == possible && asked.ways.front().loses.empty())
        asked.unexplored = 0;
    general_detail::keep_useful(asked.ways);
    pose(p, std::move(asked));
}

void WorstGeneral::pose(Problem& p, Asked asked) {
    if (asked.ways.empty() && asked.unexplored == 0) return;
    RoutingDemand demand;
    demand.unexplored = asked.unexplored;
    Weight most = 0;
    for (const auto& way : asked.ways) most = std::max(most, way.gain);
    for (const auto& way : asked.ways) {
        RoutingWay each;
        each.less = most - way.gain;
        for (const auto& need : way.needs) {
            auto cells = p.cells.meeting(asked.askable, need);
            const auto id = p.need_ids.try_emplace(cells, static_cast<int>(p.need_ids.size()));
            if (id.second) p.routing.needs.push_back(std::move(cells));
            each.needs.push_back(id.first->second);
            if (asked.askable.groups() > 1)
                each.apart.push_back(general_detail::group_of_need(need, asked.askable.groups()));
        }
        demand.ways.push_back(std::move(each));
    }
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
