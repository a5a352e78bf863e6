// A cable whose plug does not fit the socket, or that joins ports of different kinds of signal.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::connectors_do_not_mate {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 has no plug for %2 (%3)."),
                                         STREAMWRIGHT_TEXT("%1 carries %3, but %2 is a port for %4."),
                                         STREAMWRIGHT_TEXT("%1 joins %2, a port for %3, to %4, a port for %5."),
                                         STREAMWRIGHT_TEXT("%1 has one plug for each end, but not these: %2 is %3 and "
                                                           "%4 is %5.")};

constexpr RuleWords words{.id = "connectors-do-not-mate",
                          .theme = Theme::cabling,
                          .title = "Connectors or kinds of signal that do not mate",
                          .meaning =
                              "The cable cannot be plugged in as drawn, or it fits and still nothing passes: an "
                              "extender port looks like a network port and is none.",
                          .measured =
                              "The plugs and the signal of the cable type against the connector and the signal of "
                              "the port at each end; in a cage the transceiver's connector counts.",
                          .remedy =
                              "Take a cable type with the right plugs, or another port. An extender port is joined "
                              "to the extender's other half only.",
                          .patterns = patterns,
                          .no_source = "Follows from the plugs and ports that the types state."};

std::string signal_name(catalogue::Signal signal) {
    using enum catalogue::Signal;
    if (signal == copper) return STREAMWRIGHT_TEXT("copper network");
    if (signal == fibre) return STREAMWRIGHT_TEXT("fibre network");
    if (signal == extender) return STREAMWRIGHT_TEXT("extender link");
    if (signal == usb) return STREAMWRIGHT_TEXT("USB");
    return std::string(base::enum_text(signal));
}

/// Extenders run over network cable; every other signal needs its own.
bool cable_suits(catalogue::Signal cable, catalogue::Signal port) {
    if (port == catalogue::Signal::extender && catalogue::is_network(cable)) return true;
    return cable == port;
}

bool ports_suit(catalogue::Signal a, catalogue::Signal b) {
    return a == b || (catalogue::is_network(a) && catalogue::is_network(b));
}

/// The connector that the cable meets at the port; nothing where another rule judges (cages without their module, or
/// with one for another medium).
std::optional<catalogue::Connector> met_at(const graph::Wiring& wiring, const catalogue::CableType& cable,
                                           graph::PortAt port) {
    const auto connector = wiring.port_type(port).connector;
    if (!catalogue::is_cage(connector)) return connector;
    const auto* module = wiring.module_at(port);
    if (!module || !module->module || module->module->medium != cable.medium) return std::nullopt;
    return module->module->connector;
}

void judge_end(const graph::Wiring& wiring, int index, graph::PortAt port, Findings& out) {
    const auto& cable = wiring.cables[at(index)];
    if (!cable.type) return;
    const auto& type = wiring.port_type(port);
    const auto subjects = [&] { return std::vector<Subject>{cable_id(wiring, index), port_subject(wiring, port)}; };
    const auto name = [&] { return named(cable_id(wiring, index)); };
    const bool judged = !catalogue::is_cage(type.connector) && type.way != catalogue::Way::through;
    if (judged && !cable_suits(cable.type->signal, type.signal)) {
        out.push_back(found(words.id, Severity::error, subjects(),
                            {name(), port_ref(wiring, port), signal_name(cable.type->signal), signal_name(type.signal)},
                            1));
        return;
    }
    const auto met = met_at(wiring, *cable.type, port);
    const auto& plugs = cable.type->plugs;
    if (!met || plugs.empty() || std::find(plugs.begin(), plugs.end(), *met) != plugs.end()) return;
    out.push_back(found(words.id, Severity::error, subjects(),
                        {name(), port_ref(wiring, port), catalogue::connector_name(*met)}, 0));
}

/// Each end alone finds a plug, but both need the same one.
void judge_both_ends(const graph::Wiring& wiring, int index, Findings& out) {
    const auto& cable = wiring.cables[at(index)];
    if (!cable.type || !cable.a || !cable.b) return;
    const auto a = met_at(wiring, *cable.type, *cable.a), b = met_at(wiring, *cable.type, *cable.b);
    const auto& plugs = cable.type->plugs;
    const auto has = [&](auto connector) { return std::find(plugs.begin(), plugs.end(), connector) != plugs.end(); };
    if (!a || !b || !has(*a) || !has(*b) || cable.type->joins(*a, *b)) return;
    const auto id = cable_id(wiring, index);
    out.push_back(found(words.id, Severity::error, {id},
                        {named(id), port_ref(wiring, *cable.a), catalogue::connector_name(*a),
                         port_ref(wiring, *cable.b), catalogue::connector_name(*b)},
                        3));
}

/// Both ends judged by types alone: what a transceiver decides is not of the kind.
bool mates(const graph::Wiring& wiring, const graph::Run& run) {
    if (!run.a || !run.b || run.cables.size() != 1) return false;
    const auto& cable = wiring.cables[at(run.cables.front())];
    Findings faults;
    for (const auto& end : {cable.a, cable.b}) {
        if (catalogue::is_cage(wiring.port_type(*end).connector)) return false;
        judge_end(wiring, run.cables.front(), *end, faults);
    }
    judge_both_ends(wiring, run.cables.front(), faults);
    return faults.empty();
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    graph::ByKind<bool> mating(runs);
    for (int i = 0; i < static_cast<int>(wiring.cables.size()); ++i) {
        const auto run = at(runs.run_of_cable[at(i)]);
        if (mating.of(run, [&](const graph::Run& each) { return mates(wiring, each); })) continue;
        for (const auto& end : {wiring.cables[at(i)].a, wiring.cables[at(i)].b})
            if (end) judge_end(wiring, i, *end, out);
        judge_both_ends(wiring, i, out);
    }
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        const auto& run = runs.list[i];
        if (!run.a || !run.b) continue;
        const auto a = wiring.port_type(*run.a).signal, b = wiring.port_type(*run.b).signal;
        if (ports_suit(a, b)) continue;
        // LED data on a network port has a rule of its own, which says what it does there.
        const bool led = catalogue::carries_led_data(wiring.port_type(*run.a)) ||
                         catalogue::carries_led_data(wiring.port_type(*run.b));
        if (led && (catalogue::is_network(a) || catalogue::is_network(b))) continue;
        const auto first = cable_id(wiring, run.cables.front());
        out.push_back(found(
            words.id, Severity::error, {first},
            {named(first), port_ref(wiring, *run.a), signal_name(a), port_ref(wiring, *run.b), signal_name(b)}, 2));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::connectors_do_not_mate
