// While presets change, a stream that was left still flows until the last-member query time has run out, and the new
// one is there already: for a moment both share every link toward the receiver.
#include "core/analysis/facts/rate_table.h"
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"
#include "core/standards/igmp.h"

#include <algorithm>
#include <iterator>
#include <map>

namespace streamwright::analysis::rules::switching_overlap {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT(
        "%1: when preset %2 gives way to %3, old and new streams share ports (%4) for about %5, more than "
        "they carry; the worst, toward %6, would need %7 of %8."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3: when preset %4 gives way to %5, old and new streams share it for about %6 and "
                      "need %7 of %8.")};

constexpr standards::Citation sources[] = {
    standards::leave_time_source,
    {"IETF", "RFC 9166", "fast-leave of a snooping instance", standards::Standing::memory},
    {"IEEE", "802.3", "clause 4.4 (preamble, gap)"}};

constexpr RuleWords words{.id = "switching-overlap",
                          .theme = Theme::multicast,
                          .title = "Old and new streams share a link while presets change",
                          .meaning =
                              "Pictures break up for a moment at each change, also those that did not change: the "
                              "switch asks whether anyone else still wants the old stream before it stops it.",
                          .measured =
                              "For every two presets, the streams of both on each direction of a link are added up, "
                              "each once, and held against its capacity. Ports that leave fast drop the old stream "
                              "at once and are left out, where one receiver is behind them. What a preset overfills "
                              "by itself is told by another rule.",
                          .remedy =
                              "Let the switch leave fast on ports with one receiver, use a faster link, lower the "
                              "rate of streams, or let the control system show nothing for a moment in between.",
                          .offers = "Let the switch leave fast where one receiver is behind a port.",
                          .patterns = patterns,
                          .sources = sources};

/// The two presets that need most of an arc while one gives way to the other.
struct Overlap {
    int before = 0, after = 0;
    base::Rate wire;
    std::vector<int> streams;
};

/// A port with one receiver behind it: its switch, and the port there.
struct OneReceiver {
    int bridge = 0;
    graph::PortAt port;
};

struct Reader : LoadReader {
    const LinkLoads& loads;
    std::vector<bool> chained;
    std::optional<RateTable> rates;  // made when the first two presets do not fit together
};

std::optional<OneReceiver> one_receiver(const Reader& r, int arc) {
    const int links = static_cast<int>(r.network.links.size());
    if (!r.network.is_link_arc(arc)) {
        const auto& leaf = r.network.leaves[at(arc / 2 - links)];
        if (arc % 2 == 0) return std::nullopt;  // from the device
        return OneReceiver{leaf.bridge, leaf.bridge_port};
    }
    const auto& link = r.network.links[at(arc / 2)];
    const bool to_b = arc % 2 == 0;
    if (r.chained[at(arc / 2)] || !r.network.bridges[at(to_b ? link.b : link.a)].endpoint) return std::nullopt;
    return OneReceiver{to_b ? link.a : link.b, to_b ? link.a_ports.front() : link.b_ports.front()};
}

bool leaves_fast(const Reader& r, const OneReceiver& behind) {
    const auto& device = r.wiring.devices[at(behind.port.device)];
    if (device.type && device.type->bridging && !device.type->bridging->fast_leave.value_or(true)) return false;
    const auto* port = r.wiring.port_override(behind.port);
    return (device.row && device.row->bridging.fast_leave) || (port && port->fast_leave);
}

base::Rate rate_together(Reader& r, int arc, std::span<const int> streams) {
    if (!r.rates) r.rates.emplace(r.wiring.design.streams);
    return r.rates->sum(streams, [&](int stream) {
        return tagged_on_arc(r.network, r.paths, arc, r.forwarding.streams[at(stream)].vlan);
    });
}

