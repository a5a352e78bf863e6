// Streams that share a group, or a loop, come and stay away together: which sets of them what brings (worst_general).
#include "core/analysis/facts/worst_general.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace shared_detail {

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

/// Ways of a single need that do the same are one way.
template <class Way>
void join_alike(std::vector<Way>& ways) {
    std::vector<Way> joined;
    for (auto& way : ways) {
        const auto same = std::ranges::find_if(joined, [&](const Way& each) {
            return way.needs.size() == 1 && each.needs.size() == 1 && each.adds == way.adds && each.loses == way.loses;
        });
        if (same == joined.end())
            joined.push_back(std::move(way));
        else
            same->needs.front().join(way.needs.front());
    }
    ways = std::move(joined);
}

/// The needs with each met by one group only, for an input asks for one group.
std::vector<NeedList> split_by_group(const NeedList& needs, int groups) {
    std::vector<NeedList> lists{{}};
    for (const auto& need : needs) {
        std::vector<NeedList> longer;
        for (int g = 0; g < groups; ++g) {
            auto part = need;
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

}  // namespace shared_detail

WorstGeneral::Asked WorstGeneral::class_of(VlanIndex vlan, const std::vector<int>& streams) const {
    Asked asked;
    asked.askable.vlan = vlan;
    std::map<GroupName, std::vector<int>> groups;
    for (const int s : streams) {  // twins are asked for as one
        const int twin = classes_.twins[shared_detail::at(s)];
        const bool beside = twin >= 0 && std::ranges::binary_search(streams, twin);
        groups[input_.way(beside ? std::min(s, twin) : s).group].push_back(s);
    }
    for (auto& [name, list] : groups) {
        asked.askable.kinds.push_back(kinds_showing(list));
        asked.of_group.push_back(std::move(list));
    }
    return asked;
}

std::vector<WorstGeneral::Unit> WorstGeneral::units_of(Problem& p, const Asked& asked,
                                                       const std::vector<int>& streams) {
    using shared_detail::at;
    const auto vlan = asked.askable.vlan;
    const auto occupied = p.cells.occupied(asked.askable);
    std::map<int, int> group_of;
    for (int g = 0; g < asked.askable.groups(); ++g)
        for (const int s : asked.of_group[at(g)]) group_of[s] = g;
    std::vector<Unit> units;
    for (const int s : streams) {
        const auto& group = input_.way(s).group;
        if (group.link_local() || input_.is_own_leaf(s, p.arc)) continue;
        const GroupView view{asked.askable.groups(), group_of.at(s), group.shares_link_local_mac()};
        const auto& found = behind(p, vlan, view);
        for (const auto& [bridge, index] : found.bridges) {
            if (bridge != input_.source_bridge(s)) continue;
            auto crossing = found.crossings[at(index)];
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
    using shared_detail::at;
    Weight total = 0;
    for (const auto& unit : units) total += unit.unasked() ? 0 : unit.weight;
    const bool all = units.size() <= shared_detail::most_units;
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
    const auto sets = std::size_t{1} << std::min(units.size(), shared_detail::most_units);
    if (all)
        for (std::size_t set = 1; set < sets; ++set) try_these([&](std::size_t u) { return (set >> u & 1U) != 0; });
    else
        try_these([](std::size_t) { return true; });
    shared_detail::keep_useful(asked.ways);
}

/// Whether a third stream has the group, or its MAC address, of one of two twins and not of the other: it comes with
/// that twin, but does not bring the other. Two faults at once, for which a bound is enough.
bool WorstGeneral::shares_with_one_twin(const std::vector<int>& streams) const {
    const auto twin_of = [&](int s) { return classes_.twins[shared_detail::at(s)]; };
    return std::ranges::any_of(streams, [&](int s) {
        const int twin = twin_of(s);
        if (twin < 0 || !std::ranges::binary_search(streams, twin)) return false;
        const auto& group = input_.way(s).group;
        if (group == input_.way(twin).group) return false;
        return std::ranges::any_of(
            streams, [&](int u) { return u != s && u != twin && input_.way(u).group.mac() == group.mac(); });
    });
}

void WorstGeneral::add_class(Problem& p, VlanIndex vlan, const std::vector<int>& streams) {
    auto asked = class_of(vlan, streams);
    if (shares_with_one_twin(streams)) {
        if (p.cells.occupied(asked.askable).empty()) return;
        for (const int s : streams)
            if (!is_idle(p.arc, s) && !input_.is_own_leaf(s, p.arc)) asked.unexplored += parts(p, s);
        return pose(p, std::move(asked));
    }
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
            auto lists = shared_detail::split_by_group(way.needs, asked.askable.groups());
            if (lists.empty())
                for (const auto& unit : units) asked.unexplored += unit.unasked() ? 0 : unit.weight;
            for (auto& needs : lists) ways.push_back({std::move(needs), way.adds, way.loses, way.gain});
        }
        asked.ways = std::move(ways);
    }
    pose(p, std::move(asked));
}

/// Where a loop lets a stream come by several ways, and by which one may hang on who asked first: walked with each site
/// asking alone. Exact if all sites do alike and bring all that could come; else what could come is the bound.
void WorstGeneral::add_tried(Problem& p, VlanIndex vlan, const std::vector<int>& streams) {
    using shared_detail::at;
    const auto& order = input_.orders[at(vlan)];
    const auto part = [&](int bridge) { return order.part_low[at(order.position[at(bridge)])]; };
    std::vector<int> possible;
    for (const int s : streams)
        if (!is_idle(p.arc, s) && !input_.is_own_leaf(s, p.arc) &&
            part(input_.source_bridge(s)) == part(input_.network.bridge_before(p.arc)))
            possible.push_back(s);
    if (possible.empty()) return;
    auto asked = class_of(vlan, streams);
    std::vector<int> elements;
    p.cells.occupied(asked.askable).each([&](int element) { elements.push_back(element); });
    if (elements.empty()) return;
    const auto walks = elements.size() * streams.size();
    const auto twinned = [&](int s) { return classes_.twins[at(s)] >= 0; };
    if (walks <= walks_left_ && std::ranges::none_of(streams, twinned)) {
        walks_left_ -= walks;
        for (const int element : elements) try_asking(p, streams, element, asked);
    }
    const auto all = [&](const Way& way) { return way.adds == possible && way.loses.empty(); };
    if (asked.ways.size() < elements.size() || !std::ranges::all_of(asked.ways, all))
        for (const int s : possible) asked.unexplored += parts(p, s);
    shared_detail::keep_useful(asked.ways);
    shared_detail::join_alike(asked.ways);
    pose(p, std::move(asked));
}

void WorstGeneral::try_asking(const Problem& p, const std::vector<int>& streams, int element, Asked& asked) {
    using shared_detail::at;
    const auto vlan = asked.askable.vlan;
    const auto& reader = readers_[at(vlan)];
    const int site = element / asked.askable.groups();
    const bool here = site == reader.here();
    const Receiver receiver{here ? input_.network.bridge_before(p.arc) : reader.bridge_of(site), here ? p.arc : -1};
    std::vector<Membership> known;
    walk_.report(vlan, receiver, input_.way(asked.of_group[at(element % asked.askable.groups())].front()).group, known);
    Way way;
    way.needs.emplace_back(reader.site_count() * asked.askable.groups()).add(element);
    std::vector<int> ignored;
    for (const int s : streams) {
        walk_.walk(input_.way(s), known, ignored);
        if (walk_.loaded(p.arc) == is_idle(p.arc, s)) continue;
        (is_idle(p.arc, s) ? way.loses : way.adds).push_back(s);
        way.gain += is_idle(p.arc, s) ? -parts(p, s) : parts(p, s);
    }
    asked.ways.push_back(std::move(way));
}

}  // namespace streamwright::analysis
