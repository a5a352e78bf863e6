// Analogue sound given at one level and taken at another.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/catalogue/sound_level.h"
#include "core/standards/audio_levels.h"

namespace streamwright::analysis::rules::sound_levels_differ {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 drives %2 with loudspeaker power, which is made for %3: it can be destroyed."),
    STREAMWRIGHT_TEXT("%1 gives %4 to %2, which takes loudspeaker power: an amplifier is missing."),
    STREAMWRIGHT_TEXT("%1 gives microphone level to %2, which takes %3: hardly to be heard without a preamplifier."),
    STREAMWRIGHT_TEXT("%1 gives %4 to %2, which takes microphone level: it is driven far too hard."),
    STREAMWRIGHT_TEXT("%1 gives %4 to %2, which takes %3: %5 too loud. Turn the output down, or it distorts."),
    STREAMWRIGHT_TEXT("%1 gives %4 to %2, which takes %3: %5 too quiet. Turn the input up; noise rises with it.")};

constexpr standards::Citation sources[] = {
    {"trade", "line levels", "+4 dBu of balanced lines, -10 dBV of unbalanced ones", standards::Standing::practice}};

constexpr RuleWords words{.id = "sound-levels-differ",
                          .theme = Theme::signals,
                          .title = "Sound levels do not match",
                          .meaning =
                              "The sound is there, but distorted, noisy or hardly heard; loudspeaker power on a line "
                              "input destroys it.",
                          .measured =
                              "The levels that the standards of both ports name are compared: microphone, -10 dBV of "
                              "unbalanced lines, +4 dBu of balanced ones, loudspeaker power. Between the two line "
                              "levels lie 11.8 dB. Inputs of audio processors are left out: their gain is set.",
                          .remedy =
                              "Use an output of the level that the input takes, set the gain, or put an amplifier or "
                              "a converter between.",
                          .patterns = patterns,
                          .sources = sources};

using Level = catalogue::SoundLevel;

base::Loss between_lines() {
    const auto professional = standards::voltage_of_dbu(standards::professional_line_dbu);
    const auto consumer = standards::voltage_of_dbv(standards::consumer_line_dbv);
    return base::Loss::from_count(standards::level_between(professional, consumer).count());
}

struct Verdict {
    Severity severity;
    int variant;
};

std::optional<Verdict> judge(Level given, Level taken) {
    if (given == taken) return std::nullopt;
    if (given == Level::loudspeaker) return Verdict{Severity::error, 0};
    if (taken == Level::loudspeaker) return Verdict{Severity::error, 1};
    if (given == Level::microphone) return Verdict{Severity::error, 2};
    if (taken == Level::microphone) return Verdict{Severity::error, 3};
    return Verdict{Severity::advice, given == Level::balanced_line ? 4 : 5};
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (const auto& hop : signals.hops) {
        const auto given = catalogue::sound_level_of(wiring.port_type(hop.from));
        const auto taken = catalogue::sound_level_of(wiring.port_type(hop.to));
        if (!given || !taken) continue;
        const auto& type = *wiring.devices[at(hop.to.device)].type;
        const auto verdict = judge(*given, *taken);
        if (!verdict || (*given != Level::loudspeaker && catalogue::sets_input_gain(type))) continue;
        auto finding =
            found(words.id, verdict->severity, {port_subject(wiring, hop.from), port_subject(wiring, hop.to)},
                  {port_ref(wiring, hop.from), port_ref(wiring, hop.to), std::string(base::enum_text(*taken)),
                   std::string(base::enum_text(*given)), between_lines()},
                  verdict->variant);
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::sound_levels_differ
