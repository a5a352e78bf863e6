// A sender on a fast port sends each packet at that speed, whatever its stream's mean rate; where a stream leaves a
// switch by a slower port than it came in by, the packets of a burst wait there. How long a burst is, types do not say,
// so this asks and does not judge, once a switch.
#include "core/analysis/facts/rate_table.h"
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"
#include "core/model/stream_packets.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

namespace streamwright::analysis::rules::burst_into_slower_port {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("Streams come into %1 at %2 and leave it at %3 (ports: %4, streams: %5): %6 of every burst waits "
                      "in its buffers.")};

constexpr standards::Citation sources[] = {
    {"trade", "buffers", "a burst waits while it comes in faster than it goes out", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "burst-into-slower-port",
    .severity = Severity::advice,
    .theme = Theme::links,
    .title = "Fast sender before a slower port",
    .meaning =
        "The mean rate fits and pictures still show blocks: packets of one frame come in a burst at the sender's "
        "speed, and a switch with small buffers drops the end of it.",
    .measured =
        "For each stream of each preset the speed of the link by which it comes into a switch against that by which "
        "it leaves. Of a burst the share 1 - slow / fast waits. A picture of a sixtieth of a second that is sent in "
        "one burst is the longest that is usual.",
    .remedy =
        "Ask whether the sender paces its packets, or take a switch with enough buffer for a burst at each such port, "
        "or the same speed at both.",
    .patterns = patterns,
    .sources = sources};

constexpr std::int64_t pictures_a_second = 60;

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
    const LinkLoads& loads;
    std::vector<std::optional<base::BitRate>> speeds;  // of each arc: what one stream can use
    std::vector<std::vector<int>> into;                // per bridge: arcs that reach it
};

/// What waits at one switch: the step that keeps most of a burst back.
struct Steps {
    base::BitRate in, out;
    int stream = -1;
    std::set<int> arcs, streams;

    void add(base::BitRate from, base::BitRate to, int arc, int which) {
        arcs.insert(arc);
        streams.insert(which);
        if (stream >= 0 && passed_on(from, to) >= passed_on(in, out)) return;
        in = from, out = to, stream = which;
    }

    /// The share of a burst that goes on while it comes in, in tenths of a percent.
    static std::int64_t passed_on(base::BitRate from, base::BitRate to) {
        return std::min<std::int64_t>(to.count() / std::max<std::int64_t>(from.count() / 1000, 1), 1000);
    }
};

/// Whether the arc brings the VLAN to the bridge: the far end of a blocked link drops what comes.
bool taken_in(const Reader& r, int arc, VlanIndex vlan) {
    return !r.network.is_link_arc(arc) || r.trees.trees[at(vlan)].forwards(arc / 2);
}

std::optional<base::BitRate> speed_in(const Reader& r, const PresetLoad& preset, int bridge, int stream) {
    const auto vlan = r.forwarding.streams[at(stream)].vlan;
    for (const int arc : r.into[at(bridge)]) {
        const auto& on = preset.arcs[at(arc)].streams;
        if (std::binary_search(on.begin(), on.end(), stream) && taken_in(r, arc, vlan)) return r.speeds[at(arc)];
    }
    return std::nullopt;
}

void judge(const Reader& r, int bridge, const Steps& steps, Findings& out) {
    const auto id = device_id(r.wiring, r.network.bridges[at(bridge)].devices.front());
    const base::Percent waits{1000 - Steps::passed_on(steps.in, steps.out)};
    auto finding = found(words.id, Severity::advice, {id},
                         {named(id), steps.in, steps.out, static_cast<std::int64_t>(steps.arcs.size()),
                          static_cast<std::int64_t>(steps.streams.size()), waits});
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("1 - %1 / %2 = %3"), {steps.out, steps.in, waits}));
    const auto* row = r.wiring.streams[at(steps.stream)].row;
    const auto payload = model::payload_rate_of(*row).ceil();
    const auto octets = payload.count() / pictures_a_second / 8;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1: a sixtieth of a second of %2 is %3 kB; %4 of it waits: %5 kB"),
                                 {named(row->id), payload, octets / 1000, waits, octets / 1000 * waits.tenths / 1000}));
    out.push_back(std::move(finding));
}

/// The greatest speed at which a stream enters the network.
base::BitRate fastest_entry(const Reader& r) {
    base::BitRate fastest;
    for (const auto& way : r.forwarding.streams) {
        const auto speed = way.source_leaf ? r.speeds[at(r.network.leaf_arc(*way.source_leaf, true))] : std::nullopt;
        if (speed) fastest = std::max(fastest, *speed);
    }
    return fastest;
}

Reader reader(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkCapacity& capacity,
              const SpanningTrees& trees, const Forwarding& forwarding, const LinkLoads& loads) {
    Reader r{wiring, network, capacity, trees, forwarding, loads, {}, {}};
    r.into.resize(network.bridges.size());
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        r.speeds.push_back(member_rate(network, capacity, arc));
        if (const int bridge = network.bridge_after(arc); bridge >= 0) r.into[at(bridge)].push_back(arc);
    }
    return r;
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkCapacity& capacity,
           const SpanningTrees& trees, const Forwarding& forwarding, const LinkLoads& loads, Findings& out) {
    const auto r = reader(wiring, network, capacity, trees, forwarding, loads);
    const auto fastest = fastest_entry(r);
    const RateTable rates(wiring.design.streams);
    std::map<int, Steps> found_at;  // per bridge
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        const int bridge = network.bridge_before(arc);
        const auto& speed = r.speeds[at(arc)];
        if (bridge < 0 || !speed || *speed >= fastest || speed->count() <= 0) continue;
        for (const auto& preset : loads.presets)
            for (const int stream : preset.arcs[at(arc)].streams) {
                if (rates.of(stream, false) > base::Rate(*speed)) continue;  // more than bursts: a rule of its own
                if (const auto in = speed_in(r, preset, bridge, stream); in && *in > *speed)
                    found_at[bridge].add(*in, *speed, arc, stream);
            }
    }
    for (const auto& [bridge, steps] : found_at) judge(r, bridge, steps, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::burst_into_slower_port
