// Sound that leads or lags its picture by more than the chosen standard allows, where both are in one room.
#include "core/analysis/lip_sync.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/standards/lip_sync.h"

#include <map>

namespace streamwright::analysis::rules::sound_out_of_step {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("In %4 the sound of %1 at %3 leads its picture on %2 by %5; %7 allows %6."),
    STREAMWRIGHT_TEXT("In %4 the sound of %1 at %3 comes %5 after its picture on %2; %7 allows %6.")};

constexpr standards::Citation sources[] = {
    {"ITU-R", "BT.1359-1", "recommends 2 (acceptability, 90 ms early, 185 ms late)"},
    {"EBU", "R37", "final output, 40 ms early, 60 ms late"},
    {"ATSC", "IS-191", "15 ms early, 45 ms late", standards::Standing::memory}};

constexpr RuleWords words{.id = "sound-out-of-step",
                          .theme = Theme::signals,
                          .title = "Sound and picture out of step",
                          .meaning =
                              "Lips move after the word is heard, or before. Pictures are late because they are "
                              "encoded, decoded and shown; sound that goes another way is not.",
                          .measured =
                              "For each display and each loudspeaker of its room that carry the same source: what "
                              "encoding, decoding, displays and processors add to the picture, less what is added to "
                              "the sound. The network's own share, below a millisecond, is left out. A way with a "
                              "delay not known is not judged. The standard is a setting of the design.",
                          .remedy =
                              "Delay the sound that comes too early; take decoders of one kind in one room. Sound of a "
                              "live talker cannot wait: shorten the way of the picture.",
                          .patterns = patterns,
                          .sources = sources};

std::string_view what_words(DelayPart::What what) {
    switch (what) {
        case DelayPart::What::encoding:
            return STREAMWRIGHT_TEXT("%1 encodes: %2");
        case DelayPart::What::decoding:
            return STREAMWRIGHT_TEXT("%1 decodes: %2");
        case DelayPart::What::set:
            return STREAMWRIGHT_TEXT("%1 is set to delay the sound: %2");
        case DelayPart::What::passing:
            break;
    }
    return STREAMWRIGHT_TEXT("%1 takes: %2");
}

void add_terms(Finding& finding, std::string pattern, const DelayWay& way) {
    finding.terms.push_back(line(std::move(pattern), {way.sum()}));
    for (const auto& part : way.parts)
        finding.terms.push_back(line(std::string(what_words(part.what)), {named(part.device), part.delay}));
}

base::Duration magnitude(base::Duration offset) { return offset.count() < 0 ? -offset : offset; }

/// Sound that leads is delayed at the last processor on its way, if there is one.
std::optional<Remedy> delay_sound(const graph::Wiring& wiring, const LipSyncPair& pair, base::Duration lead) {
    for (auto part = pair.sound.parts.rbegin(); part != pair.sound.parts.rend(); ++part) {
        const auto device = wiring.device_index(part->device);
        if (!device || wiring.devices[at(*device)].type->kind != catalogue::DeviceKind::audio_processor) continue;
        auto row = device_settings(wiring, *device);
        row.sound_delay = row.sound_delay.value_or(base::Duration{}) + lead;
        return Remedy{line(STREAMWRIGHT_TEXT("Delay the sound at %1 by %2"), {named(part->device), lead}),
                      model::ConfigureDevice{std::move(row)}};
    }
    return std::nullopt;
}

struct Reader {
    const graph::Wiring& wiring;
    const standards::LipSyncWindow& window;
};

void judge(const Reader& r, const LipSyncPair& pair, Findings& out) {
    const auto lead = pair.lead();
    if (!lead) return;
    const auto verdict = standards::lip_sync(*lead, r.window);
    const bool early = verdict == standards::LipSync::early;
    if (!early && verdict != standards::LipSync::late) return;
    const auto limit = early ? r.window.early : r.window.late;
    auto finding = found(words.id, Severity::warning, {pair.display, pair.speaker, pair.source},
                         {named(pair.source), named(pair.display), named(pair.speaker), named(pair.preset),
                          magnitude(*lead), limit, std::string(r.window.name)},
                         early ? 0 : 1);
    finding.measured = magnitude(*lead);
    finding.limit = limit;
    add_terms(finding, STREAMWRIGHT_TEXT("the picture: %1"), pair.picture);
    add_terms(finding, STREAMWRIGHT_TEXT("the sound: %1"), pair.sound);
    if (early)
        if (auto remedy = delay_sound(r.wiring, pair, *lead)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    if (!graph::has_sound_leads(wiring, signals)) return;
    const auto* window = lip_sync_window_of(wiring.design.settings().lip_sync);
    if (!window) return;
    const Reader reader{wiring, *window};
    std::map<std::string, Finding> worst;  // of all presets, per display, loudspeaker and source
    for (const auto& preset : wiring.design.presets) {
        Findings found_here;
        for (const auto& pair : find_lip_sync(wiring, signals, preset.id)) judge(reader, pair, found_here);
        for (auto& finding : found_here) {
            const auto known = worst.find(finding.key());
            if (known == worst.end() || known->second.measured < finding.measured)
                worst.insert_or_assign(finding.key(), std::move(finding));
        }
    }
    for (auto& [key, finding] : worst) out.push_back(std::move(finding));
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::sound_out_of_step
