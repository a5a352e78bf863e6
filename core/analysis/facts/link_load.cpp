#include "core/analysis/facts/link_load.h"

#include "core/analysis/facts/rate_table.h"
#include "core/analysis/facts/stream_walk.h"
#include "core/standards/wire_overhead.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace streamwright::analysis {

namespace load_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// A subscription with its names resolved.
struct Wanted {
    int stream = 0, subscription = 0, decoder = -1;
    std::optional<Receiver> receiver;
};

/// Everything about loads that presets share.
struct LoadRun {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const Forwarding& forwarding;
    StreamWalk walk;
    RateTable rates;
    std::vector<std::uint64_t> stream_ids;
    std::vector<std::vector<Wanted>> wanted;  // per preset
    std::vector<int> idle_starts, idle_arcs;  // per stream: its arcs when nothing is subscribed
    std::vector<std::pair<int, int>> direct;  // devices joined without a network, both ways

    LoadRun(const graph::Wiring& w, const graph::NetworkGraph& n, const VlanPaths& p, const SpanningTrees& t,
            const Forwarding& f)
        : wiring(w), network(n), paths(p), forwarding(f), walk(n, t, f), rates(w.design.streams) {
        for (const auto& stream : wiring.design.streams) stream_ids.push_back(stream.id.bits());
        for (const auto& each : network.directs) {
            direct.emplace_back(each.a.device, each.b.device);
            direct.emplace_back(each.b.device, each.a.device);
        }
        std::sort(direct.begin(), direct.end());
    }

    int stream_count() const { return static_cast<int>(stream_ids.size()); }

    bool tagged_on(int arc, int stream) const {
        const auto vlan = forwarding.streams[at(stream)].vlan;
        if (network.is_link_arc(arc)) return paths.links[at(arc / 2)].a.tags(vlan);
        return paths.leaves[at(arc / 2) - network.links.size()].tags(vlan);
    }

    std::optional<Receiver> receiver_of(int decoder, VlanIndex vlan) const {
        if (const int bridge = network.bridge_of_device[at(decoder)]; bridge >= 0) return Receiver{bridge, -1};
        for (const int leaf : network.leaves_of_device[at(decoder)])
            if (paths.leaves[at(leaf)].carries(vlan))
                return Receiver{network.leaves[at(leaf)].bridge, network.leaf_arc(leaf, false)};
        return {};
    }

    void read_subscriptions(const std::vector<model::PresetId>& presets) {
        std::map<model::PresetId, std::size_t> place;
        for (std::size_t i = 0; i < presets.size(); ++i) place[presets[i]] = i;
        wanted.resize(presets.size());
        int index = -1;
        for (const auto& row : wiring.design.subscriptions) {
            ++index;
            const auto preset = place.find(row.preset);
            const auto stream = std::lower_bound(stream_ids.begin(), stream_ids.end(), row.stream.bits());
            if (preset == place.end() || stream == stream_ids.end() || *stream != row.stream.bits()) continue;
            Wanted each{static_cast<int>(stream - stream_ids.begin()), index, -1, {}};
            const auto& way = forwarding.streams[at(each.stream)];
            if (const auto decoder = wiring.device_index(row.decoder)) {
                each.decoder = *decoder;
                if (way.on_network()) each.receiver = receiver_of(*decoder, way.vlan);
            }
            wanted[preset->second].push_back(each);
        }
    }

    void walk_idle() {
        idle_starts.push_back(0);
        for (const auto& way : forwarding.streams) {
            walk.walk(way, {}, idle_arcs);
            idle_starts.push_back(static_cast<int>(idle_arcs.size()));
        }
    }

    std::span<const int> idle(int stream) const {
        return {idle_arcs.data() + idle_starts[at(stream)], idle_arcs.data() + idle_starts[at(stream) + 1]};
    }

    /// Fills the load of each arc from the arcs of each stream. An arc that carries what it carries idle costs nothing.
    void fill(PresetLoad& load, const std::vector<std::span<const int>>& arcs_of, const PresetLoad* idle_load) {
        std::vector<int> counts(at(network.arc_count()), 0);
        for (const auto& arcs : arcs_of)
            for (const int arc : arcs) ++counts[at(arc)];
        load.arcs.resize(counts.size());
        for (std::size_t i = 0; i < counts.size(); ++i)
            if (counts[i] > 0) load.arcs[i].streams.reserve(at(counts[i]));
        for (std::size_t s = 0; s < arcs_of.size(); ++s)
            for (const int arc : arcs_of[s]) load.arcs[at(arc)].streams.push_back(static_cast<int>(s));
        for (std::size_t i = 0; i < load.arcs.size(); ++i) {
            auto& arc = load.arcs[i];
            if (idle_load && idle_load->arcs[i].streams == arc.streams)
                arc.wire = idle_load->arcs[i].wire;
            else
                arc.wire = rates.sum(arc.streams, [&](int s) { return tagged_on(static_cast<int>(i), s); });
        }
    }

    PresetLoad idle_load() {
        PresetLoad load{model::PresetId(0), {}, {}};
        std::vector<std::span<const int>> arcs_of;
        for (int s = 0; s < stream_count(); ++s) arcs_of.push_back(idle(s));
        load.unserved.resize(stream_ids.size());
        fill(load, arcs_of, nullptr);
        return load;
    }

