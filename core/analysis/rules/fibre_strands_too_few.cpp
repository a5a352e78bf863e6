// Parallel optics light eight strands or more; a duplex cable has two.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::fibre_strands_too_few {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: %2 in %3 needs %4 strands, but the fibre to %5 has %6.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "medium of each physical layer (fibres in use)", standards::Standing::memory}};

constexpr RuleWords words{
    .id = "fibre-strands-too-few",
    .theme = Theme::cabling,
    .title = "Too few strands for the transceiver",
    .meaning = "The link never comes up: lanes of the transceiver lead nowhere.",
    .measured =
        "The strands that the transceivers at both ends state against the least number of "
        "strands on the way.",
    .remedy = "Pull fibre with enough strands, or take transceivers that send all lanes over one pair.",
    .patterns = patterns,
    .sources = sources};

/// The end whose transceiver asks for more strands.
graph::PortAt needier(const graph::Wiring& wiring, const graph::Run& run) {
    const auto needs = [&](graph::PortAt port) {
        const auto* type = wiring.module_at(port);
        return type && type->module ? type->module->strands : 0;
    };
    return needs(*run.a) >= needs(*run.b) ? *run.a : *run.b;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const FibreChannels& fibres, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < fibres.runs.size(); ++i) {
        const auto& run = runs.list[i];
        if (!run.a || !run.b || !fibres.runs[i]) continue;
        const auto port = needier(wiring, run);
        const auto* type = wiring.module_at(port);
        if (!type || !type->module || type->module->strands <= fibres.runs[i]->strands) continue;
        const std::int64_t needed = type->module->strands, have = fibres.runs[i]->strands;
        const auto cable = cable_id(wiring, run.cables.front());
        auto finding = found(words.id, Severity::error, {cable},
                             {named(cable), type->name, port_ref(wiring, port), needed,
                              port_ref(wiring, port == *run.a ? *run.b : *run.a), have});
        finding.measured = have;
        finding.limit = needed;
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too few"), {needed, have, needed - have}));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::fibre_strands_too_few
