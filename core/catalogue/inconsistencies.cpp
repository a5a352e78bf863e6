#include "core/catalogue/inconsistencies.h"

#include "core/base/number_text.h"
#include "core/catalogue/detail/judge.h"
#include "core/standards/ethernet_rates.h"
#include "core/standards/poe.h"
#include "core/standards/rack_units.h"

#include <algorithm>
#include <map>

namespace streamwright::catalogue {

namespace inconsistencies_detail {

bool active_network(const PortType& port) { return is_network(port.signal) && port.way != Way::through; }

template <class Test>
std::ptrdiff_t count_ports(const DeviceType& type, Test&& test) {
    return std::count_if(type.ports.begin(), type.ports.end(), test);
}

bool supplies(const PortType& port) { return port.poe && port.poe->side == PoeSide::supplies; }
bool is_inlet(const PortType& port) { return port.signal == Signal::power && port.way == Way::in; }

bool light_connector(Connector connector) {
    return connector == Connector::lc_duplex || connector == Connector::lc_simplex ||
           connector == Connector::sc_duplex || connector == Connector::mpo;
}

bool usb_connector(Connector connector) {
    return connector == Connector::usb_a || connector == Connector::usb_b || connector == Connector::usb_c;
}

void judge_poe(Judge& judge, const PortType& port, const std::string& field) {
    if (!port.poe) return;
    const bool takes = port.poe->side == PoeSide::takes;
    judge.refuse_if(!takes && port.poe->draw.count() > 0, field + ".poe.draw_mw", "stands on ports that take power");
    judge.refuse_if(takes && port.poe->draw.count() == 0, field + ".poe.draw_mw", "must say what the device draws");
    const auto* limits = standards::poe_class(port.poe->poe_class);
    if (takes && limits)
        judge.refuse_if(port.poe->draw > limits->at_device, field + ".poe.draw_mw",
                        "is above the " + base::print(limits->at_device) + " that class " +
                            std::to_string(limits->number) + " gives a device (IEEE 802.3)");
}

void judge_port(Judge& judge, const PortType& port) {
    const std::string field = "ports[" + port.key.text + "]";
    judge.refuse_if(port.signal == Signal::copper && port.connector != Connector::rj45 && !is_cage(port.connector),
                    field + ".connector", "of a copper network port is rj45 or a cage");
    judge.refuse_if(port.signal == Signal::fibre && !light_connector(port.connector) && !is_cage(port.connector),
                    field + ".connector", "of a fibre port is a fibre connector or a cage");
    judge.refuse_if(port.signal == Signal::usb && !usb_connector(port.connector), field + ".connector",
                    "of a USB port is usb_a, usb_b or usb_c");
    judge.refuse_if(port.pairs == 2 && !port.rates.empty() && port.rates.back().count() > 100'000'000, field + ".pairs",
                    "two pairs carry 100 Mb/s at most (IEEE 802.3)");
    judge.refuse_if(port.signal == Signal::power && port.way != Way::in && port.way != Way::out, field + ".way",
                    "of a power port is in or out");
    judge_poe(judge, port, field);
}

/// A group whose ports all face one way has nothing to choose between.
void judge_usb_groups(Judge& judge, const DeviceType& type) {
    std::map<int, std::set<Way>> ways;
    for (const auto& port : type.ports)
        if (port.usb_group && port.way != Way::through) ways[*port.usb_group].insert(port.way);
    for (const auto& [group, both] : ways)
        judge.refuse_if(both.size() < 2, "ports.usb_group",
                        "group " + std::to_string(group) + " needs usb_host and usb_device ports to choose between");
}

void judge_ports(Judge& judge, const DeviceType& type) {
    for (const auto& port : type.ports) judge_port(judge, port);
    judge_usb_groups(judge, type);
    judge.refuse_if(!type.bridging && count_ports(type, [](const auto& port) { return port.auxiliary; }) > 0,
                    "bridging", "must be stated where a port is auxiliary: a built-in switch joins it");
}

void judge_power(Judge& judge, const DeviceType& type) {
    const auto inlets = count_ports(type, is_inlet);
    judge.refuse_if(inlets > 0 && !type.power, "power", "must be stated where the type has an inlet");
    if (!type.power) return;
    judge.refuse_if(type.power->most.count() == 0, "power.most_mw", "must be above zero where power is stated");
    judge.refuse_if(inlets > 0 && type.power->external_supply, "power.external_supply",
                    "a type with an inlet of its own has no plug-in supply");
}

void judge_codec(Judge& judge, const DeviceType& type) {
    if (!type.codec) return;
    base::BitRate fastest;
    for (const auto& port : type.ports)
        if (active_network(port) && !port.rates.empty()) fastest = std::max(fastest, port.rates.back());
    judge.refuse_if(fastest.count() == 0, "ports", "lack a network port, without which nothing is sent or taken");
    judge.refuse_if(type.codec->usual_rate && *type.codec->usual_rate > fastest, "codec.usual_rate_bps",
                    "is above the " + base::print(fastest) + " of its fastest network port");
    const auto takes = [&](StreamKind kind) {
        return std::any_of(type.codec->inputs.begin(), type.codec->inputs.end(),
                           [&](const DecoderInput& input) { return input.kind == kind; });
    };
    const auto pictures = count_ports(type, [](const auto& port) {
        return (port.signal == Signal::video || port.signal == Signal::extender) && port.way == Way::out &&
               !port.local_output;
    });
    const bool sends_on = type.codec && type.codec->sends_family.has_value();
    judge.refuse_if(takes(StreamKind::video) && pictures == 0 && !sends_on, "codec.inputs",
                    "take pictures that no port gives out");
    const auto usb = count_ports(type, [](const auto& port) { return port.signal == Signal::usb; });
    judge.refuse_if(takes(StreamKind::usb) && usb == 0, "codec.inputs", "take USB that no port gives out");
}

void judge_bridging(Judge& judge, const DeviceType& type) {
    if (!type.bridging) return;
    const auto& facts = *type.bridging;
    judge.refuse_if(count_ports(type, active_network) < 2, "ports", "a switch joins two network ports at least");
    const auto feeding = std::find_if(type.ports.begin(), type.ports.end(), supplies);
    const bool feeds = feeding != type.ports.end();
    judge.refuse_if(facts.poe_budget && !feeds, "bridging.poe_budget_mw", "stands where a port supplies PoE");
    judge.refuse_if(facts.poe_by_class && !feeds, "bridging.poe_by_class", "stands where a port supplies PoE");
    if (facts.poe_budget && feeds) {
        const auto* gives = standards::poe_class(feeding->poe->poe_class);
        judge.refuse_if(gives && *facts.poe_budget < gives->at_supply, "bridging.poe_budget_mw",
                        "does not feed even one of its ports of class " + std::to_string(feeding->poe->poe_class));
    }
    const bool says_how =
        facts.unknown_groups || facts.lookup || facts.group_table_size || facts.groups_per_port || facts.fast_leave;
    judge.refuse_if(facts.snooping == false && says_how, "bridging.snooping",
                    "is false, and yet it is stated how the switch snoops");
}

void judge_module(Judge& judge, const DeviceType& type) {
    if (!type.module) return;
    const bool lights = type.module->medium == Medium::multimode || type.module->medium == Medium::singlemode;
    judge.refuse_if(lights != light_connector(type.module->connector), "module.connector",
                    "does not fit the medium: fibre has a fibre connector, and nothing else has");
    const auto* phy = standards::ethernet_phy(type.module->phy);
    judge.refuse_if(lights && phy && phy->paths != type.module->strands, "module.strands",
                    "of " + type.module->phy + " are " + std::to_string(phy ? phy->paths : 0));
}

void judge_body(Judge& judge, const DeviceType& type) {
    const auto& size = type.size;
    const bool rack = type.kind == DeviceKind::rack;
    const auto units = standards::rack_height(size.rack_units);
    judge.refuse_if(type.card_form && size.rack_units > 0, "size.rack_units", "a card takes a slot, not rack units");
    judge.refuse_if(size.full_depth.has_value() && size.rack_units < 1, "size.full_depth",
                    "stands on rack-mounted types, and only there");
    if (size.rack_units < 1) return;
    judge.refuse_if(!rack && size.height > units, "size.height_um",
                    "is above the height of its rack units, 44.45 mm each (IEC 60297-3-100)");
    judge.refuse_if(rack && size.height.count() > 0 && size.height < units, "size.height_um",
                    "of a rack is below the height of its units, 44.45 mm each (IEC 60297-3-100)");
    judge.refuse_if(!rack && size.width > standards::rack_panel_width, "size.width_um",
                    "is wider than a rack, 482.6 mm (IEC 60297-3-100)");
}

void judge_control(Judge& judge, const DeviceType& type) {
    const auto takes = [&](Signal signal) {
        return count_ports(type, [&](const auto& port) { return port.signal == signal && port.way != Way::out; }) > 0;
    };
    for (const auto method : type.controlled_by) {
        const bool wired = method == ControlMethod::serial || method == ControlMethod::contact;
        judge.refuse_if(wired && !takes(Signal::control), "controlled_by",
                        "names " + std::string(base::enum_text(method)) + ", but the type has no control port");
        judge.refuse_if(method == ControlMethod::network && count_ports(type, active_network) == 0, "controlled_by",
                        "names network, but the type has no network port");
    }
}

void judge_plugs(Judge& judge, const CableType& type) {
    const bool fibre = type.medium == Medium::multimode || type.medium == Medium::singlemode;
    const auto light = std::count_if(type.plugs.begin(), type.plugs.end(), light_connector);
    judge.refuse_if(!fibre && light > 0, "plugs", "name a fibre connector, but the medium is no fibre");
    judge.refuse_if(type.signal == Signal::fibre && light == 0, "plugs", "of a fibre cable are fibre connectors");
}

}  // namespace inconsistencies_detail

std::optional<base::Error> inconsistency(const DeviceType& type, const std::string& where) {
    using namespace inconsistencies_detail;
    Judge judge(where);
    judge_ports(judge, type);
    judge_power(judge, type);
    judge_codec(judge, type);
    judge_bridging(judge, type);
    judge_module(judge, type);
    judge_body(judge, type);
    judge_control(judge, type);
    return judge.error();
}

std::optional<base::Error> inconsistency(const CableType& type, const std::string& where) {
    using namespace inconsistencies_detail;
    Judge judge(where);
    const bool fibre = type.medium == Medium::multimode || type.medium == Medium::singlemode;
    judge.refuse_if(type.signal == Signal::fibre && !fibre, "medium", "of a fibre cable is multimode or singlemode");
    judge.refuse_if(type.signal == Signal::copper && fibre, "medium", "of a copper cable is no fibre");
    judge_plugs(judge, type);
    judge.refuse_if(
        type.signal == Signal::copper && type.medium == Medium::balanced_copper && type.pairs != 2 && type.pairs != 4,
        "pairs", "of a network cable are 2 or 4");
    judge.refuse_if(fibre && type.screened, "screened", "stands on cables of copper");
    return judge.error();
}

}  // namespace streamwright::catalogue