    using GroupClass = std::pair<VlanIndex, std::uint64_t>;  // groups of one MAC address in one VLAN
    GroupClass class_of(int stream) const {
        const auto& way = forwarding.streams[at(stream)];
        return {way.vlan, way.group.mac()};
    }

    /// What every bridge has learned in a preset, by class of groups.
    std::vector<std::pair<GroupClass, Membership>> learn(const std::vector<Wanted>& subscriptions) {
        std::vector<std::tuple<VlanIndex, GroupName, Receiver>> joins;
        for (const auto& each : subscriptions)
            if (each.receiver) {
                const auto& way = forwarding.streams[at(each.stream)];
                joins.emplace_back(way.vlan, way.group, *each.receiver);
            }
        std::sort(joins.begin(), joins.end());
        joins.erase(std::unique(joins.begin(), joins.end()), joins.end());
        std::vector<std::pair<GroupClass, Membership>> learned;
        std::vector<Membership> fresh;
        for (const auto& [vlan, group, receiver] : joins) {
            fresh.clear();
            walk.report(vlan, receiver, group, fresh);
            for (const auto& member : fresh) learned.push_back({{vlan, group.mac()}, member});
        }
        std::sort(learned.begin(), learned.end());
        learned.erase(std::unique(learned.begin(), learned.end()), learned.end());
        return learned;
    }

    bool served(const Wanted& each) const {
        const auto& way = forwarding.streams[at(each.stream)];
        if (!each.receiver) {
            const auto encoder =
                wiring.device_index(wiring.design.streams.find(model::StreamId(stream_ids[at(each.stream)]))->encoder);
            return encoder && std::binary_search(direct.begin(), direct.end(), std::pair(*encoder, each.decoder));
        }
        if (each.receiver->arc >= 0) return walk.loaded(each.receiver->arc);
        return walk.visited(each.receiver->bridge) && way.source_bridge != each.receiver->bridge;
    }

    PresetLoad preset_load(model::PresetId preset, std::vector<Wanted> subscriptions, const PresetLoad& idle_load) {
        PresetLoad load{preset, {}, {}};
        load.unserved.resize(stream_ids.size());
        const auto learned = learn(subscriptions);
        std::stable_sort(subscriptions.begin(), subscriptions.end(),
                         [](const auto& a, const auto& b) { return a.stream < b.stream; });
        std::vector<int> arcs;
        std::vector<std::pair<int, int>> walked(stream_ids.size(), {-1, -1});  // ranges of arcs
        std::vector<Membership> known;
        auto next = subscriptions.begin();
        for (int s = 0; s < stream_count(); ++s) {
            const auto group = class_of(s);
            auto member = std::lower_bound(learned.begin(), learned.end(), group,
                                           [](const auto& each, const auto& key) { return each.first < key; });
            const bool wanted_here = next != subscriptions.end() && next->stream == s;
            if (!wanted_here && (member == learned.end() || member->first != group)) continue;
            known.clear();
            for (; member != learned.end() && member->first == group; ++member) known.push_back(member->second);
            const int first = static_cast<int>(arcs.size());
            walk.walk(forwarding.streams[at(s)], known, arcs);
            walked[at(s)] = {first, static_cast<int>(arcs.size())};
            for (; next != subscriptions.end() && next->stream == s; ++next)
                if (!served(*next)) load.unserved[at(s)].push_back(next->subscription);
        }
        std::vector<std::span<const int>> arcs_of;
        for (int s = 0; s < stream_count(); ++s) {
            const auto [from, to] = walked[at(s)];
            arcs_of.push_back(from < 0 ? idle(s) : std::span<const int>(arcs.data() + from, arcs.data() + to));
        }
        fill(load, arcs_of, &idle_load);
        return load;
    }
};

std::vector<model::PresetId> ordered_presets(const model::Design& design) {
    std::vector<std::pair<int, model::PresetId>> order;
    for (const auto& row : design.presets) order.emplace_back(row.number, row.id);
    std::sort(order.begin(), order.end());
    std::vector<model::PresetId> presets;
    for (const auto& [number, id] : order) presets.push_back(id);
    return presets;
}

}  // namespace load_detail

LinkLoads find_link_loads(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                          const SpanningTrees& trees, const Forwarding& forwarding) {
    load_detail::LoadRun run(wiring, network, paths, trees, forwarding);
    const auto presets = load_detail::ordered_presets(wiring.design);
    run.read_subscriptions(presets);
    run.walk_idle();
    LinkLoads loads;
    loads.idle = run.idle_load();
    loads.presets.reserve(presets.size());
    for (std::size_t i = 0; i < presets.size(); ++i)
        loads.presets.push_back(run.preset_load(presets[i], std::move(run.wanted[i]), loads.idle));
    return loads;
}

base::Rate wire_rate(const model::Stream& stream, bool tagged) {
    return standards::wire_rate(std::max(stream.payload_rate, base::BitRate{}),
                                std::clamp(stream.payload_octets, 1, 65535), stream.rtp, tagged ? 1 : 0);
}

}  // namespace streamwright::analysis
