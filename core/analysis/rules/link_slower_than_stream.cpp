// A stream that is faster than the link it must pass: no routing and no second link helps.
#include "core/analysis/facts/rate_table.h"
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"
#include "core/analysis/stream_chain.h"
#include "core/model/stream_packets.h"

#include <algorithm>

namespace streamwright::analysis::rules::link_slower_than_stream {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 needs %2 on the wire, but %3 runs at %4 only."),
    STREAMWRIGHT_TEXT(
        "%1 needs %2 on the wire, but a member of the group %3 runs at %4 only, and a stream stays on one "
        "member.")};

constexpr standards::Citation sources[] = {{"IEEE", "802.3", "clause 4.4 (preamble, gap)"},
                                           {"IEEE", "802.1AX", "clause 6.2.4 (one conversation, one member)"}};

constexpr RuleWords words{.id = "link-slower-than-stream",
                          .theme = Theme::links,
                          .title = "Link slower than the stream that must pass",
                          .meaning =
                              "The picture breaks up from the first minute. Often an endpoint that needs 1 Gb/s hangs "
                              "on a 100 Mb/s port or on a lead with two pairs.",
                          .measured =
                              "The rate of each single stream on the wire against the speed of every link it passes;"
                              " in an aggregated group against one member, for a stream stays on one.",
                          .remedy =
                              "Use a port, transceiver and cable of a faster speed on the whole way, or lower the "
                              "rate of the stream.",
                          .patterns = patterns,
                          .sources = sources};

void judge(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, int arc, const model::Stream& stream, const base::Rate& wire, Findings& out) {
    const auto slowest = member_rate(network, capacity, arc);
    if (!slowest || wire <= base::Rate(*slowest)) return;
    const auto ends = graph::arc_ends(wiring, runs, network, arc);
    const auto edge = at(arc / 2);
    const bool group = edge < network.links.size() && network.links[edge].runs.size() > 1;
    auto finding = found(words.id, Severity::error, {ends.link, stream.id},
                         {named(stream.id), wire.ceil(), named(ends.link), *slowest}, group ? 1 : 0);
    finding.measured = wire.ceil();
    finding.limit = *slowest;
    if (model::packs_essence(stream)) finding.terms.push_back(stream_terms(stream).front());
    finding.terms.push_back(
        line(STREAMWRIGHT_TEXT("%1 payload in packets of %2 octets, with headers, preamble and gap: %3"),
             {model::payload_rate_of(stream).ceil(), model::full_payload_octets(stream), wire.ceil()}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           Findings& out) {
    const auto streams = streams_by_index(wiring);
    base::Rate fastest;
    const RateTable rates(wiring.design.streams);
    for (int i = 0; i < static_cast<int>(streams.size()); ++i) fastest = std::max(fastest, rates.of(i, true));
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        if (const auto slowest = member_rate(network, capacity, arc); !slowest || fastest <= base::Rate(*slowest))
            continue;
        std::vector<int> passing;
        const auto add = [&](const PresetLoad& load) {
            if (at(arc) >= load.arcs.size()) return;
            const auto& on_arc = load.arcs[at(arc)].streams;
            passing.insert(passing.end(), on_arc.begin(), on_arc.end());
        };
        add(loads.idle);
        for (const auto& preset : loads.presets) add(preset);
        std::sort(passing.begin(), passing.end());
        passing.erase(std::unique(passing.begin(), passing.end()), passing.end());
        for (const int index : passing) {
            const auto& stream = *streams[at(index)];
            const bool tagged = tagged_on_arc(network, paths, arc, forwarding.streams[at(index)].vlan);
            judge(wiring, runs, network, capacity, arc, stream, rates.of(index, tagged), out);
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::link_slower_than_stream
