// Coaxial cable and loudspeaker lines are judged by what they lose, where their type states enough to reckon it.
#include "core/analysis/line_losses.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::line_loses_too_much {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 from %2 to %3 loses %4; receivers of %5 are typically made for %6 at most (%7)."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 loses %4; by common practice %5 is sized for %6 (%7)."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 loses %4; this design allows %6 for %5.")};

constexpr standards::Citation sources[] = {
    {"SMPTE", "ST 259, ST 292-1, ST 424, ST 2081-1, ST 2082-1", "typical cable loss at half the clock"},
    {"circuit arithmetic", "20 x log10((Z + R) / Z)", "", standards::Standing::computed},
    {"trade", "0.5 dB to the end of a loudspeaker line, 20 dB for SDI", "", standards::Standing::practice}};

constexpr RuleWords words{.id = "line-loses-too-much",
                          .severity = Severity::warning,
                          .theme = Theme::cabling,
                          .title = "Line loses too much",
                          .meaning =
                              "SDI does not fade: it is there, and a few metres on it is gone. A loudspeaker at the "
                              "end of a thin line is quieter than its neighbour, and the line warms.",
                          .measured =
                              "SDI: the loss that the cable's type states, at half the clock of the lesser of the two "
                              "ports, against what the trade sizes for (advice) and what the standard calls typical "
                              "(warning). Loudspeakers: copper of both conductors against the load that the port "
                              "states. Both limits may be set for the design. What states too little is not judged.",
                          .remedy =
                              "Take cable that loses less or has thicker conductors, shorten the way, or put a "
                              "repeater or an amplifier nearer.",
                          .patterns = patterns,
                          .sources = sources};

void check(const graph::Wiring& wiring, const graph::Runs& runs, const CableLengths&, Findings& out) {
    graph::ByKind<bool> losing(runs);
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        const auto& run = runs.list[i];
        if (!losing.of(i, [&](const graph::Run& each) { return loses_by_length(wiring, each); })) continue;
        auto losses = line_losses(wiring, run);
        if (!losses || losses->loss <= losses->careful) continue;
        const bool typical = losses->loss > losses->most && losses->most > losses->careful;
        const auto limit = typical ? losses->most : losses->careful;
        const auto cable = cable_id(wiring, run.cables.front());
        auto finding = found(words.id, typical || losses->set ? Severity::warning : Severity::advice, {cable},
                             {named(cable), port_ref(wiring, *run.a), port_ref(wiring, *run.b), losses->loss,
                              losses->line, limit, losses->source.text()},
                             losses->set ? 2
                             : typical   ? 0
                                         : 1);
        finding.measured = losses->loss;
        finding.limit = limit;
        finding.terms = std::move(losses->terms);
        finding.terms.push_back(
            line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too much"), {losses->loss, limit, losses->loss - limit}));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::line_loses_too_much
