// Endpoints chained through their second network port: the first link carries what all of them need.
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"

#include <algorithm>
#include <limits>

namespace streamwright::analysis::rules::daisy_chain_overfull {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT(
        "%1 from %2 to %3 is the narrowest link of a chain, with %4 of its endpoints behind it: it carries "
        "%5 of %6 in preset %7, %8."),
    STREAMWRIGHT_TEXT(
        "%1 from %2 to %3 is the narrowest link of a chain, with %4 of its endpoints behind it: it carries "
        "%5 of %6 in preset %7, %8, above the headroom of %9.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clause 4.4 (preamble, gap)"},
    {"trade", "chains of endpoints", "every link carries all that lies behind it", standards::Standing::practice}};

constexpr RuleWords words{.id = "daisy-chain-overfull",
                          .revision = 2,  // told once a direction, no longer once a preset
                          .theme = Theme::links,
                          .title = "Chain of endpoints overfull",
                          .meaning =
                              "Every picture of the chain breaks up, and one unit switched off takes all behind it "
                              "along. Cable some of the endpoints to the switch directly, or shorten the chain.",
                          .measured =
                              "Every link of a chain carries the streams of all endpoints behind it, each stream once. "
                              "The link nearest the switch that is too full is named with the load of the preset, "
                              "frame overhead included. Above the headroom is a warning, above the capacity an error.",
                          .remedy =
                              "Cable some of the endpoints to the switch directly, show the same stream along the "
                              "chain, or lower the rate of streams.",
                          .patterns = patterns,
                          .sources = sources};

struct Reader : LoadReader {
    std::vector<std::vector<int>> links_at;  // per bridge
    std::vector<int> hops;                   // per bridge: links to the nearest switch
};

int other_end(const graph::Link& link, int bridge) { return link.a == bridge ? link.b : link.a; }

void find_hops(Reader& r) {
    const auto bridges = r.network.bridges.size();
    r.links_at.resize(bridges);
    r.hops.assign(bridges, std::numeric_limits<int>::max());
    for (int i = 0; i < static_cast<int>(r.network.links.size()); ++i) {
        r.links_at[at(r.network.links[at(i)].a)].push_back(i);
        r.links_at[at(r.network.links[at(i)].b)].push_back(i);
    }
    std::vector<int> open;
    for (int i = 0; i < static_cast<int>(bridges); ++i)
        if (!r.network.bridges[at(i)].endpoint) open.push_back(i), r.hops[at(i)] = 0;
    for (std::size_t next = 0; next < open.size(); ++next)
        for (const int link : r.links_at[at(open[next])]) {
            const int there = other_end(r.network.links[at(link)], open[next]);
            if (r.hops[at(there)] != std::numeric_limits<int>::max()) continue;
            r.hops[at(there)] = r.hops[at(open[next])] + 1;
            open.push_back(there);
        }
}

/// The end of the link that is farther from the switch.
int far_bridge(const Reader& r, const graph::Link& link) {
    return r.hops[at(link.b)] >= r.hops[at(link.a)] ? link.b : link.a;
}

/// Endpoints that hang on the link, the far end's own among them.
std::int64_t endpoints_behind(const Reader& r, int first) {
    const auto& start = r.network.links[at(first)];
    std::vector<int> open{far_bridge(r, start)};
    std::vector<bool> seen(r.network.bridges.size(), false);
    seen[at(start.a)] = seen[at(start.b)] = true;
    for (std::size_t next = 0; next < open.size(); ++next)
        for (const int link : r.links_at[at(open[next])]) {
            const int there = other_end(r.network.links[at(link)], open[next]);
            if (seen[at(there)] || !r.network.bridges[at(there)].endpoint) continue;
            seen[at(there)] = true;
            open.push_back(there);
        }
    return static_cast<std::int64_t>(open.size());
}

Fill fill_on(const Reader& r, const PresetLoad& preset, int arc) {
    return fill_of(preset.arcs[at(arc)], r.capacity.arcs[at(arc)], r.wiring.design.settings().headroom_percent);
}

/// Whether the next link toward the switch is as full in the same direction: then it tells of the chain.
bool told_nearer(const Reader& r, const PresetLoad& preset, int arc, Fill fill) {
    const auto& link = r.network.links[at(arc / 2)];
    const int far = far_bridge(r, link), near = other_end(link, far);
    const bool outward = (link.b == far) == (arc % 2 == 0);
    for (const int next : r.links_at[at(near)]) {
        const auto& row = r.network.links[at(next)];
        if (next == arc / 2 || far_bridge(r, row) != near || r.hops[at(near)] == 0) continue;
        const bool onward = (row.b == near) == outward;
        if (fill_on(r, preset, 2 * next + (onward ? 0 : 1)) >= fill) return true;
    }
    return false;
}

/// One finding a direction, of the preset that fills it most.
void judge(const Reader& r, const LinkLoads& loads, int arc, Findings& out) {
    const auto* fullest = fullest_preset(loads, arc);
    if (!fullest) return;
    const auto& preset = *fullest;
    const auto fill = fill_on(r, preset, arc);
    if (fill == Fill::fits || told_nearer(r, preset, arc, fill)) return;
    const auto& load = preset.arcs[at(arc)];
    const auto& capacity = r.capacity.arcs[at(arc)];
    if (too_fast_alone(r, arc, load.streams)) return;
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, arc);
    const bool over = fill == Fill::overfull;
    std::vector<base::Value> values{named(ends.link),     named(ends.from),
                                    named(ends.to),       endpoints_behind(r, arc / 2),
                                    load.wire.ceil(),     *capacity,
                                    named(preset.preset), base::Percent{base::percent_tenths(load.wire, *capacity)}};
    if (!over) values.emplace_back(base::Percent{r.wiring.design.settings().headroom_percent * 10});
    auto finding = found(words.id, over ? Severity::error : Severity::warning, {ends.link, ends.from, ends.to},
                         std::move(values), over ? 0 : 1);
    finding.measured = load.wire.ceil();
    finding.limit = *capacity;
    finding.terms = load_terms(r.wiring, r.network, r.paths, r.forwarding, arc, load.streams);
    const int percent = over ? 100 : r.wiring.design.settings().headroom_percent;
    if (auto more = other_presets(loads, arc, preset, *capacity, percent)) finding.terms.push_back(std::move(*more));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           Findings& out) {
    std::vector<int> chained;
    const auto links = chained_links(network);
    for (int arc = 0; arc < 2 * static_cast<int>(network.links.size()); ++arc)
        if (links[at(arc / 2)]) chained.push_back(arc);
    if (chained.empty()) return;
    Reader reader{{wiring, runs, network, capacity, paths, forwarding}, {}, {}};
    find_hops(reader);
    for (const int arc : chained) judge(reader, loads, arc, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::daisy_chain_overfull
