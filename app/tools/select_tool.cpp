#include "app/tools/select_tool.h"

#include "app/canvas/viewport.h"
#include "app/tools/sheet_move.h"
#include "core/layout/cable_route.h"
#include "core/layout/lines.h"

#include <algorithm>

namespace streamwright::app {

namespace select_tool_detail {

constexpr double drag_px = 4;

std::optional<layout::RouteEnd> end_of(const SheetScene& scene, const std::optional<model::CableEnd>& end,
                                       const std::set<Chosen>& moving, model::SheetPoint by) {
    const auto* spot = end ? scene.spot(end->port) : nullptr;
    if (!spot) return std::nullopt;
    layout::RouteEnd made{spot->lead, spot->side};
    if (moving.contains(Chosen(end->port.device))) made.at = {made.at.x + by.x, made.at.y + by.y};
    return made;
}

std::vector<layout::Box> boxes_after(const SheetScene& scene, const std::set<Chosen>& moving, model::SheetPoint by) {
    std::vector<layout::Box> boxes;
    for (const auto& plate : scene.plates()) {
        auto box = layout::obstacle(plate.plate);
        if (moving.contains(Chosen(plate.device))) box.at = {box.at.x + by.x, box.at.y + by.y};
        boxes.push_back(box);
    }
    return boxes;
}

QString move_words(const std::set<Chosen>& moving) {
    return moving.size() == 1 ? QObject::tr("Move") : QObject::tr("Move %1 things").arg(moving.size());
}

}  // namespace select_tool_detail

SelectTool::SelectTool(Viewport& viewport, const Pointer& start)
    : viewport_(viewport), start_(start), was_selected_(viewport.selection().holds(*start.hit.subject)) {
    const bool adding = start.modifiers.testFlag(Qt::ShiftModifier);
    if (!was_selected_ && !adding) viewport_.selection().set(*start.hit.subject);
}

void SelectTool::begin_drag() {
    dragging_ = true;
    if (!viewport_.selection().holds(*start_.hit.subject)) viewport_.selection().toggle(*start_.hit.subject);
    const auto& design = viewport_.document().design();
    moving_ = moving_with(design, viewport_.sheet(), viewport_.selection().all());
    cables_ = cables_at(design, moving_);
    auto& overlay = viewport_.overlay();
    overlay.hidden = moving_;
    for (const auto id : cables_) overlay.hidden.insert(Chosen(id));
    for (const auto& frame : viewport_.scene().frames())
        if (moving_.contains(Chosen(frame.row.id))) overlay.ghosts.push_back(frame.fragment);
    for (const auto& plate : viewport_.scene().plates())
        if (moving_.contains(Chosen(plate.device))) overlay.ghosts.push_back(plate.fragment);
    for (const auto& note : viewport_.scene().notes())
        if (moving_.contains(Chosen(note.note))) overlay.ghosts.push_back(note.fragment);
    viewport_.refresh_scene();
}

void SelectTool::preview(QPointF by) {
    using namespace select_tool_detail;
    const auto& scene = viewport_.scene();
    const auto& design = viewport_.document().design();
    const auto shift = from_mm(by);
    const auto boxes = boxes_after(scene, moving_, shift);
    auto& overlay = viewport_.overlay();
    overlay.ghost_shift = by;
    overlay.lines.clear();
    for (const auto id : cables_) {
        const auto* cable = design.cables.find(id);
        const auto* drawn = scene.cable(id);
        const auto a = end_of(scene, cable->a, moving_, shift), b = end_of(scene, cable->b, moving_, shift);
        if (!a || !b || !drawn) continue;
        PreviewLine line{{a->at}, drawn->line.signal, false};
        const auto bends = layout::quick_route(*a, *b, boxes);
        line.points.insert(line.points.end(), bends.begin(), bends.end());
        line.points.push_back(b->at);
        overlay.lines.push_back(std::move(line));
    }
}

void SelectTool::moved(const Pointer& pointer) {
    const QPointF off = pointer.view - start_.view;
    if (!dragging_ && std::max(std::abs(off.x()), std::abs(off.y())) < select_tool_detail::drag_px) return;
    if (!dragging_) begin_drag();
    const QPointF by = snapped(pointer.mm - start_.mm);
    if (by == by_ && !viewport_.overlay().lines.empty()) return;
    by_ = by;
    preview(by);
    viewport_.tell(QObject::tr("Move by %1, %2 mm").arg(by.x()).arg(by.y()));
    viewport_.refresh();
}

void SelectTool::released(const Pointer&) {
    const auto& subject = *start_.hit.subject;
    if (!dragging_) {
        if (start_.modifiers.testFlag(Qt::ShiftModifier))
            viewport_.selection().toggle(subject);
        else
            viewport_.selection().set(subject);
        return;
    }
    viewport_.tell({});
    if (by_.isNull()) return;
    auto& document = viewport_.document();
    document.commit(move_on_sheet(document.design(), viewport_.sheet(), moving_, from_mm(by_)),
                    select_tool_detail::move_words(moving_));
}

bool nudge_selection(Viewport& viewport, QPointF mm) {
    auto& document = viewport.document();
    const auto moving = moving_with(document.design(), viewport.sheet(), viewport.selection().all());
    if (moving.empty()) return false;
    return document.commit(move_on_sheet(document.design(), viewport.sheet(), moving, from_mm(mm)),
                           select_tool_detail::move_words(moving));
}

}  // namespace streamwright::app
