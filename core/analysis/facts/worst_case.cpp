#include "core/analysis/facts/worst_case.h"

#include "core/analysis/facts/arc_sides.h"
#include "core/analysis/facts/matching.h"
#include "core/analysis/facts/rate_table.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <tuple>
#include <utility>

namespace streamwright::analysis {

namespace worst_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// A decoder input where it meets a VLAN.
struct Place {
    int position = 0;  // of its bridge in the order of the VLAN's tree
    int leaf_arc = -1;
    int slot = 0;
};

/// Streams and inputs of one VLAN that go together: any of the inputs shows any of the streams.
struct Family {
    std::vector<int> by_plain, by_tagged;  // streams by falling rate
    std::vector<Place> places;             // by position, leaf, slot
};

struct WorstRun {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
    const LinkLoads& loads;
    const Compatibility& compatibility;
    RateTable rates;
    std::vector<TreeOrder> orders;                      // per VLAN
    std::vector<std::vector<Place>> places;             // per VLAN
    std::vector<std::vector<int>> streams;              // per VLAN
    std::vector<std::vector<int>> sources_before;       // per VLAN, per position + 1: streams that start before it
    std::vector<int> family_of_slot, family_of_stream;  // per kind
    int family_count = 0;
    bool plain_families = true;                 // kinds fall into families, and each input is in one VLAN
    std::vector<std::vector<Family>> families;  // per VLAN, per family
    std::vector<int> idle_mark;                 // per stream: the arc it was last seen idle on
    std::vector<ArcWorst> answer;

    /// Kinds form families if any two kinds of input take the same streams or have none in common.
    void find_families() {
        const auto& takes = compatibility.takes;
        std::map<std::vector<bool>, int> seen;
        const std::size_t kinds = takes.empty() ? 0 : takes.front().size();
        family_of_stream.assign(kinds, -1);
        for (const auto& row : takes) {
            const auto [place, fresh] = seen.try_emplace(row, family_count);
            if (fresh) ++family_count;
            family_of_slot.push_back(place->second);
            for (std::size_t k = 0; k < kinds; ++k) {
                if (!row[k]) continue;
                if (family_of_stream[k] >= 0 && family_of_stream[k] != place->second) plain_families = false;
                family_of_stream[k] = place->second;
            }
        }
    }

    /// Where the decoder hears a VLAN: at its bridge, or behind its first leaf that carries it.
    void add_places(VlanIndex vlan) {
        const auto& order = orders[at(vlan)];
        auto& list = places[at(vlan)];
        for (std::size_t i = 0; i < compatibility.slots.size(); ++i) {
            const int device = compatibility.slots[i].device;
            const int slot = static_cast<int>(i);
            if (const int bridge = network.bridge_of_device[at(device)]; bridge >= 0) {
                if (forwarding.vlans[at(vlan)].bridges[at(bridge)].in_vlan)
                    list.push_back({order.position[at(bridge)], -1, slot});
                continue;
            }
            for (const int leaf : network.leaves_of_device[at(device)]) {
                if (!paths.leaves[at(leaf)].carries(vlan)) continue;
                list.push_back(
                    {order.position[at(network.leaves[at(leaf)].bridge)], network.leaf_arc(leaf, false), slot});
                break;
            }
        }
        std::sort(list.begin(), list.end(), [](const Place& a, const Place& b) {
            return std::tuple(a.position, a.leaf_arc, a.slot) < std::tuple(b.position, b.leaf_arc, b.slot);
        });
    }

    void prepare() {
        const auto vlans = paths.vlans.size();
        places.resize(vlans);
        streams.resize(vlans);
        find_families();
        for (std::size_t v = 0; v < vlans; ++v) {
            orders.push_back(order_tree(network, trees.trees[v], forwarding.vlans[v]));
            add_places(static_cast<VlanIndex>(v));
        }
        for (std::size_t s = 0; s < forwarding.streams.size(); ++s)
            if (forwarding.streams[s].on_network())
                streams[at(forwarding.streams[s].vlan)].push_back(static_cast<int>(s));
        count_sources();
        check_one_vlan_each();
        if (plain_families) fill_families();
        idle_mark.assign(forwarding.streams.size(), -1);
        answer.resize(at(network.arc_count()));
    }

