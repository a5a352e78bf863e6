#include "core/analysis/latency.h"

#include "core/analysis/load_words.h"
#include "core/analysis/stream_path.h"
#include "core/model/stream_packets.h"
#include "core/standards/packet_delay.h"
#include "core/standards/wire_overhead.h"

#include <algorithm>

namespace streamwright::analysis {

namespace latency_detail {

using standards::Picoseconds;
using MaybeTime = std::optional<Picoseconds>;

base::Duration rounded_up(Picoseconds time) { return base::Duration::from_count((time + 999) / 1000); }
base::Duration rounded_down(Picoseconds time) { return base::Duration::from_count(time / 1000); }
std::optional<base::Duration> rounded_up(MaybeTime time) {
    return time ? std::optional(rounded_up(*time)) : std::nullopt;
}
MaybeTime picoseconds(const std::optional<base::Duration>& time) {
    return time ? MaybeTime(time->count() * 1000) : std::nullopt;
}
MaybeTime sum(MaybeTime a, MaybeTime b) { return a && b ? MaybeTime(*a + *b) : std::nullopt; }
void add(MaybeTime& to, MaybeTime more) { to = sum(to, more); }

/// One stream's packets on an arc.
std::int64_t frame_octets_on(const model::Stream& stream, bool tagged) {
    return model::full_frame_octets(stream) + (tagged ? standards::tag_octets : 0);
}

struct Reader : LatencyFacts {
    explicit Reader(const LatencyFacts& facts) : LatencyFacts(facts) {}
    std::vector<const model::Stream*> streams = streams_by_index(wiring);

    bool tagged(int arc, int stream) const {
        return tagged_on_arc(network, paths, arc, forwarding.streams[at(stream)].vlan);
    }

    MaybeTime propagation_of_cable(int cable) const {
        const auto& length = lengths.cables[at(cable)].length;
        const auto* type = wiring.cables[at(cable)].type;
        if (!length || !type) return std::nullopt;
        switch (type->medium) {
            case catalogue::Medium::balanced_copper:
                return standards::propagation(*length, standards::copper_delay_per_metre);
            case catalogue::Medium::multimode:
            case catalogue::Medium::singlemode:
                return standards::propagation(*length, standards::fibre_delay_per_metre);
            default:
                return std::nullopt;
        }
    }
    MaybeTime propagation_of_run(int run) const {
        MaybeTime total = 0;
        for (const int cable : runs.list[at(run)].cables) add(total, propagation_of_cable(cable));
        return total;
    }
    /// Of an aggregation group the longest member: which one a stream takes is the switch's choice.
    MaybeTime propagation(int arc) const {
        const auto edge = at(arc / 2);
        if (!network.is_link_arc(arc)) return propagation_of_run(network.leaves[edge - network.links.size()].run);
        MaybeTime longest = 0;
        for (const int run : network.links[edge].runs) {
            const auto time = propagation_of_run(run);
            longest = time && longest ? MaybeTime(std::max(*time, *longest)) : std::nullopt;
        }
        return longest;
    }

    MaybeTime serialising(int arc, int stream) const {
        const auto rate = member_rate(network, capacity, arc);
        if (!rate) return std::nullopt;
        return standards::serialisation(frame_octets_on(*streams[at(stream)], tagged(arc, stream)), *rate);
    }
    MaybeTime queueing(const PresetLoad& load, int arc, int stream) const {
        const auto rate = member_rate(network, capacity, arc);
        const auto& carried = load.arcs[at(arc)];
        if (!rate || !capacity.arcs[at(arc)] || carried.wire > base::Rate(*capacity.arcs[at(arc)])) return std::nullopt;
        Picoseconds ahead = 0;
        for (const int other : carried.streams)
            if (other != stream)
                ahead += standards::serialisation(
                    standards::wire_octets(frame_octets_on(*streams[at(other)], tagged(arc, other))), *rate);
        return ahead;
    }
    MaybeTime switching(int bridge) const {
        const auto& stated = wiring.devices[at(network.bridges[at(bridge)].devices.front())].type->bridging;
        return stated ? picoseconds(stated->forwarding_latency) : std::nullopt;
    }

    const catalogue::Codec* codec_of(int device) const {
        const auto* type = wiring.devices[at(device)].type;
        return type && type->codec ? &*type->codec : nullptr;
    }

