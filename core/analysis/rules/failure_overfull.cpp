// A direction that fits while all stands and overflows when one thing is gone: the second way is there, and too narrow.
#include "core/analysis/failure_help.h"
#include "core/analysis/rule.h"

#include <map>

namespace streamwright::analysis::rules::failure_overfull {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("Without %1, %2 from %3 to %4 carries %5 of %6 in preset %7: %8.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1Q", "clause 13 (the tree after a failure)", standards::Standing::memory},
    {"IEEE", "802.3", "clause 4.4 (preamble, gap)"},
    {"IETF", "RFC 4541", "section 2.1 (streams go to members and to router ports)"}};

constexpr RuleWords words{
    .id = "failure-overfull",
    .severity = Severity::warning,
    .theme = Theme::links,
    .title = "Overfull once something has failed",
    .meaning =
        "The network finds another way, and there all pictures break: the failure that was planned for takes more with "
        "it than the thing that failed.",
    .measured =
        "Each link, each duct and, where the design asks for it, each switch and power feed is taken out alone, and "
        "the "
        "streams of each preset are added up on what is left, frame overhead included. Said once a direction, of the "
        "failure that fills it most, where it fits while all stands; only where the design's settings ask that "
        "pictures "
        "outlive failures, and of the presets they name.",
    .remedy = "Make the second way as fast as the first, or spread encoders so that less comes together there.",
    .patterns = patterns,
    .sources = sources};

struct Worst {
    const Outcome* outcome = nullptr;
    const OverfullArc* arc = nullptr;
    std::int64_t failures = 0;  // that overfill it
};

std::map<int, Worst> worst_by_arc(const graph::Wiring& wiring, const LinkLoads& loads, const Failures& failures) {
    std::map<int, Worst> worst;
    for (const auto& outcome : failures.outcomes) {
        int last = -1;
        for (const auto& each : outcome.overfull) {
            if (each.already || !must_outlive(wiring, loads, each.preset)) continue;
            auto& known = worst[each.arc];
            if (each.arc != last) ++known.failures;
            last = each.arc;
            if (!known.arc || known.arc->wire < each.wire) known = {&outcome, &each, known.failures};
        }
    }
    return worst;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkLoads& loads, const Failures& failures, Findings& out) {
    for (const auto& [arc, worst] : worst_by_arc(wiring, loads, failures)) {
        const auto ends = graph::arc_ends(wiring, runs, network, arc);
        const auto& over = *worst.arc;
        const auto preset = loads.presets[at(over.preset)].preset;
        auto finding = found(words.id, Severity::warning, {ends.link, ends.from, ends.to},
                             {failing_name(wiring, worst.outcome->failing), named(ends.link), named(ends.from),
                              named(ends.to), over.wire.ceil(), over.capacity, named(preset),
                              base::Percent{base::percent_tenths(over.wire, over.capacity)}});
        finding.measured = over.wire.ceil();
        finding.limit = over.capacity;
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("while all stands: %1"),
                                     {loads.presets[at(over.preset)].arcs[at(arc)].wire.ceil()}));
        if (worst.failures > 1)
            finding.terms.push_back(line(STREAMWRIGHT_TEXT("failures that overfill it: %1"), {worst.failures}));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::failure_overfull
