// A stream and its twin on the other plane: one failure must not break both ways, and both must come within what the
// receiver can hold back. Two planes that meet in one switch, one duct or one feed are one plane.
#include "core/analysis/facts/twins.h"
#include "core/analysis/failure_help.h"
#include "core/analysis/latency.h"
#include "core/analysis/rule.h"
#include "core/analysis/stream_path.h"
#include "core/standards/seamless_protection.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::planes_share {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 and %2 are to protect each other, and both are lost with %3."),
    STREAMWRIGHT_TEXT("%1 and %2 may arrive %4 apart at %3, which can make good %5 (class %6).")};

constexpr standards::Citation sources[] = {
    {"SMPTE", "ST 2022-7", "Table 1 (class A)"},
    {"SMPTE", "ST 2022-7", "Table 1 (classes B and C); class D of 2019", standards::Standing::memory}};

constexpr RuleWords words{
    .id = "planes-share",
    .theme = Theme::links,
    .title = "Two planes share what they must not",
    .meaning =
        "The second copy is sent so that nothing is seen when a link, a switch, a duct or a feed fails. What both "
        "copies "
        "need takes both away, and what comes too late cannot fill a gap.",
    .measured =
        "The ways of a stream and of its twin are followed to every receiver, and each thing that can fail is taken "
        "out "
        "alone: none may break both. The difference between the latest arrival of one and the earliest of the other is "
        "held against the class of the receiver; not told where its type states no class, or a part of the latency is "
        "not known.",
    .remedy =
        "Lead the two planes over switches, cables, ducts and power feeds of their own, and keep their ways about "
        "equally long.",
    .patterns = patterns,
    .sources = sources};

struct Reader {
    LatencyFacts facts;
    std::vector<Failing> failing;
    graph::NetworkCut cut;

    std::optional<std::vector<int>> path(int stream, int decoder) const {
        return stream_path(facts.network, facts.paths, facts.trees, facts.forwarding, stream, decoder);
    }
};

/// A stream, its twin and who takes both.
struct Pair {
    int stream = 0, twin = 0, decoder = 0, encoder = 0, preset = 0;
};

bool broken(const graph::NetworkCut& cut, const std::vector<int>& path) {
    return std::any_of(path.begin(), path.end(), [&](int arc) { return cut.arc_gone(arc); });
}

/// Things that break both ways; not the two ends themselves.
void add_shared(Reader& r, const Pair& pair, const std::vector<int>& a, const std::vector<int>& b,
                std::set<const Failing*>& shared) {
    for (const auto& each : r.failing) {
        if (each.device >= 0 && (each.device == pair.encoder || each.device == pair.decoder)) continue;
        r.cut.apply(each.lost);
        if (broken(r.cut, a) && broken(r.cut, b)) shared.insert(&each);
    }
}

/// The list of all failings is in the order of their kinds, and so are the addresses.
Finding about(const Reader& r, int stream, int twin, const std::set<const Failing*>& shared) {
    const auto streams = streams_by_index(r.facts.wiring);
    const auto *a = streams[at(stream)], *b = streams[at(twin)];
    auto finding = found(words.id, Severity::error, {a->id, b->id},
                         {named(a->id), named(b->id), failing_name(r.facts.wiring, **shared.begin())}, 0);
    for (const auto* each : shared)
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("both need %1"), {failing_name(r.facts.wiring, *each)}));
    return finding;
}

std::optional<Finding> too_far_apart(const Reader& r, const Pair& pair) {
    const auto* type = r.facts.wiring.devices[at(pair.decoder)].type;
    if (!type || !type->codec || !type->codec->skew_class) return std::nullopt;
    const auto& load = r.facts.loads.presets[at(pair.preset)];
    const auto one = way_time(r.facts, load, pair.stream, pair.decoder);
    const auto two = way_time(r.facts, load, pair.twin, pair.decoder);
    if (!one || !two) return std::nullopt;
    const auto apart = std::max(one->most - two->least, two->most - one->least);
    const auto limit = standards::path_differential(*type->codec->skew_class);
    if (apart <= limit) return std::nullopt;
    const auto streams = streams_by_index(r.facts.wiring);
    const auto *a = streams[at(pair.stream)], *b = streams[at(pair.twin)];
    const auto decoder = device_id(r.facts.wiring, pair.decoder);
    auto finding = found(words.id, Severity::error, {a->id, b->id, decoder},
                         {named(a->id), named(b->id), named(decoder), apart, limit,
                          std::string(base::enum_text(*type->codec->skew_class))},
                         1);
    finding.measured = apart;
    finding.limit = limit;
    for (const auto& [stream, time] : {std::pair(a, *one), std::pair(b, *two)})
        finding.terms.push_back(
            line(STREAMWRIGHT_TEXT("%1 takes %2 to %3"), {named(stream->id), time.least, time.most}));
    return finding;
}

std::vector<Pair> pairs_of(const graph::Wiring& wiring, const LinkLoads& loads) {
    const auto twins = twin_streams(wiring);
    if (std::all_of(twins.begin(), twins.end(), [](int twin) { return twin < 0; })) return {};
    std::map<model::StreamId, int> indices;
    for (const auto& row : wiring.design.streams) indices.emplace(row.id, static_cast<int>(indices.size()));
    std::vector<Pair> pairs;
    for (const auto& row : wiring.design.subscriptions) {
        const auto stream = indices.find(row.stream);
        const auto decoder = wiring.device_index(row.decoder);
        const auto preset = std::find_if(loads.presets.begin(), loads.presets.end(),
                                         [&](const auto& each) { return each.preset == row.preset; });
        if (stream == indices.end() || !decoder || preset == loads.presets.end()) continue;
        const int twin = twins[at(stream->second)];
        if (twin < 0) continue;
        const auto encoder = wiring.device_index(wiring.design.streams.find(row.stream)->encoder);
        pairs.push_back({std::min(stream->second, twin), std::max(stream->second, twin), *decoder, encoder.value_or(-1),
                         static_cast<int>(preset - loads.presets.begin())});
    }
    return pairs;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const SpanningTrees& trees,
           const Forwarding& forwarding, const LinkLoads& loads, const CableLengths& lengths, const PowerBudget& power,
           Findings& out) {
    const auto pairs = pairs_of(wiring, loads);
    if (pairs.empty()) return;
    Reader r{{wiring, runs, network, capacity, paths, forwarding, trees, loads, lengths},
             list_failing(wiring, runs, network, power),
             graph::NetworkCut(wiring, runs, network)};
    std::map<std::pair<int, int>, std::set<const Failing*>> shared;
    std::set<std::pair<int, int>> apart;  // stream and decoder, told once
    for (const auto& pair : pairs) {
        const auto a = r.path(pair.stream, pair.decoder), b = r.path(pair.twin, pair.decoder);
        if (!a || !b) continue;  // that one of them does not arrive is told by other rules
        add_shared(r, pair, *a, *b, shared[{pair.stream, pair.twin}]);
        auto finding = too_far_apart(r, pair);
        if (finding && apart.emplace(pair.stream, pair.decoder).second) out.push_back(std::move(*finding));
    }
    for (const auto& [streams, things] : shared)
        if (!things.empty()) out.push_back(about(r, streams.first, streams.second, things));
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::planes_share
