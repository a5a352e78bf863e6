// One kind of fibre from end to end: where the core gets narrower, most of the light stays outside.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::fibre_kinds_mixed {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: single-mode and multimode fibre are joined between its two ends."),
    STREAMWRIGHT_TEXT("%1: fibres with cores of 62.5 and 50 um are joined between its two ends.")};

constexpr standards::Citation sources[] = {
    {"TIA / ISO/IEC", "568.3-D / 11801-1", "one category of fibre in a channel", standards::Standing::memory}};

constexpr RuleWords words{.id = "fibre-kinds-mixed",
                          .theme = Theme::cabling,
                          .title = "Two kinds of fibre in one link",
                          .meaning =
                              "Light that leaves a wide core does not fit into a narrow one: the link works one way, "
                              "or on some days, or not at all.",
                          .measured =
                              "The cables and leads of a fibre link are compared with each other: single-mode with "
                              "multimode is an error, 62.5 um (OM1) with 50 um (OM2 and better) a warning.",
                          .remedy = "Use leads of the kind of the installed fibre.",
                          .patterns = patterns,
                          .sources = sources};

void check(const graph::Wiring& wiring, const graph::Runs& runs, const LinkCapacity& capacity,
           const FibreChannels& fibres, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < fibres.runs.size() && i < capacity.runs.size(); ++i) {
        if (!fibres.runs[i] || capacity.runs[i].reason == NoLink::medium_misfit) continue;  // said already
        const auto cable = cable_id(wiring, runs.list[i].cables.front());
        if (fibres.runs[i]->media_mixed)
            out.push_back(found(words.id, Severity::error, {cable}, {named(cable)}, 0));
        else if (fibres.runs[i]->cores_mixed)
            out.push_back(found(words.id, Severity::warning, {cable}, {named(cable)}, 1));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::fibre_kinds_mixed
