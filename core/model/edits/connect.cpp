#include "core/model/edits/connect.h"

#include "core/model/edits/edit_helpers.h"
#include "core/model/mating.h"

namespace streamwright::model {

namespace {

using catalogue::Signal;
using catalogue::Way;

std::string signal_words(Signal signal) {
    switch (signal) {
        case Signal::video:
            return "video";
        case Signal::extender:
            return "a point-to-point extender line";
        case Signal::copper:
            return "network over copper";
        case Signal::fibre:
            return "network over fibre";
        case Signal::audio:
            return "audio";
        case Signal::usb:
            return "USB";
        case Signal::control:
            return "control";
        case Signal::power:
            return "power";
    }
    return {};
}

Trouble unknown_port(const Design& design, const PortRef& ref) {
    const auto facts = port_facts(design, ref);
    if (!facts.device) return base::Error{"The design has no device %1.", {ref.device.text()}};
    if (!facts.port) return base::Error{"%1 has no port %2.", {facts.device->tag, ref.port.text}};
    return std::nullopt;
}

Trouble port_in_use(const Design& design, const PortRef& ref, const std::optional<CableId>& moving) {
    for (const auto& cable : design.cables) {
        if (cable.id == moving) continue;
        if ((cable.a && cable.a->port == ref) || (cable.b && cable.b->port == ref))
            return base::Error{"%1 already holds cable %2; a port takes one cable.",
                               {port_name(design, ref), cable.tag}};
    }
    return std::nullopt;
}

Trouble ways_refused(const Design& design, const PortRef& from, const PortRef& to, Way way) {
    const std::vector<std::string> names{port_name(design, from), port_name(design, to)};
    switch (way) {
        case Way::out:
            return base::Error{"%1 and %2 are both outputs; an output goes to an input.", names};
        case Way::in:
            return base::Error{"%1 and %2 are both inputs; an input takes an output.", names};
        case Way::usb_host:
            return base::Error{"%1 and %2 both take USB devices; one must face the computer's side.", names};
        case Way::usb_device:
            return base::Error{"%1 and %2 both face a computer; one must take USB devices.", names};
        default:
            return base::Error{"%1 and %2 do not go together: their ways differ.", names};
    }
}

/// What the cable carries is said by an end that is neither network nor passive, else by its type.
Signal drawn_signal(const Design& design, const Connect& edit) {
    for (const auto& end : {edit.a, edit.b}) {
        const auto facts = end ? port_facts(design, *end) : PortFacts{};
        if (facts.port && facts.port->way != Way::through && !catalogue::is_network(facts.port->signal))
            return facts.port->signal;
    }
    return edit.type->signal;
}

Trouble unusable(const Design& design, const Connect& edit) {
    if (!edit.type) return base::Error{"A cable needs a type.", {}};
    if (design.cables.contains(edit.id)) return base::Error{"The design already has a cable %1.", {edit.id.text()}};
    if (!edit.a && !edit.b) return base::Error{"A cable needs at least one end on a port.", {}};
    for (const auto& end : {edit.a, edit.b})
        if (end)
            if (auto trouble = unknown_port(design, *end)) return trouble;
    if (edit.a == edit.b)
        return base::Error{"A cable cannot lead from %1 back to itself.", {port_name(design, *edit.a)}};
    return std::nullopt;
}

}  // namespace

std::optional<base::Error> refusal(const Design& design, const PortRef& from, const PortRef& to,
                                   std::optional<CableId> moving) {
    for (const auto* ref : {&from, &to})
        if (auto trouble = unknown_port(design, *ref)) return trouble;
    if (from == to) return base::Error{"A cable cannot lead from %1 back to itself.", {port_name(design, from)}};
    for (const auto* ref : {&to, &from})
        if (auto trouble = port_in_use(design, *ref, moving)) return trouble;
    const auto a = port_facts(design, from);
    const auto b = port_facts(design, to);
    if (!signals_mate(a, b))
        return base::Error{"%1 carries %2, but %3 carries %4.",
                           {port_name(design, from), signal_words(a.port->signal), port_name(design, to),
                            signal_words(b.port->signal)}};
    if (!ways_mate(*a.port, *b.port))
        return ways_refused(design, from, to, a.port->way == b.port->way ? a.port->way : Way::both);
    if (!connectors_mate(a, b))
        return base::Error{"The connectors of %1 (%2) and %3 (%4) do not mate.",
                           {port_name(design, from), catalogue::connector_name(a.port->connector),
                            port_name(design, to), catalogue::connector_name(b.port->connector)}};
    return std::nullopt;
}

std::optional<base::Error> refusal(const Design& design, const PortRef& from, const PortRef& to) {
    return refusal(design, from, to, std::nullopt);
}

std::optional<base::Error> refusal(const Design& design, const catalogue::CableType& type, const PortRef& end) {
    if (auto trouble = unknown_port(design, end)) return trouble;
    const auto facts = port_facts(design, end);
    if (cable_fits(type, facts)) return std::nullopt;
    return base::Error{"%1 has no plug for %2 (%3).",
                       {type.name, port_name(design, end), catalogue::connector_name(facts.port->connector)}};
}

std::string next_cable_tag(const Design& design, catalogue::Signal signal) {
    return edit_detail::next_numbered(design.cables, std::string(1, catalogue::signal_letter(signal)), 3);
}

base::Result<Delta> make(const Design& design, const Connect& edit) {
    if (auto trouble = unusable(design, edit)) return *trouble;
    Editing editing(design);
    if (auto trouble = edit_detail::embed_if_new(editing, edit.type)) return *trouble;
    auto row = Cable::blank(edit.id);
    row.type = edit.type->key;
    row.tag = edit.tag.empty() ? next_cable_tag(design, drawn_signal(design, edit)) : edit.tag;
    if (edit.a) row.a = CableEnd{*edit.a};
    if (edit.b) row.b = CableEnd{*edit.b};
    row.length = edit.length;
    if (auto trouble = edit_detail::put_checked(editing, row)) return *trouble;
    if (edit.sheet) {
        auto line = CableLine::blank({*edit.sheet, edit.id});
        line.bends = edit.bends;
        if (auto trouble = edit_detail::put_checked(editing, std::move(line))) return *trouble;
    }
    return editing.done();
}

}  // namespace streamwright::model
