// What a failure changes: the walks made again, the pictures that are lost or come another way, the arcs that overflow.
#include "core/analysis/facts/load_memory.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

void LoadMemory::mark_stale(const std::vector<int>& units) {
    for (const int unit : units)
        if (!std::exchange(stale_[at(unit)], 1)) stale_list_.push_back(unit);
}

/// A bridge that filters answers by its memberships and router ports, one that floods by every way out; either by
/// whether the links that it sends into take frames in at the far end.
void LoadMemory::mark_changed_bridges(VlanIndex vlan) {
    const auto& old_tree = whole_.trees.trees[at(vlan)];
    const auto& new_tree = state_.trees().trees[at(vlan)];
    const auto& old_side = whole_.forwarding.vlans[at(vlan)];
    const auto& new_side = state_.forwarding().vlans[at(vlan)];
    const auto turned = [&](int arc) {
        return whole_.network.is_link_arc(arc) && old_tree.forwards(arc / 2) != new_tree.forwards(arc / 2);
    };
    const auto differ = [&](std::span<const int> before, std::span<const int> after) {
        return !std::ranges::equal(before, after) || std::any_of(before.begin(), before.end(), turned);
    };
    const auto first = at(vlan) * whole_.network.bridges.size();
    for (std::size_t b = 0; b < whole_.network.bridges.size(); ++b) {
        const auto& before = old_side.bridges[b];
        const auto& after = new_side.bridges[b];
        const bool same = before.snoops == after.snoops && before.keeps_members == after.keeps_members &&
                          before.floods_all == after.floods_all && before.unknown == after.unknown &&
                          before.lookup == after.lookup && !differ(before.router_arcs, after.router_arcs);
        const int bridge = static_cast<int>(b);
        if (!same)
            mark_stale(readers_[first + b]);
        else if (differ(old_side.out(bridge), new_side.out(bridge)))
            mark_stale(flooding_readers_[first + b]);
    }
}

void LoadMemory::find_stale() {
    for (const int unit : stale_list_) stale_[at(unit)] = 0;
    stale_list_.clear();
    if (!state_.edge_only())
        for (VlanIndex vlan = 0; vlan < static_cast<VlanIndex>(whole_.paths.vlans.size()); ++vlan)
            mark_changed_bridges(vlan);
    for (const int stream : state_.moved_streams()) mark_stale(units_of_stream_[at(stream)]);
    for (const int device : state_.cut().devices()) mark_stale(units_of_device_[at(device)]);
    std::sort(stale_list_.begin(), stale_list_.end());
}

/// Follows the stream back from its receiver. A bridge on a new part of the way either sends it that way unasked, or
/// must have learned of the membership.
std::optional<MovedPicture> LoadMemory::moved(int unit, const Asked& before, const Asked& after,
                                              std::span<const int> arcs) {
    const auto& network = state_.network();
    const auto& way = state_.forwarding().streams[at(after.stream)];
    if (!after.receiver) return std::nullopt;
    MovedPicture picture{{units_[at(unit)].preset, after.subscription}, way.vlan, after.receiver->bridge, false};
    ++round_;
    for (const int arc : this->arcs(unit, after.stream)) mark_[at(arc)] = round_;
    const auto& tree = state_.trees().trees[at(way.vlan)];
    for (const int arc : arcs)
        if (network.is_link_arc(arc) && tree.forwards(arc / 2)) came_by_[at(network.bridge_after(arc))] = arc;
    bool other =
        before.receiver != after.receiver || way.source_leaf != whole_.forwarding.streams[at(after.stream)].source_leaf;
    const auto& snooping = state_.forwarding().vlans[at(way.vlan)];
    const auto take = [&](int arc) {
        if (mark_[at(arc)] == round_) return;
        other = true;
        const int from = network.bridge_before(arc);
        if (from < 0) return;
        const auto& bridge = snooping.bridges[at(from)];
        const auto& routers = bridge.router_arcs;
        if (!bridge.floods_all && !std::binary_search(routers.begin(), routers.end(), arc))
            picture.waits_for_report = true;
    };
    if (after.receiver->arc >= 0) take(after.receiver->arc);
    const int source = way.first_bridge(network);
    int bridge = after.receiver->bridge;
    for (std::size_t steps = 0; bridge != source && steps < came_by_.size(); ++steps) {
        const int arc = came_by_[at(bridge)];
        if (arc < 0) break;
        take(arc);
        bridge = network.bridge_before(arc);
    }
    for (const int arc : arcs)
        if (network.is_link_arc(arc)) came_by_[at(network.bridge_after(arc))] = -1;
    if (!other) return std::nullopt;
    return picture;
}

