// A cable that is plugged in at one end only.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::cable_end_open {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 ends at %2 and has no other end."),
                                         STREAMWRIGHT_TEXT("%1 is plugged in nowhere.")};

constexpr RuleWords words{.id = "cable-end-open",
                          .severity = Severity::advice,
                          .theme = Theme::drawing,
                          .title = "Cable with an open end",
                          .meaning = "It would be pulled and bought, and carries nothing.",
                          .measured = "Each cable is looked at for two ends that are plugged in.",
                          .remedy = "Connect the open end, or remove the cable.",
                          .offers = "Remove the cable.",
                          .patterns = patterns,
                          .no_source = "Follows from the drawing."};

void check(const graph::Wiring& wiring, Findings& out) {
    for (const auto& cable : wiring.cables) {
        const auto& a = cable.row->a;
        const auto& b = cable.row->b;
        if (a && b) continue;
        const auto id = cable.row->id;
        std::vector<base::Value> values{named(id)};
        if (a || b) values.emplace_back(named((a ? a : b)->port));
        auto finding = found(words.id, Severity::advice, {id}, std::move(values), a || b ? 0 : 1);
        finding.remedies.push_back({line(STREAMWRIGHT_TEXT("Remove %1"), {named(id)}), model::Remove{{id}, false}});
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::cable_end_open
