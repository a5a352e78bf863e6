// A cable's end that names a port which its device's type does not have, as happens when a type is refreshed.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::cable_end_unknown {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 ends at port \"%3\" of %2, but devices of its type have no such port."),
    STREAMWRIGHT_TEXT("%1 ends at %2, whose type is not in the design.")};

constexpr RuleWords words{.id = "cable-end-unknown",
                          .theme = Theme::drawing,
                          .title = "Cable end at a port that is not there",
                          .meaning =
                              "The check cannot follow the cable. What lies behind it is judged as if it were "
                              "not cabled.",
                          .measured = "Each cable end is looked up among the ports of the type that the design holds.",
                          .remedy = "Connect the end to a port that is there, or refresh the type of the device.",
                          .patterns = patterns,
                          .no_source = "Follows from the ports that the type states."};

void judge(const graph::Wiring& wiring, const model::Cable& cable, const std::optional<model::CableEnd>& end,
           bool resolved, Findings& out) {
    if (!end || resolved) return;
    const auto device = wiring.device_index(end->port.device);
    if (!device) return;
    const bool typed = wiring.devices[at(*device)].type != nullptr;
    std::vector<base::Value> values{named(cable.id), named(end->port.device)};
    if (typed) values.emplace_back(end->port.port.text);
    out.push_back(found(words.id, Severity::error, {cable.id, end->port}, std::move(values), typed ? 0 : 1));
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (const auto& cable : wiring.cables) {
        judge(wiring, *cable.row, cable.row->a, cable.a.has_value(), out);
        if (cable.row->a != cable.row->b) judge(wiring, *cable.row, cable.row->b, cable.b.has_value(), out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::cable_end_unknown
