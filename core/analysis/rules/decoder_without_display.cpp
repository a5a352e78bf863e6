// A decoder whose pictures reach nothing that shows them.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::decoder_without_display {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 decodes, but its picture reaches no display."),
    STREAMWRIGHT_TEXT("%1 decodes a subscribed stream, but its picture reaches no display.")};

constexpr RuleWords words{.id = "decoder-without-display",
                          .theme = Theme::signals,
                          .title = "Decoder without display",
                          .meaning =
                              "The picture arrives and nobody sees it. Often the lead between decoder and display "
                              "was forgotten, or it ends at the wrong device.",
                          .measured =
                              "The picture outputs of each device that decodes are followed over leads, extenders "
                              "and panels. An error where a preset shows something there, else a warning.",
                          .remedy = "Draw the lead to the display, or remove the decoder.",
                          .patterns = patterns,
                          .no_source = "Follows from the drawing."};

bool gives_pictures(const catalogue::DeviceType& type) {
    return std::any_of(type.ports.begin(), type.ports.end(), [](const auto& port) {
        return port.signal == catalogue::Signal::video && port.way == catalogue::Way::out;
    });
}

/// A display on the picture output itself: the usual case, which saves following the signals.
bool has_display_lead(const graph::Wiring& wiring, const graph::SignalGraph& signals, int device) {
    const auto& hops = signals.hops_from[at(device)];
    return std::any_of(hops.begin(), hops.end(), [&](int index) {
        const auto& hop = signals.hops[at(index)];
        const auto kind = wiring.devices[at(hop.to.device)].type->kind;
        return wiring.port_type(hop.from).signal == catalogue::Signal::video &&
               (kind == catalogue::DeviceKind::display || kind == catalogue::DeviceKind::projector ||
                kind == catalogue::DeviceKind::wall_tile);
    });
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto* type = wiring.devices[at(i)].type;
        if (!type || !type->codec || !gives_pictures(*type) || !decodes(wiring, i)) continue;
        if (has_display_lead(wiring, signals, i) || graph::reaches_display(wiring, signals, i)) continue;
        const auto id = device_id(wiring, i);
        const auto& rows = wiring.design.subscriptions;
        const bool wanted = std::any_of(rows.begin(), rows.end(), [&](const auto& row) { return row.decoder == id; });
        out.push_back(found(words.id, wanted ? Severity::error : Severity::warning, {id}, {named(id)}, wanted ? 1 : 0));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::decoder_without_display
