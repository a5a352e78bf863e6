// Surround sound sent to a decoder behind which stands something that takes less: without a downmix it stays silent.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::surround_without_downmix {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 carries compressed surround; %2 behind %3 does not take it, and %3 makes no two channels of "
                      "it: no sound."),
    STREAMWRIGHT_TEXT("%1 carries compressed surround; %2 behind %3 does not take it, and the type of %3 does not "
                      "state whether it makes two channels of it: whether there is sound is not known."),
    STREAMWRIGHT_TEXT("%1 carries multichannel sound; %2 behind %3 does not take it, and %3 makes no two channels of "
                      "it: no sound."),
    STREAMWRIGHT_TEXT("%1 carries multichannel sound; %2 behind %3 does not take it, and the type of %3 does not "
                      "state whether it makes two channels of it: whether there is sound is not known.")};

constexpr standards::Citation sources[] = {
    {"IEC", "61937", "compressed sound in place of two channels", standards::Standing::memory}};

constexpr RuleWords words{.id = "surround-without-downmix",
                          .theme = Theme::signals,
                          .title = "Surround sound where two channels are taken",
                          .meaning =
                              "The picture comes, the sound does not. The sound is sent in a form that the far "
                              "end does not turn into two channels.",
                          .measured =
                              "The sound of the stream against the formats that the ports behind the decoder state, "
                              "where the decoder makes no two channels of it. Where its type is silent about that "
                              "the finding is advice.",
                          .remedy =
                              "Let the source give two channels, send a second stream with them, or take a decoder "
                              "that mixes down.",
                          .patterns = patterns,
                          .sources = sources};

bool lacks(const catalogue::PortType& port, catalogue::AudioFormat sent) {
    return !port.audio.empty() && std::find(port.audio.begin(), port.audio.end(), sent) == port.audio.end();
}

/// What the decoder is cabled to, and its own cabled sound outputs, that state formats without this one.
std::vector<graph::PortAt> silent_ports(const graph::Wiring& wiring, const graph::SignalGraph& signals, int decoder,
                                        catalogue::AudioFormat sent) {
    std::vector<graph::PortAt> ports;
    for (const int index : signals.hops_from[at(decoder)]) {
        const auto& hop = signals.hops[at(index)];
        const auto& from = wiring.port_type(hop.from);
        if (from.signal == catalogue::Signal::audio && lacks(from, sent))
            ports.push_back(hop.from);
        else if (lacks(wiring.port_type(hop.to), sent))
            ports.push_back(hop.to);
    }
    return ports;
}

void judge(const graph::Wiring& wiring, const graph::SignalGraph& signals, const model::Subscription& row,
           const model::Stream& stream, Findings& out) {
    const auto decoder = wiring.device_index(row.decoder);
    const auto* type = decoder ? wiring.devices[at(*decoder)].type : nullptr;
    if (!type || !type->codec || type->codec->downmix.value_or(false)) return;
    const bool known = type->codec->downmix.has_value();
    for (const auto port : silent_ports(wiring, signals, *decoder, *stream.audio)) {
        const auto sink = port_subject(wiring, port);
        out.push_back(found(words.id, known ? Severity::error : Severity::advice, {row.id, sink},
                            {named(stream.id), named(sink), named(row.decoder)},
                            (known ? 0 : 1) + (*stream.audio == catalogue::AudioFormat::compressed_surround ? 0 : 2)));
    }
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    std::map<model::StreamId, const model::Stream*> surround;  // few, or none: looked up before any subscription is
    for (const auto& stream : wiring.design.streams)
        if (stream.audio && *stream.audio != catalogue::AudioFormat::stereo_pcm) surround.emplace(stream.id, &stream);
    if (surround.empty()) return;
    for (const auto& row : wiring.design.subscriptions)
        if (const auto found = surround.find(row.stream); found != surround.end())
            judge(wiring, signals, row, *found->second, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::surround_without_downmix
