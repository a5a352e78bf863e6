// A stream comes from a device that encodes; a subscription to anything else stays black.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>

namespace streamwright::analysis::rules::subscription_not_encoded {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 shows %2 of %3, but a device of that type cannot encode."),
    STREAMWRIGHT_TEXT("%1 shows %2 of %3, but %3 is not set to encode.")};

constexpr RuleWords words{.id = "subscription-not-encoded",
                          .theme = Theme::signals,
                          .title = "Subscription to a device that does not encode",
                          .meaning = "The decoder waits for a stream that nobody sends.",
                          .measured = "The type and the set role of the device that should send the stream.",
                          .remedy = "Set the device to encode, or move the stream to an encoder.",
                          .offers = "Let the device encode.",
                          .patterns = patterns,
                          .no_source = "Follows from the roles that types and devices state."};

std::optional<Remedy> encode_too(const graph::Wiring& wiring, int device) {
    auto row = device_settings(wiring, device);
    const auto& codec = *wiring.devices[at(device)].type->codec;
    if (codec.roles_at_once)
        row.roles.push_back(catalogue::Role::encoder);
    else
        row.roles = {catalogue::Role::encoder};
    return Remedy{line(STREAMWRIGHT_TEXT("Let %1 encode"), {named(row.id)}), model::ConfigureDevice{std::move(row)}};
}

/// Streams whose encoder does not encode, with its index; mostly none, and then no subscription need be looked at.
std::map<model::StreamId, int> silent_streams(const graph::Wiring& wiring) {
    std::map<model::StreamId, int> silent;
    for (const auto& [row, encoder] : wiring.streams)
        if (encoder >= 0 && wiring.devices[at(encoder)].type && !encodes(wiring, encoder))
            silent.emplace(row->id, encoder);
    return silent;
}

void check(const graph::Wiring& wiring, Findings& out) {
    const auto silent = silent_streams(wiring);
    if (silent.empty()) return;
    for (const auto& row : wiring.design.subscriptions) {
        const auto stream = silent.find(row.stream);
        if (stream == silent.end()) continue;
        const int encoder = stream->second;
        const auto id = device_id(wiring, encoder);
        const bool able = wiring.devices[at(encoder)].type->can(catalogue::Role::encoder);
        auto finding =
            found(words.id, Severity::error, {row.id, id}, {named(row.id), named(row.stream), named(id)}, able ? 1 : 0);
        if (able)
            if (auto remedy = encode_too(wiring, encoder)) finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::subscription_not_encoded
