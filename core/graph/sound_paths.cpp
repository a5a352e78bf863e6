#include "core/graph/sound_paths.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/strong_components.hpp>

#include <algorithm>
#include <map>

namespace streamwright::graph {

namespace sound_detail {

using catalogue::DeviceKind;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

bool is_endpoint(const WiredDevice& device) { return device.type && device.type->codec; }

/// Out of an endpoint come its decoder's sound, and its encoder's at a local output.
SoundPlace leaving(const Wiring& wiring, PortAt port) {
    const auto& device = wiring.devices[at(port.device)];
    return {port.device, is_endpoint(device) && !wiring.port_type(port).local_output};
}

/// What makes sound itself: nothing that comes into it goes on.
bool makes_sound(const WiredDevice& device) {
    const auto kind = device.type->kind;
    return kind == DeviceKind::source || kind == DeviceKind::camera || kind == DeviceKind::microphone;
}

void add(SoundPaths& paths, SoundHop hop) {
    const int index = static_cast<int>(paths.hops.size());
    paths.from[SoundPaths::place(hop.from)].push_back(index);
    paths.to[SoundPaths::place(hop.to)].push_back(index);
    paths.hops.push_back(hop);
}

/// It sends what it decodes, so that its streams leave from where it decodes.
bool is_gateway(const WiredDevice& device) {
    return device.type && device.type->codec && device.type->codec->sends_family;
}

/// A packed picture carries none; sound is a stream beside it.
bool carries_sound(const model::Stream& stream) {
    const bool picture = stream.kind == catalogue::StreamKind::video && !stream.picture;
    return picture || stream.kind == catalogue::StreamKind::audio;
}

}  // namespace sound_detail

SoundPaths find_sound_paths(const Wiring& wiring, const SignalGraph& signals, std::optional<model::PresetId> preset) {
    using namespace sound_detail;
    SoundPaths paths;
    paths.from.resize(2 * wiring.devices.size());
    paths.to.resize(2 * wiring.devices.size());
    for (int i = 0; i < static_cast<int>(signals.hops.size()); ++i) {
        const auto& hop = signals.hops[at(i)];
        if (makes_sound(wiring.devices[at(hop.to.device)])) continue;
        add(paths, {leaving(wiring, hop.from), {hop.to.device, false}, i, nullptr});
    }
    if (!preset) return paths;
    for (const auto& [row, index, to] : wiring.subscriptions) {
        if (row->preset != *preset || index < 0 || to < 0) continue;
        const auto& [stream, from] = wiring.streams[at(index)];
        if (from < 0 || !carries_sound(*stream)) continue;
        add(paths, {{from, is_gateway(wiring.devices[at(from)])}, {to, true}, -1, stream});
    }
    return paths;
}

bool has_sound_leads(const Wiring& wiring, const SignalGraph& signals) {
    return std::any_of(signals.hops.begin(), signals.hops.end(), [&](const SignalHop& hop) {
        return wiring.port_type(hop.from).signal == catalogue::Signal::audio;
    });
}

bool fed_with_sound(const Wiring& wiring, const SignalGraph& signals, int device) {
    using namespace sound_detail;
    std::vector<bool> seen(wiring.devices.size(), false);
    std::vector<int> open{device};
    while (!open.empty()) {
        const int here = open.back();
        open.pop_back();
        if (seen[at(here)]) continue;
        seen[at(here)] = true;
        for (const int index : signals.hops_to[at(here)]) {
            const auto& from = signals.hops[at(index)].from;
            const auto& before = wiring.devices[at(from.device)];
            if (!before.type || makes_sound(before) || leaving(wiring, from).decoding) return true;
            open.push_back(from.device);
        }
    }
    return false;
}

std::vector<std::vector<SoundPlace>> sound_rings(const SoundPaths& paths) {
    using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::directedS>;
    Graph graph(paths.from.size());
    for (const auto& hop : paths.hops) boost::add_edge(SoundPaths::place(hop.from), SoundPaths::place(hop.to), graph);
    std::vector<int> part(paths.from.size());
    boost::strong_components(graph, part.data());
    std::map<int, std::vector<SoundPlace>> rings;
    for (std::size_t i = 0; i < part.size(); ++i)
        if (!paths.from[i].empty() && !paths.to[i].empty())
            rings[part[i]].push_back({static_cast<int>(i / 2), i % 2 == 1});
    std::vector<std::vector<SoundPlace>> result;
    for (auto& [number, ring] : rings) {
        const auto onto_itself = [&](const SoundHop& hop) { return hop.from == hop.to && hop.from == ring.front(); };
        if (ring.size() > 1 || std::any_of(paths.hops.begin(), paths.hops.end(), onto_itself))
            result.push_back(std::move(ring));
    }
    std::sort(result.begin(), result.end());
    return result;
}

}  // namespace streamwright::graph
