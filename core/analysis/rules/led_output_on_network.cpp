// Data for LED cabinets on a network cable that ends at a network port or an extender: the plug fits, nothing works.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::led_output_on_network {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 carries data for LED cabinets and is joined to the network port %2."),
    STREAMWRIGHT_TEXT("%1 carries data for LED cabinets and is joined to %2, the port of an extender.")};

constexpr RuleWords words{.id = "led-output-on-network",
                          .theme = Theme::signals,
                          .title = "LED data on a network port",
                          .meaning =
                              "Processors and cabinets use network plugs and cable, but speak a protocol of their own: "
                              "the wall stays dark, and a switch may take the port for broken or flood what it hears.",
                          .measured =
                              "Every port that its type names as LED wall data, followed through panels and outlets: "
                              "what stands at the other end must be LED wall data, too.",
                          .remedy =
                              "Run LED data from the processor to the cabinets over cable of its own, never over a "
                              "switch. The processor's network port, which is for its settings, is another one.",
                          .patterns = patterns,
                          .no_source = "Follows from the ports that the types state."};

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    for (const auto& run : runs.list) {
        if (!run.a || !run.b) continue;
        const bool a_is_led = catalogue::carries_led_data(wiring.port_type(*run.a));
        if (a_is_led == catalogue::carries_led_data(wiring.port_type(*run.b))) continue;
        const auto led = a_is_led ? *run.a : *run.b, other = a_is_led ? *run.b : *run.a;
        const auto signal = wiring.port_type(other).signal;
        const bool network = catalogue::is_network(signal);
        if (!network && signal != catalogue::Signal::extender) continue;  // another rule says that nothing fits
        out.push_back(found(words.id, Severity::error, {port_subject(wiring, led), port_subject(wiring, other)},
                            {port_ref(wiring, led), port_ref(wiring, other)}, network ? 0 : 1));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::led_output_on_network
