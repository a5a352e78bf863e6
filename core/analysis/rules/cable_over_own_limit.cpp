// Some cables work up to a length that their own type states: leads for pictures, direct-attach cables, extender lines.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::cable_over_own_limit {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 is %2 long; cables of type %3 work up to %4.")};

constexpr RuleWords words{
    .id = "cable-over-own-limit",
    .theme = Theme::cabling,
    .title = "Cable longer than its type allows",
    .meaning = "The signal may be gone at the far end, or drop out whenever something is moved.",
    .measured = "The typed or measured length of the cable against the longest that its type states.",
    .remedy =
        "Take a type made for the length, move the devices nearer, or put an extender between "
        "them.",
    .patterns = patterns,
    .no_source = "The limit is the one that the cable type states."};

void check(const graph::Wiring& wiring, const CableLengths& lengths, Findings& out) {
    for (std::size_t i = 0; i < wiring.cables.size(); ++i) {
        const auto& cable = wiring.cables[i];
        const auto& have = lengths.cables[i].length;
        if (!cable.type || !cable.type->most_length || !have || *have <= *cable.type->most_length) continue;
        auto finding = found(words.id, Severity::error, {cable.row->id},
                             {named(cable.row->id), *have, cable.type->name, *cable.type->most_length});
        finding.measured = *have;
        finding.limit = *cable.type->most_length;
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too long"),
                                     {*have, *cable.type->most_length, *have - *cable.type->most_length}));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::cable_over_own_limit
