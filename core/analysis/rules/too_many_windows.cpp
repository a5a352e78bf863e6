// A preset that brings more pictures to a multi-window device than it can show side by side.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/wall_picture.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::too_many_windows {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("In %2 %1 is given %3 pictures; its outputs show %4 at once.")};

constexpr RuleWords words{.id = "too-many-windows",
                          .severity = Severity::warning,
                          .theme = Theme::signals,
                          .title = "More pictures than windows",
                          .meaning = "Some of the pictures that the preset routes there are seen by nobody.",
                          .measured =
                              "The streams that the preset shows on a decoder's inputs, or that decoders bring to a "
                              "processor's, against the windows that its type states for an output, times the picture "
                              "outputs that are cabled. Sources on leads of their own are not counted: nobody says "
                              "that they are shown.",
                          .remedy = "Show fewer pictures in the preset, or take a device with more windows.",
                          .patterns = patterns,
                          .no_source = "Follows from what the types state."};

bool gives_picture(const catalogue::PortType& port) {
    return port.signal == catalogue::Signal::video && port.way == catalogue::Way::out && !port.local_output;
}

/// Picture outputs that a cable is drawn to; one at least, since something is to be shown.
int cabled_outputs(const graph::Wiring& wiring, int device) {
    const auto& ports = wiring.devices[at(device)].type->ports;
    int count = 0;
    for (int port = 0; port < static_cast<int>(ports.size()); ++port)
        if (gives_picture(ports[at(port)]) && !wiring.cables_at({device, port}).empty()) ++count;
    return std::max(count, 1);
}

/// Whether the preset brings a picture out of the device: a decoder, or an extender behind one.
bool brings_picture(const graph::Wiring& wiring, const graph::SignalGraph& signals, const graph::SignalHop& hop,
                    model::PresetId preset, std::set<int>& seen) {
    const auto* type = wiring.devices[at(hop.from.device)].type;
    if (!type || !seen.insert(hop.from.device).second) return false;
    if (type->codec)
        return !wiring.port_type(hop.from).local_output && !shown_by(wiring, hop.from.device, preset).empty();
    return std::ranges::any_of(signals.hops_to[at(hop.from.device)], [&](int index) {
        return brings_picture(wiring, signals, signals.hops[at(index)], preset, seen);
    });
}

int pictures_given(const graph::Wiring& wiring, const graph::SignalGraph& signals, int device, model::PresetId preset) {
    if (wiring.devices[at(device)].type->codec) return static_cast<int>(shown_by(wiring, device, preset).size());
    return static_cast<int>(std::ranges::count_if(signals.hops_to[at(device)], [&](int index) {
        std::set<int> seen{device};
        const auto& hop = signals.hops[at(index)];
        return wiring.port_type(hop.to).signal == catalogue::Signal::video &&
               brings_picture(wiring, signals, hop, preset, seen);
    }));
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (int device = 0; device < static_cast<int>(wiring.devices.size()); ++device) {
        const auto* type = wiring.devices[at(device)].type;
        if (!type || !type->most_windows) continue;
        const std::int64_t windows = *type->most_windows, outputs = cabled_outputs(wiring, device);
        const auto most = windows * outputs;
        for (const auto& preset : wiring.design.presets) {
            const std::int64_t given = pictures_given(wiring, signals, device, preset.id);
            if (given <= most) continue;
            const auto id = device_id(wiring, device);
            auto finding =
                found(words.id, Severity::warning, {id, preset.id}, {named(id), named(preset.id), given, most});
            finding.measured = given;
            finding.limit = most;
            finding.terms = {line(STREAMWRIGHT_TEXT("%1 windows x %2 outputs = %3"), {windows, outputs, most})};
            out.push_back(std::move(finding));
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::too_many_windows
