// A receiver of network audio takes what the levels of its type say: so many channels at this sampling rate in packets
// of this time. Judged where its type names levels.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/stream_chain.h"
#include "core/analysis/stream_decoding.h"

#include <set>

namespace streamwright::analysis::rules::sound_flow_not_taken {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 receives %2 (%3), but takes only what levels %4 of ST 2110-30 hold."),
    STREAMWRIGHT_TEXT("%1 receives %2, which packs AES3 frames (%3), but takes linear sound only.")};

constexpr standards::Citation sources[] = {{"SMPTE", "ST 2110-30", "Table 2"},
                                           {"AES", "AES67-2018", "7.2"},
                                           {"SMPTE", "ST 2110-31", "", standards::Standing::memory}};

constexpr RuleWords words{
    .id = "sound-flow-not-taken",
    .theme = Theme::signals,
    .title = "Flow of sound that the receiver does not take",
    .meaning =
        "The receiver refuses the flow or stays silent: too many channels, another sampling rate, or packets of "
        "another time.",
    .measured =
        "Channels, sampling rate, packet time and coding of the flow are held against the levels that the receiver's "
        "type names: A and AX take packets of 1 ms, B, C, BX and CX those of 125 us.",
    .remedy = "Send the flow as a level that the receiver takes, or split it into flows of fewer channels.",
    .patterns = patterns,
    .sources = sources};

std::string levels(const catalogue::SoundFlows& flows) {
    std::string text;
    for (const auto& level : flows.levels) text += (text.empty() ? "" : ", ") + level;
    return text.empty() ? "none" : text;
}

void check(const graph::Wiring& wiring, Findings& out) {
    std::set<std::pair<model::DeviceId, model::StreamId>> seen;  // once, in however many presets
    for (const auto& row : wiring.design.subscriptions) {
        const auto decoder = wiring.device_index(row.decoder);
        const auto* type = decoder ? wiring.devices[at(*decoder)].type : nullptr;
        if (!type || !type->codec || !type->codec->sound_flows) continue;
        const auto* stream = wiring.design.streams.find(row.stream);
        if (!stream || !stream->sound || !seen.emplace(row.decoder, row.stream).second) continue;
        const auto& flow = stream->sound->flow;
        if (takes_flow(*type->codec, flow)) continue;
        const bool frames = flow.coding == standards::AudioCoding::am824;
        auto finding =
            found(words.id, Severity::error, {row.decoder, row.stream},
                  {named(row.decoder), named(row.stream), flow_words(flow), levels(*type->codec->sound_flows)},
                  frames ? 1 : 0);
        finding.terms = stream_terms(*stream);
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::sound_flow_not_taken
