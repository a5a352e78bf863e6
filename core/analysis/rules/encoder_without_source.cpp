// An encoder with picture inputs that no source reaches sends black.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::encoder_without_source {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 encodes, but no source reaches its picture inputs."),
    STREAMWRIGHT_TEXT("%1 encodes and is subscribed to, but no source reaches its picture inputs: the displays stay "
                      "black."),
    STREAMWRIGHT_TEXT("%1 sends on what it decodes, but in preset %2 it decodes nothing and its stream is shown: the "
                      "displays stay black.")};

constexpr RuleWords words{
    .id = "encoder-without-source",
    .theme = Theme::signals,
    .title = "Encoder without source",
    .meaning =
        "The encoder has nothing to send. Often the lead between source and encoder was "
        "forgotten, or it ends at the wrong device.",
    .measured =
        "The picture inputs of each device that encodes are followed back over leads, "
        "extenders and panels. An error where a preset shows its stream, else a warning. A "
        "gateway must decode something in each preset that shows a stream of it.",
    .remedy = "Draw the lead from the source, subscribe the gateway to a stream, or remove the encoder.",
    .patterns = patterns,
    .no_source = "Follows from the drawing."};

bool takes_pictures(const catalogue::DeviceType& type) {
    return std::any_of(type.ports.begin(), type.ports.end(), [](const auto& port) {
        return port.signal == catalogue::Signal::video && port.way == catalogue::Way::in;
    });
}

std::set<model::DeviceId> subscribed_encoders(const model::Design& design) {
    std::set<model::DeviceId> encoders;
    for (const auto& row : design.subscriptions)
        if (const auto* stream = design.streams.find(row.stream)) encoders.insert(stream->encoder);
    return encoders;
}

/// A source on the picture input itself: the usual case, which saves following the signals.
bool has_source_lead(const graph::Wiring& wiring, const graph::SignalGraph& signals, int device) {
    const auto& hops = signals.hops_to[at(device)];
    return std::any_of(hops.begin(), hops.end(), [&](int index) {
        const auto from = signals.hops[at(index)].from;
        const auto kind = wiring.devices[at(from.device)].type->kind;
        return wiring.port_type(from).signal == catalogue::Signal::video &&
               (kind == catalogue::DeviceKind::source || kind == catalogue::DeviceKind::camera);
    });
}

/// The gateways that are shown in a preset in which they show nothing themselves, with the first such preset.
std::map<int, model::PresetId> idle_gateways(const graph::Wiring& wiring) {
    const auto is_gateway = [&](int device) {
        const auto* type = device < 0 ? nullptr : wiring.devices[at(device)].type;
        return type && type->codec && type->codec->sends_family;
    };
    std::set<std::pair<int, model::PresetId>> fed, shown;
    for (const auto& [row, stream, decoder] : wiring.subscriptions) {
        if (is_gateway(decoder)) fed.emplace(decoder, row->preset);
        const int encoder = stream < 0 ? -1 : wiring.streams[at(stream)].encoder;
        if (is_gateway(encoder)) shown.emplace(encoder, row->preset);
    }
    std::map<int, model::PresetId> idle;
    for (const auto& [gateway, preset] : shown)
        if (fed.count({gateway, preset}) == 0) idle.emplace(gateway, preset);
    return idle;
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (const auto& [gateway, preset] : idle_gateways(wiring)) {
        const auto id = device_id(wiring, gateway);
        out.push_back(found(words.id, Severity::error, {id}, {named(id), named(preset)}, 2));
    }
    std::optional<std::set<model::DeviceId>> subscribed;  // found once something is wrong
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto* type = wiring.devices[at(i)].type;
        if (!type || !type->codec || !takes_pictures(*type) || !encodes(wiring, i)) continue;
        if (has_source_lead(wiring, signals, i) || graph::fed_by_source(wiring, signals, i)) continue;
        const auto id = device_id(wiring, i);
        if (!subscribed) subscribed = subscribed_encoders(wiring.design);
        const bool wanted = subscribed->count(id) != 0;
        out.push_back(found(words.id, wanted ? Severity::error : Severity::warning, {id}, {named(id)}, wanted ? 1 : 0));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::encoder_without_source
