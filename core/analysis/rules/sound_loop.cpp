// Sound that comes round to where it was, over leads and over the network, in some preset.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/graph/sound_paths.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::sound_loop {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("Sound can come round to %1 again, by %2, in %3: it howls unless one of them leaves out what "
                      "came from it."),
    STREAMWRIGHT_TEXT("Sound can come round to %1 again, by %2, whatever the preset: it howls unless one of them "
                      "leaves out what came from it.")};

constexpr standards::Citation sources[] = {
    {"trade", "mix-minus", "each party is sent the mix without its own sound", standards::Standing::practice}};

constexpr RuleWords words{.id = "sound-loop",
                          .theme = Theme::signals,
                          .title = "Sound goes round",
                          .meaning =
                              "What comes out goes in again and grows until it howls. With a conference or a recorder "
                              "the way back is wanted, but then a mix must leave out what came from there.",
                          .measured =
                              "Leads of sound and of pictures, and the streams each preset subscribes, are followed "
                              "through everything that passes sound on. What makes sound passes nothing on; a "
                              "microphone that hears a loudspeaker is not looked at.",
                          .remedy =
                              "Take one lead or one subscription of the ring away, or set a mix that leaves it out and "
                              "accept the finding with that reason.",
                          .patterns = patterns,
                          .sources = sources};

/// A ring needs a lead of sound, or one from a decoder into an encoder.
bool may_have_rings(const graph::Wiring& wiring, const graph::SignalGraph& signals) {
    const auto endpoint = [&](graph::PortAt port) {
        const auto* type = wiring.devices[at(port.device)].type;
        return type && type->codec;
    };
    return graph::has_sound_leads(wiring, signals) ||
           std::any_of(signals.hops.begin(), signals.hops.end(),
                       [&](const auto& hop) { return endpoint(hop.from) && endpoint(hop.to); });
}

using Ring = std::set<model::DeviceId>;

Ring devices_of(const graph::Wiring& wiring, const std::vector<graph::SoundPlace>& places) {
    Ring ring;
    for (const auto& place : places) ring.insert(device_id(wiring, place.device));
    return ring;
}

Finding finding_of(const Ring& ring, std::optional<model::PresetId> preset) {
    std::vector<Subject> subjects(ring.begin(), ring.end());
    std::vector<base::Ref> others;
    for (auto each = std::next(ring.begin()); each != ring.end(); ++each) others.push_back(named(*each));
    if (others.empty()) others.push_back(named(*ring.begin()));  // a device cabled to itself
    std::vector<base::Value> values{named(*ring.begin()), std::move(others)};
    if (preset) values.emplace_back(named(*preset));
    return found(words.id, Severity::warning, std::move(subjects), std::move(values), preset ? 0 : 1);
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    if (!may_have_rings(wiring, signals)) return;
    std::set<Ring> told;
    const auto look = [&](std::optional<model::PresetId> preset) {
        for (const auto& places : graph::sound_rings(graph::find_sound_paths(wiring, signals, preset)))
            if (auto ring = devices_of(wiring, places); told.insert(ring).second)
                out.push_back(finding_of(ring, preset));
    };
    look(std::nullopt);
    for (const auto& preset : wiring.design.presets) look(preset.id);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::sound_loop
