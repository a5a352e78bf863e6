// Reach is judged on lengths; where one is missing, the honest answer is "not known".
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::length_unknown {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("The length of %1 is not known, so the reach of the link from %2 to %3 is not either.")};

constexpr RuleWords words{.id = "length-unknown",
                          .severity = Severity::advice,
                          .theme = Theme::cabling,
                          .title = "Length not known",
                          .meaning =
                              "Whether the link will work is not known until the length is typed in or measured; the "
                              "bill of materials lacks it too.",
                          .measured =
                              "Each network link is looked at for cables that have neither a typed length nor a "
                              "drawn way to measure.",
                          .remedy = "Type the length, or stand both devices in the room so that it can be measured.",
                          .patterns = patterns,
                          .no_source = "Says only what the check cannot know."};

void check(const graph::Wiring& wiring, const graph::Runs& runs, const CableLengths& lengths, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        const auto& run = runs.list[i];
        if (!run.a || !run.b || lengths.runs[i].channel) continue;
        if (!wiring.is_network_port(*run.a) || !wiring.is_network_port(*run.b)) continue;
        for (const int cable : run.cables) {
            if (lengths.cables[at(cable)].length) continue;
            const auto id = cable_id(wiring, cable);
            out.push_back(found(words.id, Severity::advice, {id},
                                {named(id), port_ref(wiring, *run.a), port_ref(wiring, *run.b)}));
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::length_unknown
