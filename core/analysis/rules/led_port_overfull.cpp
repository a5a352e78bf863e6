// More pixels of LED cabinets on one data output than it drives.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>
#include <set>
#include <utility>

namespace streamwright::analysis::rules::led_port_overfull {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 drives %2 pixels at most; the cabinets on it have %3.")};

constexpr RuleWords words{.id = "led-port-overfull",
                          .theme = Theme::signals,
                          .title = "Too many LED cabinets on one output",
                          .meaning =
                              "The last cabinets of the chain stay dark, or the whole output falls back to fewer "
                              "frames or fewer shades.",
                          .measured =
                              "The pixels of all cabinets that are chained on the output, as their types state, "
                              "against the most that the processor's type states for it. Cabinets that state no pixels "
                              "count nothing, so that the sum is never too large.",
                          .remedy = "Move the end of the chain to a free output, or take a larger processor.",
                          .patterns = patterns,
                          .no_source = "Follows from what the types state."};

/// Everything that LED data reaches from the port, each device once.
std::set<int> cabinets_on(const graph::Wiring& wiring, const graph::SignalGraph& signals, graph::PortAt output) {
    std::set<int> seen;
    std::vector<int> open;
    const auto follow = [&](const graph::SignalHop& hop) {
        const bool led = catalogue::carries_led_data(wiring.port_type(hop.from)) &&
                         catalogue::carries_led_data(wiring.port_type(hop.to));
        if (led && seen.insert(hop.to.device).second) open.push_back(hop.to.device);
    };
    for (const int hop : signals.hops_from[at(output.device)])
        if (signals.hops[at(hop)].from == output) follow(signals.hops[at(hop)]);
    while (!open.empty()) {
        const int device = open.back();
        open.pop_back();
        for (const int hop : signals.hops_from[at(device)]) follow(signals.hops[at(hop)]);
    }
    return seen;
}

struct Load {
    std::int64_t pixels = 0;
    std::map<std::pair<std::int64_t, std::int64_t>, std::int64_t> cabinets;  // how many of each raster
};

Load load_of(const graph::Wiring& wiring, const std::set<int>& cabinets) {
    Load load;
    for (const int device : cabinets) {
        const auto* type = wiring.devices[at(device)].type;
        if (!type || !type->image) continue;
        const std::int64_t across = type->image->pixels_across, down = type->image->pixels_down;
        load.pixels += across * down;
        ++load.cabinets[{across, down}];
    }
    return load;
}

void judge(const graph::Wiring& wiring, const graph::SignalGraph& signals, graph::PortAt output, std::int64_t most,
           Findings& out) {
    const auto load = load_of(wiring, cabinets_on(wiring, signals, output));
    if (load.pixels <= most) return;
    auto finding =
        found(words.id, Severity::error, {port_subject(wiring, output)}, {port_ref(wiring, output), most, load.pixels});
    finding.measured = load.pixels;
    finding.limit = most;
    for (const auto& [raster, count] : load.cabinets)
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 cabinets x %2 x %3 = %4 pixels"),
                                     {count, raster.first, raster.second, count * raster.first * raster.second}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (int device = 0; device < static_cast<int>(wiring.devices.size()); ++device) {
        const auto* type = wiring.devices[at(device)].type;
        if (!type) continue;
        for (int port = 0; port < static_cast<int>(type->ports.size()); ++port)
            if (const auto& most = type->ports[at(port)].most_pixels)
                judge(wiring, signals, {device, port}, *most, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::led_port_overfull
