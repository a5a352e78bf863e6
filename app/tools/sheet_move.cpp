#include "app/tools/sheet_move.h"

#include "core/layout/cable_route.h"

#include <algorithm>
#include <map>

namespace streamwright::app {

namespace sheet_move_detail {

model::SheetPoint shifted(model::SheetPoint point, model::SheetPoint by) { return {point.x + by.x, point.y + by.y}; }

model::MoveOnSheet shifted_rows(const model::Design& design, model::SheetId sheet, const std::set<Chosen>& moving,
                                model::SheetPoint by) {
    model::MoveOnSheet edit;
    for (const auto& subject : moving) {
        if (const auto* device = std::get_if<model::DeviceId>(&subject)) {
            if (const auto* place = design.places.find({sheet, *device})) {
                edit.places.push_back(*place);
                edit.places.back().at = shifted(place->at, by);
            }
        } else if (const auto* frame = std::get_if<model::FrameId>(&subject)) {
            if (const auto* row = design.room_frames.find(*frame)) {
                edit.frames.push_back(*row);
                edit.frames.back().at = shifted(row->at, by);
            }
        } else if (const auto* note = std::get_if<model::NoteId>(&subject)) {
            if (const auto* row = design.notes.find(*note)) {
                edit.notes.push_back(*row);
                edit.notes.back().at = shifted(row->at, by);
            }
        }
    }
    return edit;
}

/// A pinned line goes along where both its ends move alike; else its outermost bends follow their ends.
std::optional<model::CableLine> pinned_line(const model::CableLine& line, model::SheetPoint a_by,
                                            model::SheetPoint b_by) {
    if (!line.pinned || line.bends.empty()) return std::nullopt;
    auto moved = line;
    if (a_by == b_by) {
        for (auto& bend : moved.bends) bend = shifted(bend, a_by);
    } else {
        moved.bends.front().y += a_by.y;
        moved.bends.back().y += b_by.y;
    }
    return moved;
}

/// How far the edit moves each plate that stands on the sheet already.
std::map<model::DeviceId, model::SheetPoint> shifts(const model::Design& design, const model::MoveOnSheet& edit) {
    std::map<model::DeviceId, model::SheetPoint> by;
    for (const auto& place : edit.places)
        if (const auto* held = design.places.find(place.on))
            by[place.on.device] = {place.at.x - held->at.x, place.at.y - held->at.y};
    return by;
}

/// The edit with the new lines of the cables it touches.
base::Result<model::Delta> with_lines(const model::Design& design, model::SheetId sheet, model::MoveOnSheet edit) {
    const auto plain = model::make(design, edit);
    if (!plain) return plain;
    auto after = design;
    model::apply(after, *plain);
    std::set<model::DeviceId> moving;
    for (const auto& place : edit.places) moving.insert(place.on.device);
    const auto cables = layout::cables_at(design, moving);
    edit.lines = layout::reroute(after, sheet, cables);
    const auto by = shifts(design, edit);
    const auto end_by = [&](const std::optional<model::CableEnd>& end) {
        const auto found = end ? by.find(end->port.device) : by.end();
        return found == by.end() ? model::SheetPoint{} : found->second;
    };
    for (const auto id : cables) {
        const auto* line = design.cable_lines.find({sheet, id});
        const auto* cable = design.cables.find(id);
        if (!line || !cable) continue;
        if (auto kept = pinned_line(*line, end_by(cable->a), end_by(cable->b))) edit.lines.push_back(std::move(*kept));
    }
    return model::make(design, edit);
}

}  // namespace sheet_move_detail

std::set<Chosen> moving_with(const model::Design& design, model::SheetId sheet, const std::set<Chosen>& chosen) {
    auto moving = chosen;
    for (const auto& subject : chosen) {
        const auto* id = std::get_if<model::FrameId>(&subject);
        const auto* frame = id ? design.room_frames.find(*id) : nullptr;
        if (!frame) continue;
        const layout::Box box{frame->at, frame->width, frame->height};
        for (const auto& place : design.places)
            if (place.on.sheet == sheet && box.holds(place.at)) moving.insert(place.on.device);
        for (const auto& note : design.notes)
            if (note.sheet == sheet && box.holds(note.at)) moving.insert(note.id);
    }
    std::erase_if(moving, [](const Chosen& subject) {
        return std::holds_alternative<model::CableId>(subject) || std::holds_alternative<model::PortRef>(subject) ||
               std::holds_alternative<model::StreamId>(subject);
    });
    return moving;
}

std::vector<model::CableId> cables_at(const model::Design& design, const std::set<Chosen>& moving) {
    std::set<model::DeviceId> devices;
    for (const auto& subject : moving)
        if (const auto* device = std::get_if<model::DeviceId>(&subject)) devices.insert(*device);
    return layout::cables_at(design, devices);
}

base::Result<model::Delta> move_on_sheet(const model::Design& design, model::SheetId sheet,
                                         const std::set<Chosen>& moving, model::SheetPoint by) {
    using namespace sheet_move_detail;
    return with_lines(design, sheet, shifted_rows(design, sheet, moving, by));
}

base::Result<model::Delta> move_plates(const model::Design& design, model::SheetId sheet,
                                       std::vector<model::Place> places) {
    return sheet_move_detail::with_lines(design, sheet, {std::move(places), {}, {}, {}});
}

}  // namespace streamwright::app
