// A point-to-point extender works with its own other half only: links of different kinds share the plug and nothing
// else.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::extender_halves_differ {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 joins %2 (%3) to %4 (%5): the two halves do not speak the same link.")};

constexpr standards::Citation sources[] = {
    {"trade", "point-to-point extenders", "used in pairs of one kind", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "extender-halves-differ",
    .theme = Theme::signals,
    .title = "Halves of different extenders",
    .meaning =
        "Both ends light up and no picture comes. It happens where older extenders stay in a "
        "room and one half is replaced, or where spare parts are mixed.",
    .measured =
        "The kinds of link that the types of both extender ports name. Where one of them names "
        "none, nothing is held against it.",
    .remedy = "Take both halves of one kind, or go over to the network with an encoder and a decoder.",
    .patterns = patterns,
    .sources = sources};

std::string list_of(const std::vector<std::string>& names) {
    std::string list;
    for (const auto& name : names) list += (list.empty() ? "" : ", ") + name;
    return list;
}

bool differ(const graph::Wiring& wiring, const graph::Run& run) {
    if (!run.a || !run.b || run.cables.empty()) return false;
    const auto &a = wiring.port_type(*run.a), &b = wiring.port_type(*run.b);
    if (a.signal != catalogue::Signal::extender || b.signal != catalogue::Signal::extender) return false;
    if (a.standards.empty() || b.standards.empty()) return false;
    return std::ranges::find_first_of(a.standards, b.standards) == a.standards.end();
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    graph::ByKind<bool> differing(runs);
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        const auto& run = runs.list[i];
        if (!differing.of(i, [&](const graph::Run& each) { return differ(wiring, each); })) continue;
        const auto cable = cable_id(wiring, run.cables.front());
        out.push_back(found(words.id, Severity::error,
                            {cable, device_id(wiring, run.a->device), device_id(wiring, run.b->device)},
                            {named(cable), port_ref(wiring, *run.a), list_of(wiring.port_type(*run.a).standards),
                             port_ref(wiring, *run.b), list_of(wiring.port_type(*run.b).standards)}));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::extender_halves_differ
