// Two outputs wired together show nothing, and may harm each other; two inputs wired together wait for ever.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::outputs_joined {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 joins two outputs: %2 and %3. Nothing shows."),
    STREAMWRIGHT_TEXT("%1 joins two inputs: %2 and %3. No signal enters."),
    STREAMWRIGHT_TEXT("%1 joins two USB sockets for peripherals: %2 and %3. One end must face a computer."),
    STREAMWRIGHT_TEXT("%1 joins two USB sockets for computers: %2 and %3. One end must face a peripheral.")};

constexpr RuleWords words{.id = "outputs-joined",
                          .theme = Theme::signals,
                          .title = "Output wired to output, or input to input",
                          .meaning =
                              "A signal needs one end that sends and one that takes. The picture stays black, and "
                              "two outputs driving one cable may be damaged.",
                          .measured = "The direction of the two ports that a cable joins, through panels and outlets.",
                          .remedy = "Move one end to a port of the other direction.",
                          .offers = "Move the end of the cable to a free port of the device that takes it.",
                          .patterns = patterns,
                          .no_source = "Follows from the direction that the port types state."};

/// The pattern for two ports of one way; nothing for ways that agree.
std::optional<int> variant_of(catalogue::Way a, catalogue::Way b) {
    using enum catalogue::Way;
    if (a != b) return std::nullopt;
    if (a == out) return 0;
    if (a == in) return 1;
    if (a == usb_host) return 2;
    if (a == usb_device) return 3;
    return std::nullopt;
}

catalogue::Way opposite(catalogue::Way way) {
    using enum catalogue::Way;
    if (way == out) return in;
    if (way == in) return out;
    return way == usb_host ? usb_device : usb_host;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    for (const auto& run : runs.list) {
        if (!run.a || !run.b) continue;
        const auto& a = wiring.port_type(*run.a);
        const auto& b = wiring.port_type(*run.b);
        const auto variant = variant_of(a.way, b.way);
        if (!variant || a.signal != b.signal) continue;
        const auto first = cable_id(wiring, run.cables.front());
        auto finding = found(words.id, Severity::error, {first},
                             {named(first), port_ref(wiring, *run.a), port_ref(wiring, *run.b)}, *variant);
        for (const auto& [cable, port] : {std::pair{run.cables.back(), *run.b}, std::pair{run.cables.front(), *run.a}})
            if (const auto free = free_port(wiring, port, opposite(a.way)))
                if (auto remedy = move_end(wiring, cable, port, *free)) finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::outputs_joined
