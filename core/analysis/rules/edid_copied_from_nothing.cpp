// An input announces the EDID of a display that is not there, that says nothing, or that its picture never reaches.
#include "core/analysis/facts/picture_ways.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::edid_copied_from_nothing {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 copies the EDID of a port that %2 does not have."),
    STREAMWRIGHT_TEXT("%1 copies the EDID of %2, which is no picture input and has none."),
    STREAMWRIGHT_TEXT("%1 copies the EDID of %2, whose type does not state which pictures it takes: what is announced "
                      "is not known."),
    STREAMWRIGHT_TEXT("%1 copies the EDID of %2, which its picture does not reach.")};

constexpr RuleWords words{
    .id = "edid-copied-from-nothing",
    .theme = Theme::signals,
    .title = "EDID copied from where there is none",
    .meaning =
        "The source asks the input what it takes, and the answer was recorded from a display that is not there: "
        "the source sends what nobody shows, or nothing.",
    .measured =
        "The port whose EDID is copied must stand in the design, take pictures and state which; a display that "
        "the picture does not reach gives a warning, a silent type advice.",
    .remedy = "Copy from a display behind the input, fix a format, or merge.",
    .offers = "To announce what every display behind the input takes.",
    .patterns = patterns,
    .no_source = "Follows from how an EDID is copied."};

Finding about(const graph::Wiring& wiring, graph::PortAt in, Severity severity, base::Ref from, int variant) {
    auto finding =
        found(words.id, severity, {port_subject(wiring, in)}, {port_ref(wiring, in), std::move(from)}, variant);
    auto row = port_settings(wiring, in);
    row.edid = model::EdidPolicy{model::EdidWay::merged, {}, {}, {}};
    finding.remedies.push_back({line(STREAMWRIGHT_TEXT("Announce what every display behind it takes"), {}),
                                model::ConfigurePort{row, nullptr}});
    return finding;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals, Findings& out) {
    std::optional<PictureWays> ways;  // made when first needed: few inputs copy
    for (const auto& row : wiring.design.port_overrides) {
        if (!row.edid || !row.edid->from) continue;
        const auto in = wiring.port_at(row.port);
        if (!in || !wiring.devices[at(in->device)].type || !picture_port(wiring.port_type(*in))) continue;
        const auto from = wiring.port_at(*row.edid->from);
        if (!from) {
            out.push_back(about(wiring, *in, Severity::error, named(row.edid->from->device), 0));
            continue;
        }
        const auto& type = wiring.port_type(*from);
        if (!picture_port(type) || type.way != catalogue::Way::in) {
            out.push_back(about(wiring, *in, Severity::error, port_ref(wiring, *from), 1));
        } else if (!type.picture) {
            out.push_back(about(wiring, *in, Severity::advice, port_ref(wiring, *from), 2));
        } else if (wiring.port_type(*in).way == catalogue::Way::in) {
            if (!ways) ways.emplace(wiring, runs, signals);
            const auto& ends = ways->node(ways->node_at(*in)).ends;
            if (std::ranges::none_of(ends, [&](const WayEnd& end) { return end.at == *from; }))
                out.push_back(about(wiring, *in, Severity::warning, port_ref(wiring, *from), 3));
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::edid_copied_from_nothing
