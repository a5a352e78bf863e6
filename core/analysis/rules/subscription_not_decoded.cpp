// A subscription fills an input of a device that decodes streams of that family and kind.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/stream_decoding.h"

#include <algorithm>
#include <vector>

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
                          .remedy =
                              "Set the device to decode, choose another input, use endpoints of one family, or let a "
                              "gateway send the stream on.",
                          .offers = "Show the stream by which a gateway sends it on.",
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
using SentStreams = std::vector<Sent>;  // per stream

SentStreams sent_streams(const graph::Wiring& wiring) {
    SentStreams sent;
    sent.reserve(wiring.streams.size());
    for (const auto& stream : wiring.streams) {
        const auto* type = stream.encoder < 0 ? nullptr : wiring.devices[at(stream.encoder)].type;
        sent.push_back({stream.row, type && type->codec ? &type->codec->sent_family() : nullptr, stream.row->kind});
    }
    return sent;
}

/// A stream of that family by which a gateway sends on, in this preset, the stream that was asked for.
std::optional<Remedy> by_gateway(const graph::Wiring& wiring, const graph::WiredSubscription& asked,
                                 const std::string& family, catalogue::StreamKind kind) {
    for (const auto& [row, encoder] : wiring.streams) {
        const auto* type = encoder < 0 ? nullptr : wiring.devices[at(encoder)].type;
        if (!type || !type->codec || !type->codec->sends_family || *type->codec->sends_family != family) continue;
        const bool passes = std::ranges::any_of(wiring.subscriptions, [&](const auto& each) {
            return each.decoder == encoder && each.stream == asked.stream && each.row->preset == asked.row->preset;
        });
        if (!passes || row->kind != kind) continue;
        return Remedy{
            line(STREAMWRIGHT_TEXT("Show %1, by which %2 sends it on"), {named(row->id), named(row->encoder)}),
            model::Subscribe{asked.row->id, asked.row->preset, asked.row->decoder, asked.row->input, row->id}};
    }
    return std::nullopt;
}

void judge(const graph::Wiring& wiring, const graph::WiredSubscription& asked, const catalogue::DeviceType& type,
           bool decoding, const SentStreams& sent, Findings& out) {
    const auto& row = *asked.row;
    if (!type.can(catalogue::Role::decoder)) return out.push_back(about(row, {named(row.id)}, 0));
    if (!decoding) return out.push_back(about(row, {named(row.id)}, 1));
    const auto& inputs = type.codec->inputs;
    const auto input =
        std::find_if(inputs.begin(), inputs.end(), [&](const auto& each) { return each.key == row.input; });
    if (input == inputs.end()) return out.push_back(about(row, {named(row.id)}, 2));
    if (asked.stream < 0 || !sent[at(asked.stream)].family) return;
    const auto& [stream, from, kind] = sent[at(asked.stream)];
    const auto& to = type.codec->family;
    if (*from != to && !speaks_of(*type.codec, *stream)) {
        auto finding = about(row, {named(row.id), named(row.stream), *from, to}, 3);
        if (auto remedy = by_gateway(wiring, asked, to, input->kind)) finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    } else if (kind != input->kind) {
        out.push_back(about(row,
                            {named(row.id), named(row.stream), std::string(base::enum_text(kind)),
                             std::string(base::enum_text(input->kind))},
                            4));
    }
}

void check(const graph::Wiring& wiring, Findings& out) {
    const auto sent = sent_streams(wiring);
    for (const auto& asked : wiring.subscriptions) {
        const auto* type = asked.decoder < 0 ? nullptr : wiring.devices[at(asked.decoder)].type;
        if (type) judge(wiring, asked, *type, decodes(wiring, asked.decoder), sent, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::subscription_not_decoded
