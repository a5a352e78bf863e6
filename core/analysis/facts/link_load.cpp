#include "core/analysis/facts/link_load.h"

#include "core/analysis/facts/rate_table.h"
#include "core/analysis/facts/stream_walk.h"
#include "core/analysis/facts/twins.h"
#include "core/model/stream_packets.h"

#include <algorithm>
#include <numeric>
#include <span>
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
    std::vector<int> class_of;                     // per stream
    std::vector<int> class_starts, class_streams;  // per class + 1: ranges of streams
    std::vector<std::vector<Wanted>> wanted;       // per preset
    std::vector<int> idle_starts, idle_arcs;       // per stream: its arcs when nothing is subscribed
    std::vector<std::pair<int, int>> direct;       // devices joined without a network, both ways

    LoadRun(const graph::Wiring& w, const graph::NetworkGraph& n, const VlanPaths& p, const SpanningTrees& t,
            const Forwarding& f)
        : wiring(w), network(n), paths(p), forwarding(f), walk(n, t, f), rates(w.design.streams) {
        find_classes();
        for (const auto& each : network.directs) {
            direct.emplace_back(each.a.device, each.b.device);
            direct.emplace_back(each.b.device, each.a.device);
        }
        std::sort(direct.begin(), direct.end());
    }

    int stream_count() const { return static_cast<int>(wiring.streams.size()); }

    bool tagged_on(int arc, int stream) const {
        const auto vlan = forwarding.streams[at(stream)].vlan;
        if (network.is_link_arc(arc)) return paths.links[at(arc / 2)].a.tags(vlan);
        return paths.leaves[at(arc / 2) - network.links.size()].tags(vlan);
    }

    void read_subscriptions(const std::vector<model::PresetId>& presets) {
        wanted.resize(presets.size());
        const auto twins = twin_streams(wiring);
        int index = -1;
        for (const auto& [row, stream, decoder] : wiring.subscriptions) {
            ++index;
            const auto preset = std::find(presets.begin(), presets.end(), row->preset);
            if (preset == presets.end() || stream < 0) continue;
            for (const int taken : {stream, twins[at(stream)]}) {
                if (taken < 0) continue;
                Wanted each{taken, index, decoder, {}};
                const auto& way = forwarding.streams[at(taken)];
                if (decoder >= 0 && way.on_network()) each.receiver = receiver_of(network, paths, decoder, way.vlan);
                wanted[at(static_cast<int>(preset - presets.begin()))].push_back(each);
            }
        }
    }

    /// Groups of one MAC address in one VLAN are looked at together; nearly always that is one stream.
    void find_classes() {
        std::vector<std::tuple<VlanIndex, std::uint64_t, int>> order;
        for (int s = 0; s < stream_count(); ++s)
            order.emplace_back(forwarding.streams[at(s)].vlan, forwarding.streams[at(s)].group.mac(), s);
        std::sort(order.begin(), order.end());
        class_of.resize(order.size());
        for (std::size_t i = 0; i < order.size(); ++i) {
            const auto& [vlan, mac, stream] = order[i];
            if (i == 0 || vlan != std::get<0>(order[i - 1]) || mac != std::get<1>(order[i - 1]))
                class_starts.push_back(static_cast<int>(i));
            class_streams.push_back(stream);
            class_of[at(stream)] = static_cast<int>(class_starts.size()) - 1;
        }
        class_starts.push_back(static_cast<int>(order.size()));
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
        std::vector<int> starts(at(network.arc_count()) + 1, 0);
        for (const auto& arcs : arcs_of)
            for (const int arc : arcs) ++starts[at(arc) + 1];
        std::partial_sum(starts.begin(), starts.end(), starts.begin());
        auto pool = std::make_shared<std::vector<int>>(at(starts.back()));
        auto next = starts;
        for (std::size_t s = 0; s < arcs_of.size(); ++s)
            for (const int arc : arcs_of[s]) (*pool)[at(next[at(arc)]++)] = static_cast<int>(s);
        load.arcs.resize(starts.size() - 1);
        for (std::size_t i = 0; i < load.arcs.size(); ++i) {
            auto& arc = load.arcs[i];
            arc.streams = {pool->data() + starts[i], pool->data() + starts[i + 1]};
            if (arc.streams.empty()) continue;
            if (idle_load && std::ranges::equal(idle_load->arcs[i].streams, arc.streams)) {
                arc.wire = idle_load->arcs[i].wire;
                arc.whole = idle_load->arcs[i].whole;
            } else {
                arc.wire = rates.sum(arc.streams, [&](int s) { return tagged_on(static_cast<int>(i), s); });
                arc.whole = arc.wire.ceil();
            }
        }
        load.pool = std::move(pool);
    }

    PresetLoad idle_load() {
        PresetLoad load{model::PresetId(0), {}, {}, {}};
        std::vector<std::span<const int>> arcs_of;
        for (int s = 0; s < stream_count(); ++s) arcs_of.push_back(idle(s));
        load.unserved.resize(wiring.streams.size());
        fill(load, arcs_of, nullptr);
        return load;
    }

    bool served(const Wanted& each) const {
        const auto& way = forwarding.streams[at(each.stream)];
        if (!each.receiver)
            return std::binary_search(direct.begin(), direct.end(),
                                      std::pair(wiring.streams[at(each.stream)].encoder, each.decoder));
        if (each.receiver->arc >= 0) return walk.loaded(each.receiver->arc);
        return walk.visited(each.receiver->bridge) && way.source_bridge != each.receiver->bridge;
    }

    /// The preset's subscriptions in the order of their classes, without comparing any.
    std::pair<std::vector<int>, std::vector<Wanted>> by_class(const std::vector<Wanted>& subscriptions) const {
        std::vector<int> starts(class_starts.size(), 0);
        for (const auto& each : subscriptions) ++starts[at(class_of[at(each.stream)]) + 1];
        std::partial_sum(starts.begin(), starts.end(), starts.begin());
        auto next = starts;
        std::vector<Wanted> sorted(subscriptions.size());
        for (const auto& each : subscriptions) sorted[at(next[at(class_of[at(each.stream)])]++)] = each;
        return {std::move(starts), std::move(sorted)};
    }

    PresetLoad preset_load(model::PresetId preset, const std::vector<Wanted>& subscriptions,
                           const PresetLoad& idle_load) {
        PresetLoad load{preset, {}, {}, {}};
        load.unserved.resize(at(stream_count()));
        const auto [starts, sorted] = by_class(subscriptions);
        std::vector<int> arcs;
        std::vector<std::pair<int, int>> walked(at(stream_count()), {-1, -1});  // ranges of arcs
        std::vector<Membership> known;
        for (int c = 0; c + 1 < static_cast<int>(class_starts.size()); ++c) {
            const std::span<const Wanted> here(sorted.data() + starts[at(c)], sorted.data() + starts[at(c) + 1]);
            if (here.empty()) continue;
            known.clear();
            for (const auto& each : here)
                if (each.receiver)
                    walk.report(forwarding.streams[at(each.stream)].vlan, *each.receiver,
                                forwarding.streams[at(each.stream)].group, known);
            for (int i = class_starts[at(c)]; i < class_starts[at(c) + 1]; ++i) {
                const int s = class_streams[at(i)];
                const int first = static_cast<int>(arcs.size());
                walk.walk(forwarding.streams[at(s)], known, arcs);
                walked[at(s)] = {first, static_cast<int>(arcs.size())};
                for (const auto& each : here)
                    if (each.stream == s && !served(each)) load.unserved[at(s)].push_back(each.subscription);
            }
        }
        std::vector<std::span<const int>> arcs_of;
        arcs_of.reserve(walked.size());
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
        loads.presets.push_back(run.preset_load(presets[i], run.wanted[i], loads.idle));
    return loads;
}

base::Rate wire_rate(const model::Stream& stream, bool tagged) {
    return model::stream_wire_rate(stream, tagged ? 1 : 0);
}

}  // namespace streamwright::analysis
