// Resolves plates and lines of a sheet, and the words of flags.
#include "core/deliver/drawing/sheet_lines.h"

#include "core/deliver/drawing/sheet_size.h"
#include "core/layout/cable_route.h"

#include <algorithm>

namespace streamwright::deliver {

namespace lines_detail {

const catalogue::PortType* port_of_end(const Scene& scene, const std::optional<model::CableEnd>& end) {
    if (!end) return nullptr;
    const auto* device = scene.design.devices.find(end->port.device);
    const auto* type = device ? type_in(scene, *device) : nullptr;
    return type ? type->find_port(end->port.port) : nullptr;
}

std::optional<layout::RouteEnd> end_on(const Scene& scene, const Plates& plates,
                                       const std::optional<model::CableEnd>& end) {
    const auto* port = port_of_end(scene, end);
    const auto plate = end ? plates.find(end->port.device) : plates.end();
    if (!port || plate == plates.end()) return std::nullopt;
    const auto* type = type_in(scene, *scene.design.devices.find(end->port.device));
    const auto index = static_cast<std::size_t>(port - type->ports.data());
    const auto& spot = plate->second.spots[index];
    return layout::RouteEnd{spot.lead, spot.side};
}

catalogue::Signal signal_of(const Scene& scene, const model::Cable& cable) {
    if (const auto* type = scene.design.type_of(cable)) return type->signal;
    for (const auto* end : {&cable.a, &cable.b})
        if (const auto* port = port_of_end(scene, *end)) return port->signal;
    return catalogue::Signal::video;
}

SheetPoint plain_tip(const layout::RouteEnd& end) {
    const auto by = 2 * layout::measure::lane;
    return {end.side == layout::Side::right ? end.at.x + by : end.at.x - by, end.at.y};
}

/// Level and upright only: a line that a newer plate has left behind is mended by a corner, never drawn aslant.
std::vector<SheetPoint> squared(const std::vector<SheetPoint>& line) {
    std::vector<SheetPoint> points;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const auto& point = line[i];
        if (i > 0 && points.back().x != point.x && points.back().y != point.y) {
            const bool last = i + 1 == line.size();
            points.push_back(last ? SheetPoint{points.back().x, point.y} : SheetPoint{point.x, points.back().y});
        }
        points.push_back(point);
    }
    return points;
}

std::string port_words(const Scene& scene, const model::CableEnd& end) {
    const auto* device = scene.design.devices.find(end.port.device);
    if (!device) return "?";
    const auto* port = port_of_end(scene, end);
    return device->tag + " " + (port && !port->label.empty() ? port->label : end.port.port.text);
}

/// The sheet of lowest number on which a device stands, with its zone.
std::string sheet_words(const Scene& scene, model::DeviceId device) {
    const model::Sheet* found = nullptr;
    SheetPoint at;
    for (const auto& place : scene.design.places) {
        if (place.on.device != device) continue;
        const auto* sheet = scene.design.sheets.find(place.on.sheet);
        if (!sheet || (found && found->number <= sheet->number)) continue;
        found = sheet;
        at = place.at;
    }
    if (!found) return "not drawn";
    return "sheet " + std::to_string(found->number) + " " + zone_of(found->paper, at);
}

}  // namespace lines_detail

const catalogue::DeviceType* type_in(const Scene& scene, const model::Device& device) {
    return scene.design.type_of(device);
}

std::vector<catalogue::Role> roles_in(const Scene& scene, const model::Device& device) {
    const auto& wiring = scene.facts.get<graph::Wiring>();
    const auto index = wiring.device_index(device.id);
    return index ? wiring.roles(*index) : device.roles;
}

layout::Plate plate_in(const Scene& scene, const model::Place& place) {
    const auto* device = scene.design.devices.find(place.on.device);
    if (!device) return layout::plate_of(nullptr, {}, place);
    return layout::plate_of(type_in(scene, *device), roles_in(scene, *device), place);
}

Plates plates_of(const Scene& scene) {
    Plates plates;
    for (const auto& place : scene.design.places)
        if (place.on.sheet == scene.sheet) plates.emplace(place.on.device, plate_in(scene, place));
    return plates;
}

std::optional<DrawnLine> drawn_line(const Scene& scene, const Plates& plates, const model::CableLine& line) {
    using namespace lines_detail;
    const auto* cable = scene.design.cables.find(line.on.cable);
    if (!cable) return std::nullopt;
    const auto a = end_on(scene, plates, cable->a), b = end_on(scene, plates, cable->b);
    if (!a && !b) return std::nullopt;
    DrawnLine drawn{cable->id, signal_of(scene, *cable), line.bends, !a, !b};
    if (drawn.points.empty()) {
        if (a && b)
            drawn.points = layout::quick_route(*a, *b, {});
        else
            drawn.points = {plain_tip(a ? *a : *b)};
    }
    if (a) drawn.points.insert(drawn.points.begin(), a->at);
    if (b) drawn.points.push_back(b->at);
    drawn.points = squared(drawn.points);
    return drawn;
}

std::vector<DrawnLine> drawn_lines(const Scene& scene, const Plates& plates) {
    std::vector<DrawnLine> lines;
    for (const auto& cable : scene.design.cables) {
        const model::CableLine::Key key{scene.sheet, cable.id};
        const auto* stored = scene.design.cable_lines.find(key);
        auto line = drawn_line(scene, plates, stored ? *stored : model::CableLine::blank(key));
        if (line) lines.push_back(std::move(*line));
    }
    return lines;
}

FlagWords flag_words(const Scene& scene, model::CableId cable, bool end_a) {
    using namespace lines_detail;
    const auto* row = scene.design.cables.find(cable);
    const auto& end = end_a ? row->a : row->b;
    if (!end) return {"open end", row->tag};
    return {port_words(scene, *end), row->tag + ", " + sheet_words(scene, end->port.device)};
}

}  // namespace streamwright::deliver
