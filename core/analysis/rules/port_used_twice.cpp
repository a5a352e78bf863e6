// One socket takes one plug.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::port_used_twice {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 takes one plug, but %2 cables end there: %3.")};

constexpr RuleWords words{.id = "port-used-twice",
                          .theme = Theme::drawing,
                          .title = "Port used twice",
                          .meaning =
                              "Only one of the cables can be plugged in; the others hang loose on site, and port "
                              "and cable schedules disagree.",
                          .measured = "The cables that end at each port are counted.",
                          .remedy = "Move all but one cable to free ports.",
                          .offers = "Move the end of the last cable to a free port of the same kind.",
                          .patterns = patterns,
                          .no_source = "A socket takes one plug."};

void judge(const graph::Wiring& wiring, graph::PortAt port, Findings& out) {
    const auto cables = wiring.cables_at(port);
    if (cables.size() < 2) return;
    std::vector<base::Ref> names;
    for (const int cable : cables) names.push_back(named(cable_id(wiring, cable)));
    auto finding = found(words.id, Severity::error, {port_subject(wiring, port)},
                         {port_ref(wiring, port), static_cast<std::int64_t>(cables.size()), std::move(names)});
    finding.measured = static_cast<std::int64_t>(cables.size());
    finding.limit = std::int64_t{1};
    finding.terms.push_back(
        line(STREAMWRIGHT_TEXT("%1 cables - 1 socket = %2 too many"),
             {static_cast<std::int64_t>(cables.size()), static_cast<std::int64_t>(cables.size()) - 1}));
    if (const auto free = free_port(wiring, port, wiring.port_type(port).way); free && cables.size() == 2)
        if (auto remedy = move_end(wiring, cables.back(), port, *free)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (int device = 0; device < static_cast<int>(wiring.devices.size()); ++device) {
        const auto* type = wiring.devices[at(device)].type;
        const int ports = type ? static_cast<int>(type->ports.size()) : 0;
        for (int port = 0; port < ports; ++port) judge(wiring, {device, port}, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::port_used_twice
