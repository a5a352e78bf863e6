// A loudspeaker or an amplifier that no sound can come to.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/graph/sound_paths.h"

#include <algorithm>

namespace streamwright::analysis::rules::sound_not_fed {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 stays silent: nothing is cabled to its sound inputs."),
    STREAMWRIGHT_TEXT("%1 stays silent: what is cabled to its sound inputs gets no sound from any source, microphone "
                      "or decoder.")};

constexpr RuleWords words{
    .id = "sound-not-fed",
    .theme = Theme::signals,
    .title = "Loudspeaker or amplifier without sound",
    .meaning = "The room has loudspeakers and no sound. A lead was forgotten on the way to them.",
    .measured =
        "The sound inputs of each loudspeaker and amplifier are followed back over leads, through "
        "amplifiers, processors and the like, to something that makes sound: a source, a "
        "microphone or a decoder.",
    .remedy = "Draw the missing lead, or remove what is not used.",
    .patterns = patterns,
    .no_source = "Follows from the drawing."};

bool takes_sound(const catalogue::DeviceType& type) {
    const auto kind = type.kind;
    if (kind != catalogue::DeviceKind::speaker && kind != catalogue::DeviceKind::amplifier) return false;
    return std::any_of(type.ports.begin(), type.ports.end(), [](const auto& port) {
        return port.signal == catalogue::Signal::audio && port.way != catalogue::Way::out;
    });
}

/// An end that is open, or of a type not known, is told by another rule.
bool any_lead(const graph::Wiring& wiring, int device) {
    const auto& ports = wiring.devices[at(device)].type->ports;
    for (int p = 0; p < static_cast<int>(ports.size()); ++p)
        if (ports[at(p)].signal == catalogue::Signal::audio && ports[at(p)].way != catalogue::Way::out &&
            !wiring.cables_at({device, p}).empty())
            return true;
    return false;
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto* type = wiring.devices[at(i)].type;
        if (!type || !takes_sound(*type)) continue;
        const auto id = device_id(wiring, i);
        if (!any_lead(wiring, i))
            out.push_back(found(words.id, Severity::error, {id}, {named(id)}));
        else if (!signals.hops_to[at(i)].empty() && !graph::fed_with_sound(wiring, signals, i))
            out.push_back(found(words.id, Severity::error, {id}, {named(id)}, 1));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::sound_not_fed