    /// Over the whole way, part by part.
    struct Sums {
        MaybeTime lines = 0, switches = 0, queues = 0, lengths = 0;
    };
    std::optional<Sums> sums(const PresetLoad& load, int stream, int decoder) const {
        const auto arcs = stream_path(network, paths, trees, forwarding, stream, decoder);
        if (!arcs) return std::nullopt;
        Sums way;
        for (std::size_t i = 0; i < arcs->size(); ++i) {
            const int arc = (*arcs)[i];
            add(way.lines, serialising(arc, stream));
            add(way.queues, queueing(load, arc, stream));
            add(way.lengths, propagation(arc));
            if (i > 0) add(way.switches, switching(network.bridge_before(arc)));
        }
        return way;
    }

    void measure(const PresetLoad& load, int stream, int encoder, int decoder, SubscriptionLatency& out) const {
        const auto* sends = codec_of(encoder);
        const auto* shows = codec_of(decoder);
        if (sends) out.parts.encoding = sends->encode_latency;
        if (shows) out.parts.decoding = shows->decode_latency;
        const auto way = sums(load, stream, decoder);
        if (!way) return;
        const auto& [lines, switches, queues, lengths_time] = *way;
        out.parts.serialising = rounded_up(lines);
        out.parts.switching = rounded_up(switches);
        out.parts.queueing = rounded_up(queues);
        out.parts.propagation = rounded_up(lengths_time);
        const auto least = sum(sum(lines, switches), sum(lengths_time, picoseconds(out.parts.decoding)));
        const auto most = sum(least, queues);
        if (least) out.way_least = rounded_down(*least);
        out.way_most = rounded_up(most);
        out.most = rounded_up(sum(most, picoseconds(out.parts.encoding)));
    }
};

const PresetLoad* load_of(const LinkLoads& loads, model::PresetId preset) {
    for (const auto& load : loads.presets)
        if (load.preset == preset) return &load;
    return nullptr;
}

}  // namespace latency_detail

std::vector<SubscriptionLatency> find_latencies(const Facts& facts, std::optional<model::DeviceId> decoder) {
    using namespace latency_detail;
    const Reader reader(LatencyFacts{facts.get<graph::Wiring>(), facts.get<graph::Runs>(),
                                     facts.get<graph::NetworkGraph>(), facts.get<LinkCapacity>(),
                                     facts.get<VlanPaths>(), facts.get<Forwarding>(), facts.get<SpanningTrees>(),
                                     facts.get<LinkLoads>(), facts.get<CableLengths>()});
    graph::IdIndex stream_ids;
    stream_ids.reserve(reader.streams.size());
    for (const auto* stream : reader.streams) stream_ids.add(stream->id.bits());
    std::vector<SubscriptionLatency> all;
    int index = -1;
    for (const auto& row : reader.wiring.design.subscriptions) {
        ++index;
        if (decoder && row.decoder != *decoder) continue;
        SubscriptionLatency each{row.id, row.preset, row.stream, {}, {}, {}, {}};
        const auto stream = stream_ids.find(row.stream.bits());
        const auto* load = load_of(reader.loads, row.preset);
        const auto shows = reader.wiring.device_index(row.decoder);
        const auto sends = stream ? reader.wiring.device_index(reader.streams[at(*stream)]->encoder) : std::nullopt;
        if (load && shows && sends) {
            const auto& unserved = load->unserved[at(*stream)];
            if (std::find(unserved.begin(), unserved.end(), index) == unserved.end())
                reader.measure(*load, *stream, *sends, *shows, each);
        }
        all.push_back(each);
    }
    return all;
}

std::optional<WayTime> way_time(const LatencyFacts& facts, const PresetLoad& load, int stream, int decoder) {
    using namespace latency_detail;
    const auto way = Reader(facts).sums(load, stream, decoder);
    if (!way) return std::nullopt;
    const auto least = sum(sum(way->lines, way->switches), way->lengths), most = sum(least, way->queues);
    if (!most) return std::nullopt;
    return WayTime{rounded_down(*least), rounded_up(*most)};
}

std::optional<base::Duration> skew(const std::vector<SubscriptionLatency>& all, const SubscriptionLatency& of) {
    std::vector<const SubscriptionLatency*> same;
    for (const auto& each : all) {
        if (each.preset != of.preset || each.stream != of.stream) continue;
        if (!each.way_most) return std::nullopt;  // the least is known where the most is
        same.push_back(&each);
    }
    if (same.size() < 2) return std::nullopt;
    std::partial_sort(same.begin(), same.begin() + 2, same.end(),
                      [](auto* a, auto* b) { return *a->way_least < *b->way_least; });
    auto apart = *same[0]->way_most - *same[1]->way_least;
    for (std::size_t i = 1; i < same.size(); ++i) apart = std::max(apart, *same[i]->way_most - *same[0]->way_least);
    return apart;
}

}  // namespace streamwright::analysis