void LoadMemory::judge_picture(int unit, const Asked& before, const Asked& after, std::span<const int> arcs,
                               LoadChange& change) {
    if (!before.served) return;
    if (!after.served)
        change.lost.push_back({units_[at(unit)].preset, before.subscription});
    else if (auto picture = moved(unit, before, after, arcs))
        change.moved.push_back(*picture);
}

void LoadMemory::judge_pictures(const Walked& walked, LoadChange& change) {
    const auto& unit = units_[at(walked.unit)];
    for (std::size_t i = 0; i < unit.asked.size(); ++i) {
        const auto place =
            std::find(unit.streams.begin(), unit.streams.end(), unit.asked[i].stream) - unit.streams.begin();
        judge_picture(walked.unit, unit.asked[i], walked.asked[i], walked.arcs[static_cast<std::size_t>(place)],
                      change);
    }
}

LoadMemory::Steps LoadMemory::steps_of(int preset, const std::vector<Walked>& walked) {
    Steps steps;
    for (const auto& each : walked) {
        const auto& unit = units_[at(each.unit)];
        for (std::size_t i = 0; i < unit.streams.size(); ++i) {
            const int stream = unit.streams[i];
            if (unit_of(preset, stream) != each.unit) continue;
            ++round_;
            for (const int arc : each.arcs[i]) mark_[at(arc)] = round_;
            for (const int arc : arcs(each.unit, stream)) {
                if (mark_[at(arc)] != round_) steps.removed.push_back({arc, stream});
                mark_[at(arc)] = -round_;
            }
            for (const int arc : each.arcs[i])
                if (mark_[at(arc)] == round_) steps.added.push_back({arc, stream});
        }
    }
    std::sort(steps.added.begin(), steps.added.end());
    std::sort(steps.removed.begin(), steps.removed.end());
    return steps;
}

void LoadMemory::judge_arcs(int preset, const Steps& steps, LoadChange& change) {
    const auto& before = load(preset);
    const auto& network = state_.network();
    const auto& already = overfull_[at(std::max(preset, 0))];
    std::vector<int> doubtful = already;
    for (const auto& step : steps.added) doubtful.push_back(step.arc);
    for (const int link : state_.cut().links()) doubtful.insert(doubtful.end(), {2 * link, 2 * link + 1});
    std::sort(doubtful.begin(), doubtful.end());
    doubtful.erase(std::unique(doubtful.begin(), doubtful.end()), doubtful.end());
    const auto of_arc = [](const std::vector<Step>& all, int arc) {
        return std::ranges::equal_range(all, arc, {}, &Step::arc);
    };
    std::vector<int> streams;
    for (const int arc : doubtful) {
        const auto& capacity = state_.capacity()[at(arc)];
        if (!capacity || state_.cut().arc_gone(arc)) continue;
        const auto& tags = [&](int stream) {
            const auto vlan = state_.forwarding().streams[at(stream)].vlan;
            if (network.is_link_arc(arc)) return state_.paths().links[at(arc / 2)].a.tags(vlan);
            return state_.paths().leaves[at(arc / 2) - network.links.size()].tags(vlan);
        };
        const auto added = of_arc(steps.added, arc), removed = of_arc(steps.removed, arc);
        // Each rate rounded up: never below the truth, and nearly always enough to see that all fits.
        auto most = before.arcs[at(arc)].whole;
        for (const auto& step : added) most += rates_.of(step.stream, true).ceil();
        if (most <= *capacity) continue;
        streams.assign(before.arcs[at(arc)].streams.begin(), before.arcs[at(arc)].streams.end());
        for (const auto& step : removed) std::erase(streams, step.stream);
        for (const auto& step : added) streams.push_back(step.stream);
        std::sort(streams.begin(), streams.end());
        const auto wire = rates_.sum(streams, tags);
        if (wire.ceil() > *capacity)
            change.overfull.push_back(
                {preset, arc, wire, *capacity, std::binary_search(already.begin(), already.end(), arc)});
    }
}

LoadChange LoadMemory::change() {
    if (!state_.vlans_stand()) return change_worked_out_anew();
    find_stale();
    LoadChange change;
    std::vector<Walked> walked;
    walked.reserve(stale_list_.size());
    for (const int unit : stale_list_)
        walked.push_back(walk({state_.network(), state_.paths(), state_.forwarding()}, again_, unit));
    for (const auto& each : walked) judge_pictures(each, change);
    const int presets = static_cast<int>(loads_.presets.size());
    for (int preset = presets == 0 ? -1 : 0; preset < presets; ++preset)
        judge_arcs(preset, steps_of(preset, walked), change);
    settle(change, [&](int preset, int stream, int subscription) {
        return still_served(walked, preset, stream, subscription);
    });
    return change;
}

