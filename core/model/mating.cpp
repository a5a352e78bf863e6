#include "core/model/mating.h"

#include <algorithm>
#include <initializer_list>

namespace streamwright::model {

using catalogue::Connector;
using catalogue::Signal;
using catalogue::Way;

namespace {

bool is_through(const catalogue::PortType& port) { return port.way == Way::through; }

bool is_open_cage(const PortFacts& facts) { return catalogue::is_cage(facts.port->connector) && !facts.module; }

bool lights_fibre(catalogue::Medium medium) {
    return medium == catalogue::Medium::multimode || medium == catalogue::Medium::singlemode;
}

/// What a network port carries once its module is in.
Signal carried_signal(const PortFacts& facts) {
    if (facts.module) return lights_fibre(facts.module->medium) ? Signal::fibre : Signal::copper;
    return facts.port->signal;
}

Connector outer_connector(const PortFacts& facts) {
    return facts.module ? facts.module->connector : facts.port->connector;
}

bool both_among(std::initializer_list<Connector> family, Connector a, Connector b) {
    const auto holds = [&](Connector c) { return std::find(family.begin(), family.end(), c) != family.end(); };
    return holds(a) && holds(b);
}

/// Families within which leads with a different plug at either end are ordinary.
bool one_connector_family(Connector a, Connector b) {
    using enum Connector;
    return a == b || both_among({usb_a, usb_b, usb_c}, a, b) || both_among({lc_duplex, sc_duplex}, a, b) ||
           both_among({jack_3_5, terminal, xlr}, a, b) || both_among({terminal, de9}, a, b) ||
           both_among({terminal, ir_jack, jack_3_5}, a, b) || both_among({terminal, speaker}, a, b) ||
           both_among({iec_c14, iec_c13, iec_c8}, a, b) ||
           // A 16 A outlet feeds inlets of 16 A and 10 A; a 10 A outlet feeds none of 16 A (IEC 60320-1).
           both_among({iec_c20, iec_c19}, a, b) || both_among({iec_c19, iec_c14}, a, b) ||
           both_among({displayport, usb_c}, a, b) || both_among({hdmi, usb_c}, a, b) ||
           both_among({sfp, sfp_plus, sfp28}, a, b);
}

bool has_plug(const catalogue::CableType& type, Connector connector) {
    return std::find(type.plugs.begin(), type.plugs.end(), connector) != type.plugs.end();
}

}  // namespace

PortFacts port_facts(const Design& design, const PortRef& ref) {
    PortFacts facts;
    facts.device = design.devices.find(ref.device);
    const auto* type = facts.device ? design.type_of(*facts.device) : nullptr;
    if (!type) return facts;
    const auto at =
        std::find_if(type->ports.begin(), type->ports.end(), [&](const auto& p) { return p.key == ref.port; });
    if (at != type->ports.end()) facts.port = &*at;
    const auto* set = design.port_overrides.find(ref);
    const auto* module = set && set->module ? design.device_types.find(*set->module) : nullptr;
    if (module && module->type->module) facts.module = &*module->type->module;
    return facts;
}

std::string port_name(const Design& design, const PortRef& ref) {
    const auto facts = port_facts(design, ref);
    const std::string device = facts.device && !facts.device->tag.empty() ? facts.device->tag : ref.device.text();
    const bool labelled = facts.port && !facts.port->label.empty();
    return device + ' ' + (labelled ? facts.port->label : ref.port.text);
}

bool signals_mate(const PortFacts& a, const PortFacts& b) {
    if (is_through(*a.port) || is_through(*b.port)) return true;
    const bool networks = catalogue::is_network(a.port->signal) && catalogue::is_network(b.port->signal);
    if (networks && (is_open_cage(a) || is_open_cage(b))) return true;
    return carried_signal(a) == carried_signal(b);
}

bool ways_mate(const catalogue::PortType& a, const catalogue::PortType& b) {
    if (is_through(a) || is_through(b)) return true;
    if (a.way == Way::both || b.way == Way::both) return true;
    const auto pair = [&](Way one, Way other) {
        return (a.way == one && b.way == other) || (a.way == other && b.way == one);
    };
    return pair(Way::in, Way::out) || pair(Way::usb_host, Way::usb_device);
}

bool connectors_mate(const PortFacts& a, const PortFacts& b) {
    const bool a_open = is_open_cage(a);
    const bool b_open = is_open_cage(b);
    // A direct-attach cable joins cage to cage; a cage still without its module may take what the other end needs.
    if (a_open && b_open) return one_connector_family(a.port->connector, b.port->connector);
    if (a_open || b_open)
        return catalogue::is_network((a_open ? b : a).port->signal) || is_through(*(a_open ? b : a).port);
    return one_connector_family(outer_connector(a), outer_connector(b));
}

bool cable_fits(const catalogue::CableType& type, const PortFacts& end) {
    if (type.plugs.empty()) return is_through(*end.port) || type.signal == carried_signal(end);
    if (has_plug(type, outer_connector(end)) || has_plug(type, end.port->connector)) return true;
    return is_open_cage(end) && catalogue::is_network(type.signal);
}

bool cable_joins(const catalogue::CableType& type, const PortFacts& a, const PortFacts& b) {
    if (!cable_fits(type, a) || !cable_fits(type, b)) return false;
    return is_open_cage(a) || is_open_cage(b) || type.joins(outer_connector(a), outer_connector(b));
}

}  // namespace streamwright::model
