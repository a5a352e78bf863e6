// Flexible leads lose more than fixed cable: what a channel may have of them follows from its fixed part.
#include "core/analysis/reach_help.h"
#include "core/analysis/rule.h"

#include <algorithm>

namespace streamwright::analysis::rules::copper_cords_too_long {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: the leads from %2 to %3 are %4 long together; beside %5 of fixed cable leads of %6 AWG may "
                      "be %7 (a rule remembered in part).")};

constexpr standards::Citation sources[] = {
    {"TIA", "568", "open-office cabling: cords from fixed length and gauge", standards::Standing::memory}};

constexpr RuleWords words{.id = "copper-cords-too-long",
                          .severity = Severity::warning,
                          .theme = Theme::cabling,
                          .title = "Patch leads too long for the fixed cable",
                          .meaning =
                              "Thin flexible leads lose 20 to 50 % more than fixed cable: a channel of 100 m with long "
                              "leads fails its test although nothing is over length.",
                          .measured =
                              "Leads of one channel together against (102 m - fixed cable) / 1.2 for 24 AWG and / 1.5 "
                              "for 26 AWG; leads that state no gauge, or another, are not judged. Channels over their "
                              "whole reach are spoken of elsewhere.",
                          .remedy = "Use shorter or thicker leads, or shorten the fixed part.",
                          .patterns = patterns,
                          .sources = sources};

/// The thinnest gauge of the run's leads; none where one of them states none.
std::optional<int> thinnest_lead(const graph::Wiring& wiring, const graph::Run& run) {
    int awg = 0;
    for (const int index : run.cables) {
        const auto* type = wiring.cables[at(index)].type;
        if (type->use != catalogue::CableUse::lead) continue;
        if (!type->awg) return std::nullopt;
        awg = std::max(awg, *type->awg);
    }
    return awg;
}

void judge(const graph::Wiring& wiring, const graph::Run& run, const RunLength& length, Findings& out) {
    using namespace base::literals;
    if (!length.permanent || !length.leads || length.leads->count() == 0 || !copper_of(wiring, run)) return;
    if (*length.channel > standards::channel_limit) return;
    const auto awg = thinnest_lead(wiring, run);
    const auto most = awg ? standards::combined_cords(*length.permanent, *awg) : std::nullopt;
    if (!most || *length.leads <= *most) return;
    const auto cable = cable_id(wiring, run.cables.front());
    auto finding = found(words.id, Severity::warning, {cable},
                         {named(cable), port_ref(wiring, *run.a), port_ref(wiring, *run.b), *length.leads,
                          *length.permanent, std::int64_t{*awg}, *most});
    finding.measured = *length.leads;
    finding.limit = *most;
    finding.terms = {line(STREAMWRIGHT_TEXT("(102 m - %1) / %2 = %3"),
                          {*length.permanent, std::string(*awg == 24 ? "1.2" : "1.5"), *most}),
                     line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too long"), {*length.leads, *most, *length.leads - *most})};
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const CableLengths& lengths, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size(); ++i)
        if (runs.list[i].a && runs.list[i].b && wiring.is_network_port(*runs.list[i].a))
            judge(wiring, runs.list[i], lengths.runs[i], out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::copper_cords_too_long