std::optional<Overlap> worst_overlap(Reader& r, int arc, base::BitRate capacity) {
    const auto& presets = r.loads.presets;
    std::optional<Overlap> worst;
    for (std::size_t p = 0; p < presets.size(); ++p)
        for (std::size_t q = p + 1; q < presets.size(); ++q) {
            const auto &before = presets[p].arcs[at(arc)], &after = presets[q].arcs[at(arc)];
            if (before.whole.count() <= capacity.count() - after.whole.count()) continue;
            const base::Rate most(capacity);
            if (before.wire > most || after.wire > most) continue;
            Overlap overlap{static_cast<int>(p), static_cast<int>(q), {}, {}};
            std::set_union(before.streams.begin(), before.streams.end(), after.streams.begin(), after.streams.end(),
                           std::back_inserter(overlap.streams));
            overlap.wire = rate_together(r, arc, overlap.streams);
            if (overlap.wire > most && (!worst || overlap.wire > worst->wire)) worst = std::move(overlap);
        }
    return worst;
}

base::Duration leave_time(const model::Settings& settings) {
    using namespace base::literals;
    return standards::leave_time(
        {settings.robustness, 1_s * settings.query_interval_s, 1_s * settings.query_response_s});
}

void explain(const Reader& r, int arc, const Overlap& overlap, Finding& finding) {
    const auto& settings = r.wiring.design.settings();
    finding.measured = overlap.wire.ceil();
    finding.limit = *r.capacity.arcs[at(arc)];
    finding.terms = load_terms(r.wiring, r.network, r.paths, r.forwarding, arc, overlap.streams);
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("last-member query time: 1 s x %1 = %2"),
                                 {std::int64_t{settings.robustness}, leave_time(settings)}));
}

void tell_link(const Reader& r, int arc, const Overlap& overlap, Findings& out) {
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, arc);
    const auto &before = r.loads.presets[at(overlap.before)], &after = r.loads.presets[at(overlap.after)];
    auto finding = found(words.id, Severity::warning, {ends.link, ends.from, ends.to},
                         {named(ends.link), named(ends.from), named(ends.to), named(before.preset), named(after.preset),
                          leave_time(r.wiring.design.settings()), overlap.wire.ceil(), *r.capacity.arcs[at(arc)]},
                         1);
    explain(r, arc, overlap, finding);
    out.push_back(std::move(finding));
}

/// Ports of one switch that share, and the worst of them.
struct SharedPorts {
    std::int64_t count = 0;
    int arc = 0;
    Overlap worst;
};

void tell_switch(const Reader& r, int bridge, const SharedPorts& ports, Findings& out) {
    const int device = r.network.bridges[at(bridge)].devices.front();
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, ports.arc);
    const auto &before = r.loads.presets[at(ports.worst.before)], &after = r.loads.presets[at(ports.worst.after)];
    auto finding = found(words.id, Severity::warning, {device_id(r.wiring, device)},
                         {named(device_id(r.wiring, device)), named(before.preset), named(after.preset), ports.count,
                          leave_time(r.wiring.design.settings()), named(ends.to), ports.worst.wire.ceil(),
                          *r.capacity.arcs[at(ports.arc)]},
                         0);
    explain(r, ports.arc, ports.worst, finding);
    const auto* type = r.wiring.devices[at(device)].type;
    if (type && type->bridging && type->bridging->fast_leave.value_or(false)) {
        auto row = device_settings(r.wiring, device);
        row.bridging.fast_leave = true;
        finding.remedies.push_back(
            {line(STREAMWRIGHT_TEXT("Let %1 leave fast where one receiver is behind a port"), {named(row.id)}),
             model::ConfigureDevice{std::move(row)}});
    }
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           Findings& out) {
    if (loads.presets.size() < 2) return;
    Reader reader{{wiring, runs, network, capacity, paths, forwarding}, loads, chained_links(network), {}};
    std::map<int, SharedPorts> shared;
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        if (!capacity.arcs[at(arc)]) continue;
        const auto behind = one_receiver(reader, arc);
        if (behind && leaves_fast(reader, *behind)) continue;
        auto overlap = worst_overlap(reader, arc, *capacity.arcs[at(arc)]);
        if (!overlap) continue;
        if (!behind) {
            tell_link(reader, arc, *overlap, out);
            continue;
        }
        auto& ports = shared[behind->bridge];
        if (++ports.count == 1 || overlap->wire > ports.worst.wire) ports.arc = arc, ports.worst = std::move(*overlap);
    }
    for (const auto& [bridge, ports] : shared) tell_switch(reader, bridge, ports, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::switching_overlap
