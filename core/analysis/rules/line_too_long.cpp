// Pictures, USB, control and sound on plain cable: how far they go is seldom in a standard, and always known to those
// who have tried.
#include "core/analysis/line_reach.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::line_too_long {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 from %2 to %3 is %4 long; %5 ends at %6 (%7)."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 is %4 long; by common practice %5 goes no farther than %6 (%7)."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 is %4 long; by common practice %5 is safe to %6 and may fail beyond (%7)."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 is %4 long; this design allows %6 for %5.")};

constexpr standards::Citation sources[] = {
    {"USB", "2.0", "7.1.14 and 7.1.16 (cable delay)"},
    {"TIA", "TIA-232-F", "2500 pF"},
    {"TIA", "TIA-485-A", "guidance (4000 ft)"},
    {"trade", "lengths of HDMI, DisplayPort, SDI, infrared and sound", "", standards::Standing::practice}};

constexpr RuleWords words{.id = "line-too-long",
                          .theme = Theme::cabling,
                          .title = "Line longer than its signal goes",
                          .meaning =
                              "The picture sparkles or goes black when something is moved, the device is not found, "
                              "the remote control works on some days.",
                          .measured =
                              "The whole way from port to port against what a standard allows (USB 2.0, RS-232 by its "
                              "capacitance, RS-485) or what the trade reckons with at the lesser generation of the two "
                              "ports (HDMI, DisplayPort, SDI, infrared, sound). A habit gives a warning, and advice "
                              "between its careful and its hopeful figure. A limit that the cable's own type states "
                              "or that the design's settings name for the line comes first.",
                          .remedy =
                              "Shorten the way, take an active or optical cable and state how far it goes, or use an "
                              "extender.",
                          .patterns = patterns,
                          .sources = sources};

void judge(const graph::Wiring& wiring, const graph::Run& run, const std::optional<LineReach>& reach, base::Length have,
           Findings& out) {
    if (!reach || have <= reach->careful) return;
    const bool beyond = have > reach->most;
    const auto limit = beyond ? reach->most : reach->careful;
    const auto severity = reach->binding || reach->set ? Severity::error
                          : beyond                     ? Severity::warning
                                                       : Severity::advice;
    const int variant = reach->set ? 3 : reach->binding ? 0 : beyond ? 1 : 2;
    const auto cable = cable_id(wiring, run.cables.front());
    auto finding = found(words.id, severity, {cable},
                         {named(cable), port_ref(wiring, *run.a), port_ref(wiring, *run.b), have, reach->line, limit,
                          reach->source.text()},
                         variant);
    finding.measured = have;
    finding.limit = limit;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too long"), {have, limit, have - limit}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const CableLengths& lengths, Findings& out) {
    graph::ByKind<std::optional<LineReach>> reaches(runs);
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        if (!lengths.runs[i].channel) continue;
        const auto& reach = reaches.of(i, [&](const graph::Run& run) { return line_reach(wiring, run); });
        judge(wiring, runs.list[i], reach, *lengths.runs[i].channel, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::line_too_long
