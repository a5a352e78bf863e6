// A subscription fills an input of a device that decodes streams of that family and kind.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::subscription_not_decoded {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: a device of that type cannot decode."),
    STREAMWRIGHT_TEXT("%1: the device is not set to decode."),
    STREAMWRIGHT_TEXT("%1: the device has no such decoder input."),
    STREAMWRIGHT_TEXT("%1 shows %2, a stream of family %3, but decodes family %4 only."),
    STREAMWRIGHT_TEXT("%1 shows %2, a stream of kind %3, but the input takes %4.")};

constexpr RuleWords words{.id = "subscription-not-decoded",
                          .title = "Subscription that the decoder cannot take",
                          .meaning =
                              "Streams are decoded only by devices of their own family, in the decoder role, at an "
                              "input of their kind. Otherwise the display stays black.",
                          .patterns = patterns,
                          .no_source = "Follows from the roles, families and inputs that types state."};

Finding about(const model::Subscription& row, std::vector<base::Value> values, int variant) {
    return found(words.id, Severity::error, {row.id, row.decoder}, std::move(values), variant);
}

void judge(const graph::Wiring& wiring, const model::Subscription& row, int decoder, Findings& out) {
    const auto* type = wiring.devices[at(decoder)].type;
    if (!type) return;
    const auto name = named(row.id);
    if (!type->can(catalogue::Role::decoder)) return out.push_back(about(row, {name}, 0));
    if (!decodes(wiring, decoder)) return out.push_back(about(row, {name}, 1));
    const auto& inputs = type->codec->inputs;
    const auto input =
        std::find_if(inputs.begin(), inputs.end(), [&](const auto& each) { return each.key == row.input; });
    if (input == inputs.end()) return out.push_back(about(row, {name}, 2));
    const auto* stream = wiring.design.streams.find(row.stream);
    const auto encoder = stream ? wiring.device_index(stream->encoder) : std::nullopt;
    const auto* sender = encoder ? wiring.devices[at(*encoder)].type : nullptr;
    if (!sender || !sender->codec) return;
    const auto& from = sender->codec->family;
    const auto& to = type->codec->family;
    if (from != to)
        out.push_back(about(row, {name, named(stream->id), from, to}, 3));
    else if (stream->kind != input->kind)
        out.push_back(about(row,
                            {name, named(stream->id), std::string(base::enum_text(stream->kind)),
                             std::string(base::enum_text(input->kind))},
                            4));
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (const auto& row : wiring.design.subscriptions)
        if (const auto decoder = wiring.device_index(row.decoder)) judge(wiring, row, *decoder, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::subscription_not_decoded
