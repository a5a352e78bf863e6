// Angled and flat end faces do not mate: the gap reflects light and may scratch both.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::fibre_polish_clash {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1: at %2 %3 meets %4.")};

constexpr standards::Citation sources[] = {
    {"IEC", "61755-3", "end face geometry, PC and APC", standards::Standing::memory}};

constexpr RuleWords words{.id = "fibre-polish-clash",
                          .theme = Theme::cabling,
                          .title = "Angled and flat fibre connectors meet",
                          .meaning =
                              "The faces touch at an edge only: much light is lost or thrown back, and both connectors "
                              "may be spoilt.",
                          .measured =
                              "From socket to socket the polish that leads, installed fibre, adapters and transceivers "
                              "state is compared where they meet. What states none is not judged.",
                          .remedy = "Use leads with the polish of the sockets; a lead with one of each joins the two.",
                          .patterns = patterns,
                          .sources = sources};

std::string polish_words(catalogue::Polish polish) {
    return polish == catalogue::Polish::angled ? STREAMWRIGHT_TEXT("an angled connector (APC)")
                                               : STREAMWRIGHT_TEXT("a flat one (PC, UPC)");
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const FibreChannels& fibres, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < fibres.runs.size(); ++i) {
        if (!fibres.runs[i] || fibres.runs[i]->clashes.empty()) continue;
        const auto cable = cable_id(wiring, runs.list[i].cables.front());
        const auto& clash = fibres.runs[i]->clashes.front();
        out.push_back(found(words.id, Severity::error, {cable},
                            {named(cable), port_ref(wiring, clash.at), polish_words(catalogue::Polish::angled),
                             polish_words(catalogue::Polish::flat)}));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::fibre_polish_clash