    void count_sources() {
        sources_before.assign(streams.size(), std::vector<int>(network.bridges.size() + 1, 0));
        for (std::size_t v = 0; v < streams.size(); ++v) {
            auto& before = sources_before[v];
            for (const int s : streams[v]) ++before[at(source_position(s, orders[v])) + 1];
            std::partial_sum(before.begin(), before.end(), before.begin());
        }
    }

    /// An input that hears streams it can show in two VLANs may be spent in either: no family by itself.
    void check_one_vlan_each() {
        std::vector<int> vlan_of(compatibility.slots.size(), -1);
        for (std::size_t v = 0; v < places.size(); ++v)
            for (const auto& place : places[v]) {
                const auto& row = compatibility.takes[at(compatibility.slots[at(place.slot)].kind)];
                const bool useful = std::any_of(streams[v].begin(), streams[v].end(),
                                                [&](int s) { return row[at(compatibility.stream_kind[at(s)])]; });
                if (!useful) continue;
                if (vlan_of[at(place.slot)] >= 0) plain_families = false;
                vlan_of[at(place.slot)] = static_cast<int>(v);
            }
    }

    void fill_families() {
        families.assign(places.size(), std::vector<Family>(at(family_count)));
        for (std::size_t v = 0; v < places.size(); ++v) {
            for (const auto& place : places[v])
                families[v][at(family_of_slot[at(compatibility.slots[at(place.slot)].kind)])].places.push_back(place);
            for (const int s : streams[v])
                if (const int f = family_of_stream[at(compatibility.stream_kind[at(s)])]; f >= 0)
                    families[v][at(f)].by_plain.push_back(s);
            for (auto& family : families[v]) {
                family.by_tagged = family.by_plain;
                for (const bool tagged : {false, true}) {
                    auto& list = tagged ? family.by_tagged : family.by_plain;
                    std::stable_sort(list.begin(), list.end(),
                                     [&](int a, int b) { return rates.rank(a, tagged) > rates.rank(b, tagged); });
                }
            }
        }
    }

    bool tagged_on(int arc, VlanIndex vlan) const {
        if (network.is_link_arc(arc)) return paths.links[at(arc / 2)].a.tags(vlan);
        return paths.leaves[at(arc / 2) - network.links.size()].tags(vlan);
    }

    int source_position(int stream, const TreeOrder& order) const {
        const auto& way = forwarding.streams[at(stream)];
        const int bridge = way.first_bridge(network);
        return order.position[at(bridge)];
    }

    /// Whether the stream would cross the arc if someone beyond asked for it.
    bool can_cross(int stream, int arc, const ArcSides& sides, const TreeOrder& order) const {
        if (idle_mark[at(stream)] == arc) return false;
        if (sides.leaf) {
            const auto& source = forwarding.streams[at(stream)].source_leaf;
            return !(source && network.leaf_arc(*source, false) == arc) && sides.part(source_position(stream, order));
        }
        return sides.behind(source_position(stream, order));
    }

