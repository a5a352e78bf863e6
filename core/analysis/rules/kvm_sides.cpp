// A keyboard and mouse session over the network has one computer on one end and its peripherals on one other end.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/usb_sessions.h"

#include <utility>

namespace streamwright::analysis::rules::kvm_sides {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 in %2 has %3 USB hosts and %4 ends with peripherals: one host only can be served."),
    STREAMWRIGHT_TEXT("%1 in %2 has no USB host and %4 ends with peripherals: no end is cabled toward a computer."),
    STREAMWRIGHT_TEXT("%1 in %2 has one USB host and %4 ends with peripherals: one end only controls."),
    STREAMWRIGHT_TEXT("%1 in %2 has one USB host and no end with peripherals.")};

constexpr RuleWords words{.id = "kvm-sides",
                          .theme = Theme::signals,
                          .title = "USB session without one host and one device side",
                          .meaning =
                              "USB needs one computer on one end and its peripherals on the other. Two computers, or "
                              "peripherals alone, face each other in silence.",
                          .measured =
                              "For each preset the ends of a USB stream are counted: those cabled toward a computer "
                              "and those cabled toward peripherals. There must be one of each.",
                          .remedy = "Subscribe one host end and one end with peripherals, and cable both.",
                          .patterns = patterns,
                          .no_source = "Common practice with USB over a network."};

void judge(const graph::Wiring& wiring, const UsbSession& session, Findings& out) {
    std::int64_t hosts = 0, peripherals = 0;
    for (const int device : session.ends) {
        hosts += faces_computer(wiring, device);
        peripherals += bears_peripherals(wiring, device);
    }
    if (hosts == 1 && peripherals == 1) return;
    const int variant = hosts > 1 ? 0 : hosts == 0 ? 1 : peripherals > 1 ? 2 : 3;
    out.push_back(found(words.id, Severity::error, {session.stream, session.preset},
                        {named(session.stream), named(session.preset), hosts, peripherals}, variant));
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (const auto& session : usb_sessions(wiring))
        if (session.known) judge(wiring, session, out);  // else what is plugged in where is not known
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::kvm_sides
