// Room frames, notes and badges.
#include "core/deliver/drawing/schematic_fragments.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/drawing/sheet_lines.h"

#include <algorithm>

namespace streamwright::deliver {

namespace venue_drawing {

using base::Length;
using layout::Weight;
namespace measure = layout::measure;

constexpr Length tab_height = 6 * measure::module, head_em = units(15);

int devices_in(const Scene& scene, const model::RoomFrame& frame) {
    const Box box{frame.at, frame.width, frame.height};
    int count = 0;
    for (const auto& place : scene.design.places) {
        if (place.on.sheet != scene.sheet || !box.holds(place.at)) continue;
        const auto* device = scene.design.devices.find(place.on.device);
        count += device && device->room == frame.room;
    }
    return count;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines(1);
    for (const char c : text) {
        if (c == '\n')
            lines.emplace_back();
        else
            lines.back() += c;
    }
    return lines;
}

struct BadgeLook {
    Role ground, figure;
};

BadgeLook look_of(analysis::Severity severity) {
    switch (severity) {
        case analysis::Severity::error:
            return {Role::badge_error, Role::badge_text_error};
        case analysis::Severity::warning:
            return {Role::badge_warning, Role::badge_text_warning};
        default:
            return {Role::badge_advice, Role::badge_text_advice};
    }
}

/// Diamond, triangle or circle, told apart without colour.
Path badge_shape(SheetPoint c, analysis::Severity severity) {
    const auto half = units(10);
    Path path;
    path.closed = path.filled = true;
    if (severity == analysis::Severity::error)
        path.points = {moved(c, {}, -half), moved(c, half, {}), moved(c, {}, half), moved(c, -half, {})};
    else if (severity == analysis::Severity::warning)
        path.points = {moved(c, {}, -half), moved(c, half, units(8)), moved(c, -half, units(8))};
    else
        path = circle(c, units(8), Role::badge_advice, true);
    path.role = look_of(severity).ground;
    return path;
}

std::optional<SheetPoint> corner_of_device(const Scene& scene, const std::string& id) {
    const auto device = model::DeviceId::parse(id);
    const auto* place = device ? scene.design.places.find({scene.sheet, *device}) : nullptr;
    if (!place) return std::nullopt;
    const auto body = plate_in(scene, *place).body;
    return moved(body.at, body.width - units(4), units(2));
}

std::optional<SheetPoint> spot_on_cable(const Scene& scene, const std::string& id,
                                        const std::vector<DrawnLine>& lines) {
    const auto cable = model::CableId::parse(id);
    for (const DrawnLine& line : lines)
        if (line.cable == cable) return spot_beside_tag(scene, line, lines);
    return std::nullopt;
}

}  // namespace venue_drawing

Fragment room_fragment(const Scene& scene, const model::RoomFrame& frame) {
    using namespace venue_drawing;
    const auto* room = scene.design.rooms.find(frame.room);
    const std::string number = room ? room->number : "?";
    const auto name = !frame.title.empty() ? frame.title : room ? room->name : std::string{};
    const int count = devices_in(scene, frame);
    const auto words = std::to_string(count) + (count == 1 ? " device" : " devices");
    const auto tab_width = text_width(number, measure::label_em, Weight::bold) + 4 * measure::module;
    const auto base_line = tab_height / 2 + head_em * 3 / 8;
    const auto right = frame.width - 2 * measure::module;
    const auto for_name = right - tab_width - 4 * measure::module - text_width(words, measure::note_em, Weight::normal);
    Fragment fragment;
    fragment.subject = "frame:" + frame.id.text();
    auto& shapes = fragment.shapes;
    shapes.emplace_back(filled_box({frame.at, frame.width, frame.height}, Role::room));
    shapes.emplace_back(filled_box({frame.at, tab_width, tab_height}, Role::room_tab));
    shapes.emplace_back(bold_line(moved(frame.at, tab_width / 2, tab_height / 2 + measure::label_em * 3 / 8), number,
                                  measure::label_em, Role::room_tab_text, Anchor::middle));
    shapes.emplace_back(bold_line(moved(frame.at, tab_width + 2 * measure::module, base_line),
                                  layout::elided(name, std::max(for_name, Length{}), head_em, Weight::bold), head_em));
    shapes.emplace_back(
        text_line(moved(frame.at, right, base_line), words, measure::note_em, Role::text_muted, Anchor::right));
    fragment.bounds = bounds_of(shapes);
    return fragment;
}

Fragment note_fragment(const Scene&, const model::Note& note) {
    using namespace venue_drawing;
    Fragment fragment;
    fragment.subject = "note:" + note.id.text();
    auto at = moved(note.at, {}, measure::label_em);
    for (auto& line : lines_of(note.text)) {
        fragment.shapes.emplace_back(text_line(at, std::move(line), measure::label_em));
        at.y += 4500 * base::Length::from_count(1);
    }
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

std::optional<SheetPoint> badge_spot(const Scene& scene, const std::string& subject,
                                     const std::vector<DrawnLine>& lines) {
    using namespace venue_drawing;
    const auto colon = subject.find(':');
    if (colon == std::string::npos) return std::nullopt;
    const auto kind = subject.substr(0, colon), id = subject.substr(colon + 1);
    if (kind == "device") return corner_of_device(scene, id);
    if (kind == "port") return corner_of_device(scene, id.substr(0, id.find('/')));
    if (kind == "cable") return spot_on_cable(scene, id, lines);
    return std::nullopt;
}

Fragment badge_fragment(const Scene& scene, const std::string& subject, analysis::Severity gravest, int count) {
    using namespace venue_drawing;
    Fragment fragment;
    fragment.subject = subject;
    if (count <= 0) return fragment;
    const bool on_cable = subject.starts_with("cable:");
    const auto at =
        badge_spot(scene, subject, on_cable ? drawn_lines(scene, plates_of(scene)) : std::vector<DrawnLine>{});
    if (!at) return fragment;
    const auto drop = gravest == analysis::Severity::warning ? units(6) : units(4);
    fragment.shapes.emplace_back(badge_shape(*at, gravest));
    fragment.shapes.emplace_back(
        bold_line(moved(*at, {}, drop), std::to_string(count), units(11), look_of(gravest).figure, Anchor::middle));
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

}  // namespace streamwright::deliver
