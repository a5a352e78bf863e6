#include "app/tools/sheet_move.h"

#include "core/layout/cable_route.h"

#include <algorithm>

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

/// A pinned line goes along where both its ends move; where one moves, its outermost bend follows that end.
std::optional<model::CableLine> pinned_line(const model::CableLine& line, bool a_moves, bool b_moves,
                                            model::SheetPoint by) {
    if (!line.pinned || line.bends.empty()) return std::nullopt;
    auto moved = line;
    if (a_moves && b_moves) {
        for (auto& bend : moved.bends) bend = shifted(bend, by);
    } else if (a_moves) {
        moved.bends.front().y += by.y;
    } else {
        moved.bends.back().y += by.y;
    }
    return moved;
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
    std::vector<model::CableId> found;
    const auto on_moving = [&](const std::optional<model::CableEnd>& end) {
        return end && moving.contains(Chosen(end->port.device));
    };
    for (const auto& cable : design.cables)
        if (on_moving(cable.a) || on_moving(cable.b)) found.push_back(cable.id);
    return found;
}

base::Result<model::Delta> move_on_sheet(const model::Design& design, model::SheetId sheet,
                                         const std::set<Chosen>& moving, model::SheetPoint by) {
    using namespace sheet_move_detail;
    auto edit = shifted_rows(design, sheet, moving, by);
    const auto plain = model::make(design, edit);
    if (!plain) return plain;
    auto after = design;
    model::apply(after, *plain);
    const auto cables = cables_at(design, moving);
    edit.lines = layout::reroute(after, sheet, cables);
    for (const auto id : cables) {
        const auto* line = design.cable_lines.find({sheet, id});
        const auto* cable = design.cables.find(id);
        if (!line) continue;
        const bool a = cable->a && moving.contains(Chosen(cable->a->port.device));
        const bool b = cable->b && moving.contains(Chosen(cable->b->port.device));
        if (auto kept = pinned_line(*line, a, b, by)) edit.lines.push_back(std::move(*kept));
    }
    return model::make(design, edit);
}

}  // namespace streamwright::app