bool LoadMemory::still_served(const std::vector<Walked>& walked, int preset, int stream, int subscription) const {
    const int index = wanted_unit_[at(preset)][at(stream)];
    const auto again = std::lower_bound(walked.begin(), walked.end(), index,
                                        [](const Walked& each, int unit) { return each.unit < unit; });
    const auto& asked = stale_[at(index)] ? again->asked : units_[at(index)].asked;
    return std::any_of(asked.begin(), asked.end(), [&](const Asked& each) {
        return each.stream == stream && each.subscription == subscription && each.served;
    });
}

/// In order; and a picture with a twin is lost only when both are, and away only while neither comes as before.
void LoadMemory::settle(LoadChange& change, const Served& served) const {
    std::sort(change.lost.begin(), change.lost.end());
    std::sort(change.moved.begin(), change.moved.end());
    if (!has_twins_) return;
    const auto arriving = [&](const Picture& picture) {
        const int stream = stream_of_[at(picture.subscription)];
        int count = 0;
        for (const int each : {stream, twins_[at(stream)]})
            count += each >= 0 && served(picture.preset, each, picture.subscription);
        return count;
    };
    change.lost.erase(std::unique(change.lost.begin(), change.lost.end()), change.lost.end());
    std::erase_if(change.lost, [&](const Picture& picture) { return arriving(picture) > 0; });
    std::vector<MovedPicture> moved;
    for (std::size_t i = 0; i < change.moved.size();) {
        std::size_t next = i;
        while (next < change.moved.size() && change.moved[next].picture == change.moved[i].picture) ++next;
        if (static_cast<int>(next - i) >= arriving(change.moved[i].picture)) moved.push_back(change.moved[i]);
        i = next;
    }
    change.moved = std::move(moved);
}

/// Streams may have moved to other VLANs, so the units of the whole network no longer hold.
LoadChange LoadMemory::change_worked_out_anew() {
    const auto anew =
        find_link_loads(whole_.wiring, state_.network(), state_.paths(), state_.trees(), state_.forwarding());
    LoadChange change;
    const auto arcs_by_stream = [&](const PresetLoad& load) {
        std::vector<std::vector<int>> arcs(encoders_.size());
        for (int arc = 0; arc < static_cast<int>(load.arcs.size()); ++arc)
            for (const int stream : load.arcs[at(arc)].streams) arcs[at(stream)].push_back(arc);
        return arcs;
    };
    for (std::size_t p = 0; p < anew.presets.size(); ++p) {
        const auto arcs = arcs_by_stream(anew.presets[p]);
        for (int index = static_cast<int>(encoders_.size()); index < static_cast<int>(units_.size()); ++index) {
            const auto& unit = units_[at(index)];
            if (unit.preset != static_cast<int>(p)) continue;
            for (const auto& before : unit.asked) {
                auto after = before;
                const auto& way = state_.forwarding().streams[at(after.stream)];
                const auto& unserved = anew.presets[p].unserved[at(after.stream)];
                after.receiver.reset();
                if (after.decoder >= 0 && way.on_network())
                    after.receiver = receiver_of(state_.network(), state_.paths(), after.decoder, way.vlan);
                after.served = std::find(unserved.begin(), unserved.end(), after.subscription) == unserved.end();
                judge_picture(index, before, after, arcs[at(after.stream)], change);
            }
        }
    }
    const int presets = static_cast<int>(anew.presets.size());
    for (int preset = presets == 0 ? -1 : 0; preset < presets; ++preset) {
        const auto& load = preset < 0 ? anew.idle : anew.presets[at(preset)];
        const auto& already = overfull_[at(std::max(preset, 0))];
        for (int arc = 0; arc < static_cast<int>(load.arcs.size()); ++arc)
            if (const auto& capacity = state_.capacity()[at(arc)];
                capacity && !state_.cut().arc_gone(arc) && load.arcs[at(arc)].whole > *capacity)
                change.overfull.push_back({preset, arc, load.arcs[at(arc)].wire, *capacity,
                                           std::binary_search(already.begin(), already.end(), arc)});
    }
    settle(change, [&](int preset, int stream, int subscription) {
        const auto& unserved = anew.presets[at(preset)].unserved[at(stream)];
        return std::find(unserved.begin(), unserved.end(), subscription) == unserved.end();
    });
    return change;
}

}  // namespace streamwright::analysis
