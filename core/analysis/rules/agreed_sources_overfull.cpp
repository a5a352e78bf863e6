// A link that the sources agreed for it can overfill: the agreement allows more than it carries.
#include "core/analysis/agreed_contention.h"
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"

namespace streamwright::analysis::rules::agreed_sources_overfull {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 from %2 to %3 may carry %4 of %5 when sources keep to the number agreed, %6 (%7): %8."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 may carry %4 of %5 when sources keep to the number agreed, %6 (%7): %8, above "
                      "the headroom of "
                      "%9.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 4541", "section 2.1 (streams go to members and to router ports)"},
    {"trade", "agreed contention", "how many sources may cross at once", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "agreed-sources-overfull",
    .theme = Theme::links,
    .title = "Link too small for the sources agreed",
    .meaning = "Everyone keeps to the agreement and pictures still break: it was made without counting what flows.",
    .measured =
        "The greatest load of the direction within the agreement: all streams that are there unasked, and the heaviest "
        "pictures that could be routed over it, as many as agreed, with all sound, USB and control. Above capacity is "
        "an error, above the headroom a warning.",
    .remedy = "Agree on fewer sources, enlarge the link, or place the querier so that less flows unasked.",
    .patterns = patterns,
    .sources = sources};

void judge(const LoadReader& r, const Agreement& agreement, const ArcWorst& within, int arc, Findings& out) {
    const auto& capacity = r.capacity.arcs[at(arc)];
    const int headroom = r.wiring.design.settings().headroom_percent;
    const auto fill = fill_of(within.wire, capacity, headroom);
    if (fill == Fill::fits) return;
    const bool over = fill == Fill::overfull;
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, arc);
    std::vector<base::Value> values{named(ends.link),
                                    named(ends.from),
                                    named(ends.to),
                                    within.wire.ceil(),
                                    *capacity,
                                    std::int64_t{agreement.agreed.sources},
                                    by_whom(agreement.agreed),
                                    base::Percent{base::percent_tenths(within.wire, *capacity)}};
    if (!over) values.emplace_back(base::Percent{headroom * 10});
    auto finding = found(words.id, over ? Severity::error : Severity::warning, {ends.link, ends.from, ends.to},
                         std::move(values), over ? 0 : 1);
    finding.measured = within.wire.ceil();
    finding.limit = *capacity;
    const auto add = [&](std::string pattern, const std::vector<int>& streams) {
        if (streams.empty()) return;
        finding.terms.push_back(line(std::move(pattern), {static_cast<std::int64_t>(streams.size())}));
        for (auto& term : load_terms(r.wiring, r.network, r.paths, r.forwarding, arc, streams))
            finding.terms.push_back(std::move(term));
    };
    add(STREAMWRIGHT_TEXT("there unasked: %1 streams"), within.unasked);
    add(STREAMWRIGHT_TEXT("within the agreement: %1 streams"), within.routed);
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const WorstCase& worst,
           Findings& out) {
    const LoadReader reader{wiring, runs, network, capacity, paths, forwarding};
    for (const auto& agreement : find_agreements(wiring, runs, network))
        for (const bool a_to_b : {true, false}) {
            const int arc = network.link_arc(agreement.link, a_to_b);
            if (const auto found = worst.agreed.find(arc); found != worst.agreed.end())
                judge(reader, agreement, found->second, arc, out);
        }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::agreed_sources_overfull
