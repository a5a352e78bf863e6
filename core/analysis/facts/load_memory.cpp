#include "core/analysis/facts/load_memory.h"

#include "core/analysis/facts/twins.h"

#include <algorithm>
#include <tuple>

namespace streamwright::analysis {

namespace load_memory_detail {

/// Each list of units once, by number.
void sort_lists(std::vector<std::vector<int>>& lists) {
    for (auto& list : lists) {
        std::sort(list.begin(), list.end());
        list.erase(std::unique(list.begin(), list.end()), list.end());
    }
}

}  // namespace load_memory_detail

LoadMemory::LoadMemory(const WholeNetwork& whole, const LinkLoads& loads, const LostState& state)
    : whole_(whole),
      loads_(loads),
      state_(state),
      rates_(whole.wiring.design.streams),
      walker_(whole.network, whole.trees, whole.forwarding),
      again_(state.network(), state.trees(), state.forwarding()),
      wanted_unit_(loads.presets.size(), std::vector<int>(whole.forwarding.streams.size(), -1)),
      units_of_stream_(whole.forwarding.streams.size()),
      units_of_device_(whole.wiring.devices.size()),
      readers_(whole.paths.vlans.size() * whole.network.bridges.size()),
      flooding_readers_(readers_.size()),
      mark_(at(whole.network.arc_count()), 0),
      came_by_(whole.network.bridges.size(), -1) {
    twins_ = twin_streams(whole.wiring);
    has_twins_ = std::any_of(twins_.begin(), twins_.end(), [](int twin) { return twin >= 0; });
    for (const auto& stream : whole.wiring.streams) encoders_.push_back(stream.encoder);
    make_units();
    for (int unit = 0; unit < static_cast<int>(units_.size()); ++unit) remember(unit);
    load_memory_detail::sort_lists(readers_);
    load_memory_detail::sort_lists(flooding_readers_);
    load_memory_detail::sort_lists(units_of_device_);
    stale_.assign(units_.size(), 0);
    read_overfull();
}

void LoadMemory::make_units() {
    const auto& ways = whole_.forwarding.streams;
    const int streams = static_cast<int>(ways.size());
    std::vector<std::tuple<VlanIndex, std::uint64_t, int>> order;
    for (int s = 0; s < streams; ++s) {
        units_.push_back({-1, {}, {s}, {}});
        units_of_stream_[at(s)].push_back(s);
        order.emplace_back(ways[at(s)].vlan, ways[at(s)].group.mac(), s);
    }
    std::sort(order.begin(), order.end());
    std::vector<std::vector<int>> of_class;
    std::vector<int> class_of(ways.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        const auto& [vlan, mac, s] = order[i];
        const bool fresh =
            i == 0 || std::tie(vlan, mac) != std::tie(std::get<0>(order[i - 1]), std::get<1>(order[i - 1]));
        if (fresh) of_class.emplace_back();
        of_class.back().push_back(s);
        class_of[at(s)] = static_cast<int>(of_class.size()) - 1;
    }
    int index = -1;
    for (const auto& [row, stream, decoder] : whole_.wiring.subscriptions) {
        ++index;
        const auto preset =
            std::ranges::find(loads_.presets, row->preset, [](const auto& each) { return each.preset; });
        if (stream < 0 || preset == loads_.presets.end()) continue;
        const int p = static_cast<int>(preset - loads_.presets.begin());
        stream_of_.resize(at(index) + 1, -1);
        stream_of_[at(index)] = stream;
        for (const int taken : {stream, twins_[at(stream)]}) {
            if (taken < 0) continue;
            const int unit = wanted_unit(p, taken, of_class[at(class_of[at(taken)])]);
            units_[at(unit)].asked.push_back({taken, index, decoder, {}, false});
            if (decoder >= 0) units_of_device_[at(decoder)].push_back(unit);
        }
    }
}

/// The unit of the stream's class in the preset, made at the first call.
int LoadMemory::wanted_unit(int preset, int stream, const std::vector<int>& members) {
    if (const int known = wanted_unit_[at(preset)][at(stream)]; known >= 0) return known;
    const int unit = static_cast<int>(units_.size());
    for (const int s : members) {
        wanted_unit_[at(preset)][at(s)] = unit;
        units_of_stream_[at(s)].push_back(unit);
    }
    units_.push_back({preset, {}, members, {}});
    return unit;
}

bool LoadMemory::shows(const Side& side, const StreamWalk& walker, const Asked& asked) const {
    const int encoder = encoders_[at(asked.stream)];
    if (!asked.receiver)
        return std::any_of(side.network.directs.begin(), side.network.directs.end(), [&](const auto& each) {
            return (each.a.device == encoder && each.b.device == asked.decoder) ||
                   (each.b.device == encoder && each.a.device == asked.decoder);
        });
    if (asked.receiver->arc >= 0) return walker.loaded(asked.receiver->arc);
    return walker.visited(asked.receiver->bridge) &&
           side.forwarding.streams[at(asked.stream)].source_bridge != asked.receiver->bridge;
}

LoadMemory::Walked LoadMemory::walk(const Side& side, StreamWalk& walker, int index) const {
    const auto& unit = units_[at(index)];
    Walked walked{index, {}, unit.asked};
    std::vector<Membership> known;
    for (auto& each : walked.asked) {
        const auto& way = side.forwarding.streams[at(each.stream)];
        each.receiver.reset();
        if (each.decoder >= 0 && way.on_network())
            each.receiver = receiver_of(side.network, side.paths, each.decoder, way.vlan);
        if (each.receiver) walker.report(way.vlan, *each.receiver, way.group, known);
    }
    for (const int s : unit.streams) {
        walker.walk(side.forwarding.streams[at(s)], known, walked.arcs.emplace_back());
        for (auto& each : walked.asked)
            if (each.stream == s) each.served = shows(side, walker, each);
    }
    return walked;
}

void LoadMemory::remember(int index) {
    auto& unit = units_[at(index)];
    std::vector<Visit> visits;
    walker_.watch(&visits);
    auto walked = walk({whole_.network, whole_.paths, whole_.forwarding}, walker_, index);
    walker_.watch(nullptr);
    unit.asked = std::move(walked.asked);
    for (const auto& arcs : walked.arcs) {
        unit.starts.push_back(static_cast<int>(arcs_.size()));
        arcs_.insert(arcs_.end(), arcs.begin(), arcs.end());
    }
    unit.starts.push_back(static_cast<int>(arcs_.size()));
    const int vlan = whole_.forwarding.streams[at(unit.streams.front())].vlan;
    const auto first = at(vlan) * whole_.network.bridges.size();
    for (const auto& visit : visits) {
        readers_[first + at(visit.bridge)].push_back(index);
        if (visit.flooded) flooding_readers_[first + at(visit.bridge)].push_back(index);
    }
}

void LoadMemory::read_overfull() {
    const auto read = [&](const PresetLoad& load) {
        auto& arcs = overfull_.emplace_back();
        for (int arc = 0; arc < static_cast<int>(load.arcs.size()); ++arc)
            if (const auto& capacity = whole_.capacity.arcs[at(arc)];
                capacity && load.arcs[at(arc)].wire.ceil() > *capacity)
                arcs.push_back(arc);
    };
    for (const auto& preset : loads_.presets) read(preset);
    if (loads_.presets.empty()) read(loads_.idle);
}

std::span<const int> LoadMemory::arcs(int index, int stream) const {
    const auto& unit = units_[at(index)];
    const auto place = std::find(unit.streams.begin(), unit.streams.end(), stream) - unit.streams.begin();
    return std::span(arcs_).subspan(
        at(unit.starts[static_cast<std::size_t>(place)]),
        at(unit.starts[static_cast<std::size_t>(place) + 1] - unit.starts[static_cast<std::size_t>(place)]));
}

int LoadMemory::unit_of(int preset, int stream) const {
    const int wanted = preset < 0 ? -1 : wanted_unit_[at(preset)][at(stream)];
    return wanted < 0 ? stream : wanted;
}

const PresetLoad& LoadMemory::load(int preset) const { return preset < 0 ? loads_.idle : loads_.presets[at(preset)]; }

}  // namespace streamwright::analysis
