// The plate of a device as primitives: ground, title row, lugs, labels, heavy edges, fact line.
#include "core/deliver/drawing/fact_line.h"
#include "core/deliver/drawing/role_mark.h"
#include "core/deliver/drawing/schematic_fragments.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/drawing/sheet_lines.h"

#include <algorithm>

namespace streamwright::deliver {

namespace plate_drawing {

using base::Length;
using catalogue::Way;
using layout::Plate;
using layout::PortSpot;
using layout::Side;
using layout::Weight;
namespace measure = layout::measure;

constexpr Length corner = units(3);

/// The title row's tint, its upper corners rounded as the plate's are.
Path title_ground(const Plate& plate, Length height) {
    const auto& box = plate.body;
    if (plate.folded) return filled_box({box.at, box.width, height}, Role::plate_title, corner);
    const auto near = corner / 3;
    Path path;
    path.closed = path.filled = true;
    path.role = Role::plate_title;
    path.points = {moved(box.at, {}, height),
                   moved(box.at, {}, corner),
                   moved(box.at, near, near),
                   moved(box.at, corner, {}),
                   moved(box.at, box.width - corner, {}),
                   moved(box.at, box.width - near, near),
                   moved(box.at, box.width, corner),
                   moved(box.at, box.width, height)};
    return path;
}

/// The lug's outline: pointed toward the flow, square where it goes both ways.
Path lug_shape(const PortSpot& spot, Way way) {
    const auto& box = spot.lug;
    Path path;
    path.closed = true;
    const bool arrow = way == Way::in || way == Way::out;
    if (!arrow) {
        path = outline(box, Role::lug_free);
        return path;
    }
    const bool rightward = (spot.side == Side::left) == (way == Way::in);
    const auto point = units(5), width = box.width, height = box.height;
    if (rightward)
        path.points = {box.at, moved(box.at, width - point, {}), moved(box.at, width, height / 2),
                       moved(box.at, width - point, height), moved(box.at, {}, height)};
    else
        path.points = {moved(box.at, width, {}), moved(box.at, point, {}), moved(box.at, {}, height / 2),
                       moved(box.at, point, height), moved(box.at, width, height)};
    return path;
}

void draw_lug(std::vector<Shape>& shapes, const PortSpot& spot, const catalogue::PortType& port, bool cabled,
              bool folded) {
    auto path = folded ? outline(spot.lug, Role::lug_free) : lug_shape(spot, port.way);
    path.signal = port.signal;
    path.filled = true;
    path.role = cabled ? Role::lug_cabled : Role::lug_free;
    shapes.emplace_back(path);
    if (folded) return;
    const bool arrow = port.way == Way::in || port.way == Way::out;
    const bool rightward = (spot.side == Side::left) == (port.way == Way::in);
    const auto shift = !arrow ? Length{} : rightward ? Length{} - units(2) + units(1) / 2 : units(2) - units(1) / 2;
    const SheetPoint at{spot.lug.at.x + spot.lug.width / 2 + shift, spot.lug.at.y + spot.lug.height / 2 + units(4)};
    auto letter = bold_line(at, std::string(1, signal_letter(port.signal)), units(11),
                            cabled ? Role::lug_letter_cabled : Role::lug_letter_free, Anchor::middle);
    letter.signal = port.signal;
    shapes.emplace_back(letter);
}

void draw_label(std::vector<Shape>& shapes, const PortSpot& spot, const catalogue::PortType& port, const Box& body) {
    const auto inset = measure::inset + units(1);
    const auto& words = port.label.empty() ? port.key.text : port.label;
    const auto room = body.width - 2 * inset;
    const auto label = layout::elided(words, room, measure::label_em, Weight::normal);
    const bool left = spot.side == Side::left;
    const auto x = left ? body.at.x + inset : body.at.x + body.width - inset;
    shapes.emplace_back(
        text_line({x, spot.label_baseline}, label, measure::label_em, Role::text, left ? Anchor::left : Anchor::right));
}

std::optional<catalogue::Signal> network_signal(const Plate& plate, const catalogue::DeviceType& type, Side side) {
    for (const auto& spot : plate.spots) {
        const auto& port = type.ports[static_cast<std::size_t>(spot.port)];
        if (spot.side == side && is_network(port.signal)) return port.signal;
    }
    return std::nullopt;
}

void draw_heavy_edges(std::vector<Shape>& shapes, const Plate& plate, const catalogue::DeviceType& type) {
    const auto width = units(4), top = plate.folded ? Length{} : measure::title_row;
    const auto height = plate.body.height - top - (plate.folded ? Length{} : units(2));
    for (const Side side : {Side::left, Side::right}) {
        if (!(side == Side::left ? plate.heavy_left : plate.heavy_right)) continue;
        const auto x = side == Side::left ? plate.body.at.x : plate.body.at.x + plate.body.width - width;
        auto edge = filled_box({{x, plate.body.at.y + top}, width, height}, Role::heavy_edge);
        edge.signal = network_signal(plate, type, side);
        shapes.emplace_back(edge);
    }
}

void draw_title(std::vector<Shape>& shapes, const Scene& scene, const model::Device* device, const Plate& plate) {
    const auto height = plate.folded ? measure::folded_height : measure::title_row;
    const auto& body = plate.body;
    shapes.emplace_back(filled_box(body, Role::plate, corner));
    shapes.emplace_back(title_ground(plate, height));
    if (!plate.folded)
        shapes.emplace_back(stroke({moved(body.at, {}, height), moved(body.at, body.width, height)}, Role::plate_rule));
    shapes.emplace_back(outline(body, Role::plate, corner));
    const auto* type = device ? type_in(scene, *device) : nullptr;
    const auto roles = device ? roles_in(scene, *device) : std::vector<catalogue::Role>{};
    append(shapes, role_mark(type, roles, moved(body.at, measure::inset, (height - measure::mark_size) / 2)));
    const auto left = measure::inset + measure::mark_size + 2 * measure::module;
    const auto tag =
        layout::elided(device ? device->tag : "?", body.width - left - measure::module, measure::tag_em, Weight::bold);
    shapes.emplace_back(bold_line(moved(body.at, left, height / 2 + measure::tag_em * 3 / 8), tag, measure::tag_em));
}

void draw_rows(std::vector<Shape>& shapes, const Scene& scene, const model::Device& device, const Plate& plate,
               const catalogue::DeviceType& type) {
    const auto& wiring = scene.facts.get<graph::Wiring>();
    const auto index = wiring.device_index(device.id);
    const bool known = index && wiring.devices[static_cast<std::size_t>(*index)].type &&
                       wiring.devices[static_cast<std::size_t>(*index)].type->ports.size() == type.ports.size();
    for (const auto& spot : plate.spots) {
        const auto& port = type.ports[static_cast<std::size_t>(spot.port)];
        const bool cabled = known && !wiring.cables_at({*index, spot.port}).empty();
        draw_lug(shapes, spot, port, cabled, plate.folded);
        if (!plate.folded) draw_label(shapes, spot, port, plate.body);
    }
}

void draw_words(std::vector<Shape>& shapes, const Scene& scene, const model::Device& device, const Plate& plate,
                const catalogue::DeviceType& type) {
    const auto& body = plate.body;
    const auto room = body.width - 2 * measure::inset;
    shapes.emplace_back(text_line(moved(body.at, measure::inset, measure::title_row + units(15)),
                                  layout::elided(type.name, room, measure::label_em, Weight::normal), measure::label_em,
                                  Role::text_muted));
    if (!plate.fact_line) return;
    const auto rule = body.height - units(41) / 2;
    shapes.emplace_back(
        stroke({moved(body.at, units(4), rule), moved(body.at, body.width - units(4), rule)}, Role::plate_rule));
    shapes.emplace_back(text_line(moved(body.at, measure::inset, body.height - units(11) / 2),
                                  layout::elided(fact_line(scene, device), room, measure::note_em, Weight::normal),
                                  measure::note_em, Role::text_muted));
}

}  // namespace plate_drawing

Fragment device_fragment(const Scene& scene, const model::Place& place) {
    using namespace plate_drawing;
    const auto* device = scene.design.devices.find(place.on.device);
    const auto plate = plate_in(scene, place);
    Fragment fragment;
    fragment.subject = "device:" + place.on.device.text();
    draw_title(fragment.shapes, scene, device, plate);
    if (const auto* type = device ? type_in(scene, *device) : nullptr) {
        draw_heavy_edges(fragment.shapes, plate, *type);
        draw_rows(fragment.shapes, scene, *device, plate, *type);
        if (!plate.folded) draw_words(fragment.shapes, scene, *device, plate, *type);
    }
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

}  // namespace streamwright::deliver
