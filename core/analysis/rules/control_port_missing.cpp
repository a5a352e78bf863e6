// A device that is switched on and set from outside, and nothing in reach that could do it.
#include "core/analysis/control_help.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis::rules::control_port_missing {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT(
        "%1 needs %2 control, and none reaches it: no cable for it is drawn, and neither what its signals "
        "are cabled to nor its room has a free port for it."),
    STREAMWRIGHT_TEXT("%1 is to have %2 control, and its own type has no port for that."),
    STREAMWRIGHT_TEXT("%1 needs %2 control; %3 is free and in reach, and no cable to it is drawn."),
    STREAMWRIGHT_TEXT("%1 needs %2 control, and %3 is not cabled to a network.")};

constexpr standards::Citation sources[] = {
    {"trade", "control schedule", "method, port and end of each controlled device", standards::Standing::practice}};

constexpr RuleWords words{.id = "control-port-missing",
                          .theme = Theme::signals,
                          .title = "No control port in reach",
                          .meaning =
                              "The device cannot be switched on from the room's control. Put the control at the end of "
                              "the link where the device stands, and draw its lead so that it is ordered.",
                          .measured =
                              "A device whose type needs control from outside, or of which a method is asked here, is "
                              "served by a cable to a port of that method. Where none is drawn, a free port at what "
                              "its signals are cabled to, or at what can control in its room, is advice to draw the "
                              "lead; a network port not cabled is a warning; nothing in reach is an error.",
                          .remedy =
                              "Draw the control lead; else take an encoder, decoder or extender with such a port at "
                              "that end, or move the device to where one is.",
                          .patterns = patterns,
                          .sources = sources};

using catalogue::ControlMethod;

bool has(const std::vector<ControlMethod>& methods, std::optional<ControlMethod> method) {
    return method && std::find(methods.begin(), methods.end(), *method) != methods.end();
}

struct Reader {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::SignalGraph& signals;
    std::map<model::RoomId, std::vector<int>> in_room;  // what can control other devices
};

/// Whether a run from the port ends at a port of another device.
bool cabled_through(const Reader& r, graph::PortAt port) {
    for (const int cable : r.wiring.cables_at(port)) {
        const auto& run = r.runs.list[at(r.runs.run_of_cable[at(cable)])];
        if (run.a && run.b) return true;
    }
    return false;
}

/// A port of the device of one of the methods, cabled or not as asked; out of the device where it is to control.
std::optional<graph::PortAt> port_for(const Reader& r, int device, const std::vector<ControlMethod>& methods,
                                      bool cabled, bool controls) {
    const auto& ports = r.wiring.devices[at(device)].type->ports;
    for (int i = 0; i < static_cast<int>(ports.size()); ++i) {
        const graph::PortAt port{device, i};
        const bool way = ports[at(i)].way != (controls ? catalogue::Way::in : catalogue::Way::out);
        if (!way || !has(methods, catalogue::control_of(ports[at(i)]))) continue;
        if (cabled ? cabled_through(r, port) : r.wiring.cables_at(port).empty()) return port;
    }
    return std::nullopt;
}

/// What the device's signals are cabled to, and what can control in its room; nothing where a type is not known.
std::vector<int> neighbours(const Reader& r, int device) {
    std::vector<int> near;
    for (const int hop : r.signals.hops_from[at(device)]) near.push_back(r.signals.hops[at(hop)].to.device);
    for (const int hop : r.signals.hops_to[at(device)]) near.push_back(r.signals.hops[at(hop)].from.device);
    std::erase_if(near, [&](int other) { return !gives_control(r.wiring.devices[at(other)]); });
    if (const auto& room = r.wiring.devices[at(device)].row->room)
        if (const auto found_room = r.in_room.find(*room); found_room != r.in_room.end())
            near.insert(near.end(), found_room->second.begin(), found_room->second.end());
    std::erase(near, device);
    return near;
}

std::optional<graph::PortAt> free_in_reach(const Reader& r, int device, const std::vector<ControlMethod>& methods) {
    for (const int other : neighbours(r, device))
        if (const auto port = port_for(r, other, methods, false, true)) return port;
    return std::nullopt;
}

/// The methods that the device itself can take; IR is taken by its front, with or without a socket.
std::vector<ControlMethod> taken_by(const catalogue::DeviceType& type, std::vector<ControlMethod> methods) {
    std::erase_if(methods, [&](ControlMethod method) {
        return method != ControlMethod::ir && std::none_of(type.ports.begin(), type.ports.end(), [&](const auto& port) {
                   return catalogue::control_of(port) == method;
               });
    });
    return methods;
}

void judge(const Reader& r, int device, Findings& out) {
    const auto asked = asked_control(r.wiring.devices[at(device)]);
    if (asked.empty() || port_for(r, device, asked, true, false)) return;
    const auto id = device_id(r.wiring, device);
    const auto add = [&](Severity severity, int variant, std::optional<graph::PortAt> port) {
        std::vector<Subject> subjects{id};
        std::vector<base::Value> values{named(id), control_words(asked)};
        if (port) subjects.push_back(port_subject(r.wiring, *port)), values.emplace_back(port_ref(r.wiring, *port));
        out.push_back(found(words.id, severity, std::move(subjects), std::move(values), variant));
    };
    auto usable = taken_by(*r.wiring.devices[at(device)].type, asked);
    if (usable.empty()) return add(Severity::error, 1, {});
    std::vector<ControlMethod> network;
    if (has(usable, ControlMethod::network)) network.push_back(ControlMethod::network);
    std::erase(usable, ControlMethod::network);
    if (const auto port = free_in_reach(r, device, usable)) return add(Severity::advice, 2, port);
    if (const auto port = port_for(r, device, network, false, false)) return add(Severity::warning, 3, port);
    add(Severity::error, 0, {});
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals, Findings& out) {
    Reader reader{wiring, runs, signals, {}};
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i)
        if (const auto& device = wiring.devices[at(i)]; device.row->room && gives_control(device))
            reader.in_room[*device.row->room].push_back(i);
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i)
        if (wiring.devices[at(i)].type) judge(reader, i, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::control_port_missing
