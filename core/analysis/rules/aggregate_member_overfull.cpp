// An aggregation group that has room as a whole and a member that has none: a stream stays on one member, and which one
// it is the switch chooses by addresses, not by load.
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace streamwright::analysis::rules::aggregate_member_overfull {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 from %2 to %3 is filled to %4 as a whole in preset %9, but by its choice %5 streams fall on "
                      "the member %6: %7, %8 of its speed."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 may be filled to %4 as a whole, and by its choice %5 streams of such a routing "
                      "fall on the member %6: %7, %8 of its speed."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 is filled to %4 as a whole in preset %7, but nobody knows on which of its %5 "
                      "members a stream goes: the chance that one is overfull is %6."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 may be filled to %4 as a whole, and nobody knows on which of its %5 members a "
                      "stream goes: the chance that one is overfull then is %6.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1AX", "section 6.2.4 (frames of one conversation stay on one member)"},
    {"trade", "choice of the member", "last octets of addresses, exclusive-or, modulo the members",
     standards::Standing::practice},
    {"trade", "chance", "members chosen alike and independently; told above 1 %", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "aggregate-member-overfull",
    .theme = Theme::links,
    .title = "One member of a group overfull",
    .meaning =
        "The group looks half empty and all pictures on one of its cables break, because the switch put too many "
        "streams on it.",
    .measured =
        "The streams of each preset, and of the worst case, are put on the members: by the choice that the switch's "
        "type states, where all addresses it reads are known, else by chance, counted exactly for small groups and "
        "drawn 20,000 times for larger ones. An error where a preset overfills a member for certain; a warning for the "
        "worst case and for a chance above 1 %.",
    .remedy =
        "Take one faster link instead, let the switch read more fields, or space group addresses so that they spread.",
    .patterns = patterns,
    .sources = sources};

constexpr double told_chance = 0.01;

struct Group {
    const LoadReader& reader;
    const LinkLoads& loads;
    int arc;
    const GroupLoad& load;
    std::span<const int> streams;
    base::Rate whole;
    base::BitRate each;

    const graph::Link& link() const { return reader.network.links[at(arc / 2)]; }
    base::Percent filled() const { return {base::percent_tenths(whole, *reader.capacity.arcs[at(arc)])}; }
};

base::Percent tenths(double share) { return {std::llround(share * 1000)}; }

void tell_choice(const Group& g, const graph::ArcEnds& ends, Findings& out) {
    const int fullest = g.load.fullest();
    const auto& on_it = g.load.loads[at(fullest)];
    if (on_it <= base::Rate(g.each)) return;
    const auto member = [&](int i) {
        return named(cable_id(g.reader.wiring, g.reader.runs.list[at(g.link().runs[at(i)])].cables.front()));
    };
    const bool preset = g.load.preset >= 0;
    std::vector<base::Value> values{named(ends.link),
                                    named(ends.from),
                                    named(ends.to),
                                    g.filled(),
                                    std::int64_t{g.load.streams[at(fullest)]},
                                    member(fullest),
                                    on_it.ceil(),
                                    base::Percent{base::percent_tenths(on_it, g.each)}};
    if (preset) values.emplace_back(named(g.loads.presets[at(g.load.preset)].preset));
    auto finding = found(words.id, preset ? Severity::error : Severity::warning, {ends.link, ends.from, ends.to},
                         std::move(values), preset ? 0 : 1);
    finding.measured = on_it.ceil();
    finding.limit = g.each;
    for (int i = 0; i < static_cast<int>(g.load.loads.size()); ++i)
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1: %2 streams, %3"),
                                     {member(i), std::int64_t{g.load.streams[at(i)]}, g.load.loads[at(i)].ceil()}));
    out.push_back(std::move(finding));
}

base::Text how_found(const FitChance& chance) {
    const auto in_10000 = [](Probability p) { return static_cast<std::int64_t>(std::llround(p.value * 10'000)); };
    if (chance.draws == 0)
        return line(STREAMWRIGHT_TEXT("counted over all ways: all members hold in %1 of 10,000"),
                    {in_10000(chance.fits)});
    return line(STREAMWRIGHT_TEXT("drawn %1 times: all members hold in %2 of 10,000 (95 % within %3 and %4)"),
                {std::int64_t{chance.draws}, in_10000(chance.fits), in_10000(chance.least), in_10000(chance.most)});
}

void tell_chance(const Group& g, const graph::ArcEnds& ends, Findings& out) {
    const double overfull = 1 - g.load.fits->fits.value;
    if (overfull <= told_chance) return;
    const bool preset = g.load.preset >= 0;
    std::vector<base::Value> values{
        named(ends.link), named(ends.from), named(ends.to), g.filled(), static_cast<std::int64_t>(g.link().runs.size()),
        tenths(overfull)};
    if (preset) values.emplace_back(named(g.loads.presets[at(g.load.preset)].preset));
    auto finding =
        found(words.id, Severity::warning, {ends.link, ends.from, ends.to}, std::move(values), preset ? 2 : 3);
    finding.measured = tenths(overfull);
    finding.limit = tenths(told_chance);
    finding.terms =
        load_terms(g.reader.wiring, g.reader.network, g.reader.paths, g.reader.forwarding, g.arc, g.streams);
    finding.terms.push_back(
        line(STREAMWRIGHT_TEXT("on %1 members of %2"), {static_cast<std::int64_t>(g.link().runs.size()), g.each}));
    finding.terms.push_back(how_found(*g.load.fits));
    out.push_back(std::move(finding));
}

/// Whether something was said. What overfills the group as a whole, or a member by itself, are rules of their own.
bool judge(const Group& g, Findings& out) {
    if (g.whole > base::Rate(*g.reader.capacity.arcs[at(g.arc)]) || too_fast_alone(g.reader, g.arc, g.streams))
        return false;
    const auto before = out.size();
    const auto ends = graph::arc_ends(g.reader.wiring, g.reader.runs, g.reader.network, g.arc);
    g.load.fits ? tell_chance(g, ends, out) : tell_choice(g, ends, out);
    return out.size() > before;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           const WorstCase& worst, const AggregationRisk& risk, Findings& out) {
    const LoadReader reader{wiring, runs, network, capacity, paths, forwarding};
    for (const auto& group : risk.groups) {
        const auto each = member_rate(network, capacity, group.arc);
        if (!each || !capacity.arcs[at(group.arc)]) continue;
        if (group.preset) {
            const auto& load = loads.presets[at(group.preset->preset)].arcs[at(group.arc)];
            if (judge({reader, loads, group.arc, *group.preset, load.streams, load.wire, *each}, out)) continue;
        }
        if (!group.worst) continue;
        const auto& most = worst.arcs[at(group.arc)];
        auto streams = most.unasked;
        streams.insert(streams.end(), most.routed.begin(), most.routed.end());
        judge({reader, loads, group.arc, *group.worst, streams, most.wire, *each}, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::aggregate_member_overfull
