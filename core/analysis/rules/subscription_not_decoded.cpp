// A subscription fills an input of a device that decodes streams of that family and kind.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/stream_decoding.h"

#include <algorithm>
#include <unordered_map>

namespace streamwright::analysis::rules::subscription_not_decoded {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: a device of that type cannot decode."),
    STREAMWRIGHT_TEXT("%1: the device is not set to decode."),
    STREAMWRIGHT_TEXT("%1: the device has no such decoder input."),
    STREAMWRIGHT_TEXT("%1 shows %2, a stream of family %3, but decodes family %4 only."),
    STREAMWRIGHT_TEXT("%1 shows %2, a stream of kind %3, but the input takes %4.")};

constexpr RuleWords words{.id = "subscription-not-decoded",
                          .theme = Theme::signals,
                          .title = "Subscription that the decoder cannot take",
                          .meaning =
                              "Streams are decoded only by devices of their own family, or of any that take what is "
                              "packed by an open standard, in the decoder role, at an input of their kind. Otherwise "
                              "the display stays black.",
                          .measured =
                              "The decoder's type, its set role, the input, and the family and kind of the stream "
                              "are compared.",
                          .remedy = "Set the device to decode, choose another input, or use endpoints of one family.",
                          .patterns = patterns,
                          .no_source = "Follows from the roles, families and inputs that types state."};

Finding about(const model::Subscription& row, std::vector<base::Value> values, int variant) {
    return found(words.id, Severity::error, {row.id, row.decoder}, std::move(values), variant);
}

/// What a subscription needs to know of its stream.
struct Sent {
    const model::Stream* row = nullptr;
    const std::string* family = nullptr;  // null: the encoder's type is not known or has no codec
    catalogue::StreamKind kind = catalogue::StreamKind::video;
};
using SentStreams = std::unordered_map<model::StreamId, Sent>;

SentStreams sent_streams(const graph::Wiring& wiring) {
    SentStreams sent;
    sent.reserve(wiring.design.streams.size());
    for (const auto& stream : wiring.design.streams) {
        const auto encoder = wiring.device_index(stream.encoder);
        const auto* type = encoder ? wiring.devices[at(*encoder)].type : nullptr;
        sent.emplace(stream.id, Sent{&stream, type && type->codec ? &type->codec->family : nullptr, stream.kind});
    }
    return sent;
}

void judge(const model::Subscription& row, const catalogue::DeviceType& type, bool decoding, const SentStreams& sent,
           Findings& out) {
    if (!type.can(catalogue::Role::decoder)) return out.push_back(about(row, {named(row.id)}, 0));
    if (!decoding) return out.push_back(about(row, {named(row.id)}, 1));
    const auto& inputs = type.codec->inputs;
    const auto input =
        std::find_if(inputs.begin(), inputs.end(), [&](const auto& each) { return each.key == row.input; });
    if (input == inputs.end()) return out.push_back(about(row, {named(row.id)}, 2));
    const auto found_stream = sent.find(row.stream);
    if (found_stream == sent.end() || !found_stream->second.family) return;
    const auto& [stream, from, kind] = found_stream->second;
    const auto& to = type.codec->family;
    if (*from != to && !speaks_of(*type.codec, *stream))
        out.push_back(about(row, {named(row.id), named(row.stream), *from, to}, 3));
    else if (kind != input->kind)
        out.push_back(about(row,
                            {named(row.id), named(row.stream), std::string(base::enum_text(kind)),
                             std::string(base::enum_text(input->kind))},
                            4));
}

void check(const graph::Wiring& wiring, Findings& out) {
    const auto sent = sent_streams(wiring);
    for (const auto& row : wiring.design.subscriptions) {
        const auto decoder = wiring.device_index(row.decoder);
        const auto* type = decoder ? wiring.devices[at(*decoder)].type : nullptr;
        if (type) judge(row, *type, decodes(wiring, *decoder), sent, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::subscription_not_decoded