    template <class F>
    void each_place_beyond(const std::vector<Place>& list, int arc, const ArcSides& sides, F&& f) const {
        if (sides.leaf) {
            const auto first = std::lower_bound(
                list.begin(), list.end(), std::pair(sides.low, arc),
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
    bool any_candidate(int arc, VlanIndex vlan, const ArcSides& sides) const {
        if (sides.leaf) return true;
        const auto& before = sources_before[at(vlan)];
        const int inside = before[at(sides.high)] - before[at(sides.low)];
        const int all = before[at(sides.part_high)] - before[at(sides.part_low)];
        int left = sides.outside ? inside : all - inside;
        for (const int s : loads.idle.arcs[at(arc)].streams) left -= forwarding.streams[at(s)].vlan == vlan ? 1 : 0;
        return left > 0;
    }

    /// All inputs beyond show all streams of the family: the heaviest as many as there are inputs.
    void add_family(const Family& family, int arc, VlanIndex vlan, const ArcSides& sides, ArcWorst& worst) const {
        std::vector<int> inputs;
        each_place_beyond(family.places, arc, sides, [&](const Place& place) { inputs.push_back(place.slot); });
        std::size_t used = 0;
        const auto& order = orders[at(vlan)];
        for (const int stream : tagged_on(arc, vlan) ? family.by_tagged : family.by_plain) {
            if (used == inputs.size()) break;
            if (!can_cross(stream, arc, sides, order)) continue;
            const auto& slot = compatibility.slots[at(inputs[used++])];
            worst.routed.push_back(stream);
            worst.witness.push_back({stream, slot.device, slot.input});
        }
    }

    /// The general form on one arc: groups of inputs of one kind that are beyond in the same VLANs.
    void add_matching(int arc, const std::vector<std::pair<VlanIndex, ArcSides>>& sides, ArcWorst& worst) const {
        std::map<int, std::vector<std::size_t>> vlans_of_slot;
        for (std::size_t i = 0; i < sides.size(); ++i)
            each_place_beyond(places[at(sides[i].first)], arc, sides[i].second,
                              [&](const Place& place) { vlans_of_slot[place.slot].push_back(i); });
        std::map<std::pair<int, std::vector<std::size_t>>, std::vector<int>> groups;
        for (const auto& [slot, vlans] : vlans_of_slot)
            groups[{compatibility.slots[at(slot)].kind, vlans}].push_back(slot);
        std::vector<int> capacities;
        for (const auto& [key, slots] : groups) capacities.push_back(static_cast<int>(slots.size()));
        std::vector<std::tuple<int, int, std::size_t>> candidates;  // falling rank, stream, place in sides
        for (std::size_t i = 0; i < sides.size(); ++i) {
            const auto& [vlan, side] = sides[i];
            for (const int s : streams[at(vlan)])
                if (can_cross(s, arc, side, orders[at(vlan)]))
                    candidates.emplace_back(-rates.rank(s, tagged_on(arc, vlan)), s, i);
        }
        std::sort(candidates.begin(), candidates.end());
        SlotMatching matching(capacities);
        for (const auto& [rank, stream, side] : candidates) {
            if (matching.full()) break;
            std::vector<int> choices;
            int group = 0;
            for (const auto& [key, slots] : groups) {
                const bool reached = std::find(key.second.begin(), key.second.end(), side) != key.second.end();
                if (reached && compatibility.takes[at(key.first)][at(compatibility.stream_kind[at(stream)])])
                    choices.push_back(group);
                ++group;
            }
            if (!choices.empty() && matching.take(stream, std::move(choices))) worst.routed.push_back(stream);
        }
        std::size_t group = 0;
        for (const auto& [key, slots] : groups) {
            const auto& matched = matching.matched()[group++];
            for (std::size_t i = 0; i < matched.size(); ++i) {
                const auto& slot = compatibility.slots[at(slots[i])];
                worst.witness.push_back({matched[i], slot.device, slot.input});
            }
        }
    }

    int count_inputs_beyond(int arc, const std::vector<std::pair<VlanIndex, ArcSides>>& sides) const {
        std::vector<int> slots;
        for (const auto& [vlan, side] : sides)
            each_place_beyond(places[at(vlan)], arc, side, [&](const Place& place) { slots.push_back(place.slot); });
        if (sides.size() > 1) {
            std::sort(slots.begin(), slots.end());
            slots.erase(std::unique(slots.begin(), slots.end()), slots.end());
        }
        return static_cast<int>(slots.size());
    }

    void judge(int arc) {
        auto& worst = answer[at(arc)];
        const auto& idle = loads.idle.arcs[at(arc)];
        worst.unasked.assign(idle.streams.begin(), idle.streams.end());
        worst.wire = idle.wire;
        std::vector<std::pair<VlanIndex, ArcSides>> sides;
        for (VlanIndex vlan = 0; vlan < static_cast<VlanIndex>(orders.size()); ++vlan)
            if (const auto side = sides_of(network, paths, orders[at(vlan)], vlan, arc))
                sides.emplace_back(vlan, *side);
        if (sides.empty()) return;
        worst.inputs_beyond = count_inputs_beyond(arc, sides);
        for (const int stream : idle.streams) idle_mark[at(stream)] = arc;
        // Toward a querier everything behind is there unasked: nothing is left to route.
        std::erase_if(sides, [&](const auto& side) {
            return !orders[at(side.first)].heard[at(side.second.low)] || !any_candidate(arc, side.first, side.second);
        });
        if (plain_families)
            for (const auto& [vlan, side] : sides)
                for (const auto& family : families[at(vlan)]) add_family(family, arc, vlan, side, worst);
        else
            add_matching(arc, sides, worst);
        finish(arc, worst);
    }

    void finish(int arc, ArcWorst& worst) {
        if (worst.routed.empty()) return;
        const auto tagged = [&](int s) { return tagged_on(arc, forwarding.streams[at(s)].vlan); };
        std::sort(worst.routed.begin(), worst.routed.end(), [&](int a, int b) {
            return std::pair(-rates.rank(a, tagged(a)), a) < std::pair(-rates.rank(b, tagged(b)), b);
        });
        std::sort(worst.witness.begin(), worst.witness.end());
        worst.wire += rates.sum(worst.routed, tagged);
    }
};

}  // namespace worst_detail

Compatibility usual_compatibility(const graph::Wiring& wiring) {
    using catalogue::Role;
    Compatibility result;
    std::map<std::pair<std::string, catalogue::StreamKind>, int> kinds;
    const auto kind_of = [&](const catalogue::Codec* codec, catalogue::StreamKind kind) {
        return kinds.try_emplace({codec ? codec->family : std::string(), kind}, static_cast<int>(kinds.size()))
            .first->second;
    };
    const auto codec_of = [&](int device) -> const catalogue::Codec* {
        const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
        return type && type->codec ? &*type->codec : nullptr;
    };
    std::vector<bool> sends(wiring.devices.size(), false);
    for (const auto& stream : wiring.design.streams) {
        const auto device = wiring.device_index(stream.encoder);
        if (device) sends[static_cast<std::size_t>(*device)] = true;
        result.stream_kind.push_back(kind_of(device ? codec_of(*device) : nullptr, stream.kind));
    }
    for (int device = 0; device < static_cast<int>(wiring.devices.size()); ++device) {
        const auto* codec = codec_of(device);
        if (!codec || codec->inputs.empty()) continue;
        const auto roles = wiring.roles(device);
        const bool decodes = std::find(roles.begin(), roles.end(), Role::decoder) != roles.end();
        const bool might = roles.empty() && wiring.devices[static_cast<std::size_t>(device)].type->can(Role::decoder) &&
                           !sends[static_cast<std::size_t>(device)];
        if (!decodes && !might) continue;
        for (int input = 0; input < static_cast<int>(codec->inputs.size()); ++input)
            result.slots.push_back(
                {device, input, kind_of(codec, codec->inputs[static_cast<std::size_t>(input)].kind)});
    }
    result.takes.assign(kinds.size(), std::vector<bool>(kinds.size(), false));
    for (std::size_t k = 0; k < kinds.size(); ++k) result.takes[k][k] = true;
    return result;
}

std::optional<WorstCase> find_worst_case(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                         const VlanPaths& paths, const SpanningTrees& trees,
                                         const Forwarding& forwarding, const LinkLoads& loads,
                                         const Compatibility& compatibility, std::stop_token stop) {
    worst_detail::WorstRun run{wiring,     network, paths,         trees,
                               forwarding, loads,   compatibility, RateTable(wiring.design.streams)};
    run.prepare();
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        if (stop.stop_requested()) return {};
        run.judge(arc);
    }
    return WorstCase{std::move(run.answer)};
}

std::optional<WorstCase> find_worst_case(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                         const VlanPaths& paths, const SpanningTrees& trees,
                                         const Forwarding& forwarding, const LinkLoads& loads, std::stop_token stop) {
    return find_worst_case(wiring, network, paths, trees, forwarding, loads, usual_compatibility(wiring),
                           std::move(stop));
}

}  // namespace streamwright::analysis
