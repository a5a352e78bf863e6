// An encoder with picture inputs that no source reaches sends black.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::encoder_without_source {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 encodes, but no source reaches its picture inputs."),
    STREAMWRIGHT_TEXT("%1 encodes and is subscribed to, but no source reaches its picture inputs: the displays stay "
                      "black.")};

constexpr RuleWords words{.id = "encoder-without-source",
                          .title = "Encoder without source",
                          .meaning =
                              "The encoder has nothing to send. Often the lead between source and encoder was "
                              "forgotten, or it ends at the wrong device.",
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

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    const auto subscribed = subscribed_encoders(wiring.design);
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto* type = wiring.devices[at(i)].type;
        if (!type || !type->codec || !takes_pictures(*type) || !encodes(wiring, i)) continue;
        if (graph::fed_by_source(wiring, signals, i)) continue;
        const auto id = device_id(wiring, i);
        const bool wanted = subscribed.count(id) != 0;
        out.push_back(found(words.id, wanted ? Severity::error : Severity::warning, {id}, {named(id)}, wanted ? 1 : 0));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::encoder_without_source
