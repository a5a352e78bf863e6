#include "core/analysis/facts/worst_families.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

namespace streamwright::analysis {

namespace {
std::size_t family_at(int index) { return static_cast<std::size_t>(index); }
}  // namespace

WorstFamilies::WorstFamilies(const WorstInput& input, const StreamClasses& classes, RateTable& rates)
    : input_(input), rates_(rates), places_(input.streams.size()), idle_mark_(input.forwarding.streams.size(), -1) {
    find_families();
    for (VlanIndex vlan = 0; vlan < input.vlan_count(); ++vlan) {
        add_places(vlan);
        plain_.push_back(is_plain(vlan, classes));
    }
    count_sources();
    check_one_vlan_each();
    if (families_) fill_families();
}

/// Reports go all the way to the querier then, and a port toward a router has one on each bridge before it.
bool WorstFamilies::is_plain(VlanIndex vlan, const StreamClasses& classes) const {
    using catalogue::GroupLookup;
    const auto& snooping = input_.forwarding.vlans[family_at(vlan)];
    const auto& order = input_.orders[family_at(vlan)];
    if (!classes.shared[family_at(vlan)].empty()) return false;
    const auto looped = looped_parts(input_.network, input_.trees.trees[family_at(vlan)], order);
    if (std::ranges::find(looped, true) != looped.end()) return false;
    const bool local_mac = std::ranges::any_of(input_.streams[family_at(vlan)], [&](int s) {
        const auto& group = input_.way(s).group;
        return group.shares_link_local_mac() && !group.link_local();
    });
    const auto routes = [&](int bridge, int arc) {
        return std::ranges::binary_search(snooping.bridges[family_at(bridge)].router_arcs, arc);
    };
    for (int b = 0; b < static_cast<int>(snooping.bridges.size()); ++b) {
        const auto& bridge = snooping.bridges[family_at(b)];
        if (!bridge.in_vlan) continue;
        if (bridge.floods_all) {  // of an endpoint at the end of its cable: there is nothing to flood
            if (snooping.out(b).size() > 1) return false;
            continue;
        }
        if (bridge.unknown == catalogue::UnknownGroups::drop) return false;
        if (local_mac && bridge.lookup == GroupLookup::mac) return false;
        const int parent = order.parent_arc[family_at(b)];
        if (snooping.querier_of[family_at(b)] < 0 || parent < 0) continue;
        if (!routes(b, parent ^ 1)) return false;
        if (bridge.router_arcs.size() > 1 && !routes(input_.network.bridge_before(parent), parent)) return false;
    }
    return true;
}

bool WorstFamilies::answers(int arc) const {
    const int bridge = input_.network.bridge_before(arc);
    if (bridge < 0) return true;  // a device's own streams are there unasked
    if (!families_) return false;
    for (std::size_t v = 0; v < plain_.size(); ++v)
        if (!plain_[v] && std::ranges::binary_search(input_.forwarding.vlans[v].out(bridge), arc)) return false;
    return true;
}

void WorstFamilies::judge(int arc, std::vector<std::pair<VlanIndex, ArcSides>> sides, ArcWorst& worst) {
    for (const int stream : input_.loads.idle.arcs[family_at(arc)].streams) idle_mark_[family_at(stream)] = arc;
    // Toward a querier everything behind is there unasked: nothing is left to route.
    std::erase_if(sides, [&](const auto& side) {
        return !input_.orders[family_at(side.first)].heard[family_at(side.second.low)] ||
               !any_candidate(arc, side.first, side.second);
    });
    for (const auto& [vlan, side] : sides)
        for (const auto& family : in_vlan_[family_at(vlan)]) add_family(family, arc, vlan, side, worst);
}

int WorstFamilies::position_of(int stream, const TreeOrder& order) const {
    return order.position[family_at(input_.source_bridge(stream))];
}

/// Kinds form families if any two kinds of input take the same streams or have none in common.
void WorstFamilies::find_families() {
    const auto& takes = input_.compatibility.takes;
    std::map<std::vector<bool>, int> seen;
    const auto& of_stream = input_.compatibility.stream_kind;  // there may be no input to tell how many kinds there are
    const std::size_t kinds = of_stream.empty() ? 0 : family_at(*std::ranges::max_element(of_stream)) + 1;
    family_of_stream_.assign(kinds, -1);
    for (const auto& row : takes) {
        const auto [place, fresh] = seen.try_emplace(row, family_count_);
        if (fresh) ++family_count_;
        family_of_slot_.push_back(place->second);
        for (std::size_t k = 0; k < kinds; ++k) {
            if (!row[k]) continue;
            if (family_of_stream_[k] >= 0 && family_of_stream_[k] != place->second) families_ = false;
            family_of_stream_[k] = place->second;
        }
    }
}

void WorstFamilies::add_places(VlanIndex vlan) {
    const auto& order = input_.orders[family_at(vlan)];
    auto& list = places_[family_at(vlan)];
    for (std::size_t i = 0; i < input_.compatibility.slots.size(); ++i)
        if (const auto place = input_.place_of(input_.compatibility.slots[i].device, vlan))
            list.push_back({order.position[family_at(place->bridge)], place->leaf_arc, static_cast<int>(i)});
    std::sort(list.begin(), list.end(), [](const Place& a, const Place& b) {
        return std::tuple(a.position, a.leaf_arc, a.slot) < std::tuple(b.position, b.leaf_arc, b.slot);
    });
}

void WorstFamilies::count_sources() {
    sources_before_.assign(input_.streams.size(), std::vector<int>(input_.network.bridges.size() + 1, 0));
    for (std::size_t v = 0; v < input_.streams.size(); ++v) {
        auto& before = sources_before_[v];
        for (const int s : input_.streams[v]) ++before[family_at(position_of(s, input_.orders[v])) + 1];
        std::partial_sum(before.begin(), before.end(), before.begin());
    }
}

/// An input that hears streams it can show in two VLANs may be spent in either: no family by itself.
void WorstFamilies::check_one_vlan_each() {
    std::vector<int> vlan_of(input_.compatibility.slots.size(), -1);
    for (std::size_t v = 0; v < places_.size(); ++v)
        for (const auto& place : places_[v]) {
            const auto& row =
                input_.compatibility.takes[family_at(input_.compatibility.slots[family_at(place.slot)].kind)];
            const bool useful = std::any_of(input_.streams[v].begin(), input_.streams[v].end(), [&](int s) {
                return row[family_at(input_.compatibility.stream_kind[family_at(s)])];
            });
            if (!useful) continue;
            if (vlan_of[family_at(place.slot)] >= 0) families_ = false;
            vlan_of[family_at(place.slot)] = static_cast<int>(v);
        }
}

void WorstFamilies::fill_families() {
    in_vlan_.assign(places_.size(), std::vector<Family>(family_at(family_count_)));
    for (std::size_t v = 0; v < places_.size(); ++v) {
        for (const auto& place : places_[v])
            in_vlan_[v][family_at(family_of_slot_[family_at(input_.compatibility.slots[family_at(place.slot)].kind)])]
                .places.push_back(place);
        for (const int s : input_.streams[v])
            if (const int f = family_of_stream_[family_at(input_.compatibility.stream_kind[family_at(s)])]; f >= 0)
                in_vlan_[v][family_at(f)].by_plain.push_back(s);
        for (auto& family : in_vlan_[v]) {
            family.by_tagged = family.by_plain;
            for (const bool tagged : {false, true}) {
                auto& list = tagged ? family.by_tagged : family.by_plain;
                std::stable_sort(list.begin(), list.end(),
                                 [&](int a, int b) { return rates_.rank(a, tagged) > rates_.rank(b, tagged); });
            }
        }
    }
}

/// Whether the stream would cross the arc if someone beyond asked for it.
bool WorstFamilies::can_cross(int stream, int arc, const ArcSides& sides, const TreeOrder& order) const {
    if (idle_mark_[family_at(stream)] == arc) return false;
    if (sides.leaf) {
        const auto& source = input_.forwarding.streams[family_at(stream)].source_leaf;
        return !(source && input_.network.leaf_arc(*source, false) == arc) && sides.part(position_of(stream, order));
    }
    return sides.behind(position_of(stream, order));
}

template <class F>
void WorstFamilies::each_place_beyond(const std::vector<Place>& list, int arc, const ArcSides& sides, F&& f) const {
    if (sides.leaf) {
        const auto first =
            std::lower_bound(list.begin(), list.end(), std::pair(sides.low, arc),
                             [](const Place& p, const auto& key) { return std::pair(p.position, p.leaf_arc) < key; });
        for (auto place = first; place != list.end() && place->leaf_arc == arc; ++place) f(*place);
        return;
    }
    const auto range = [&](int low, int high) {
        const auto first = std::lower_bound(list.begin(), list.end(), low,
                                            [](const Place& p, int position) { return p.position < position; });
        for (auto place = first; place != list.end() && place->position < high; ++place) f(*place);
    };
    if (!sides.outside) return range(sides.low, sides.high);
    range(sides.part_low, sides.low);
    range(sides.high, sides.part_high);
}

/// Streams with their source behind the arc that are not on it already.
bool WorstFamilies::any_candidate(int arc, VlanIndex vlan, const ArcSides& sides) const {
    if (sides.leaf) return true;
    const auto& before = sources_before_[family_at(vlan)];
    const int inside = before[family_at(sides.high)] - before[family_at(sides.low)];
    const int all = before[family_at(sides.part_high)] - before[family_at(sides.part_low)];
    int left = sides.outside ? inside : all - inside;
    for (const int s : input_.loads.idle.arcs[family_at(arc)].streams)
        left -= input_.forwarding.streams[family_at(s)].vlan == vlan ? 1 : 0;
    return left > 0;
}

/// All inputs beyond show all streams of the family: the heaviest as many as there are inputs.
void WorstFamilies::add_family(const Family& family, int arc, VlanIndex vlan, const ArcSides& sides,
                               ArcWorst& worst) const {
    std::vector<int> inputs;
    each_place_beyond(family.places, arc, sides, [&](const Place& place) { inputs.push_back(place.slot); });
    std::size_t used = 0;
    const auto& order = input_.orders[family_at(vlan)];
    for (const int stream : input_.tagged_on(arc, vlan) ? family.by_tagged : family.by_plain) {
        if (used == inputs.size()) break;
        if (!can_cross(stream, arc, sides, order)) continue;
        const auto& slot = input_.compatibility.slots[family_at(inputs[used++])];
        worst.routed.push_back(stream);
        worst.witness.push_back({stream, slot.device, slot.input});
    }
}

int WorstFamilies::count_inputs_beyond(int arc, const std::vector<std::pair<VlanIndex, ArcSides>>& sides) const {
    std::vector<int> slots;
    for (const auto& [vlan, side] : sides)
        each_place_beyond(places_[family_at(vlan)], arc, side,
                          [&](const Place& place) { slots.push_back(place.slot); });
    if (sides.size() > 1) {
        std::sort(slots.begin(), slots.end());
        slots.erase(std::unique(slots.begin(), slots.end()), slots.end());
    }
    return static_cast<int>(slots.size());
}

}  // namespace streamwright::analysis
