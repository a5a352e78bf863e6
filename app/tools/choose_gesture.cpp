#include "app/tools/choose_gesture.h"

#include "app/canvas/viewport.h"
#include "app/tools/bend_tool.h"
#include "app/tools/cable_tool.h"
#include "app/tools/marquee_tool.h"
#include "app/tools/resize_tool.h"
#include "app/tools/select_tool.h"

namespace streamwright::app {

namespace choose_gesture_detail {

/// A handle at the end of the one selected cable: dragging it reconnects.
std::optional<GrabbedEnd> grabbed_end(Viewport& viewport, const Pointer& pointer) {
    const auto only = viewport.selection().only();
    const auto* id = only ? std::get_if<model::CableId>(&*only) : nullptr;
    const auto* cable = id ? viewport.scene().cable(*id) : nullptr;
    if (!cable || cable->line.points.size() < 2) return std::nullopt;
    const auto near = [&](const model::SheetPoint& point) {
        const QPointF off = viewport.view().to_view(to_mm(point)) - pointer.view;
        return std::abs(off.x()) <= 6 && std::abs(off.y()) <= 6;
    };
    if (!cable->line.flag_at_start && near(cable->line.points.front())) return GrabbedEnd{*id, model::WhichEnd::a};
    if (!cable->line.flag_at_end && near(cable->line.points.back())) return GrabbedEnd{*id, model::WhichEnd::b};
    return std::nullopt;
}

}  // namespace choose_gesture_detail

std::unique_ptr<Gesture> choose_gesture(ToolBox& box, Viewport& viewport, const Pointer& pointer) {
    if (const auto end = choose_gesture_detail::grabbed_end(viewport, pointer))
        return reconnect_gesture(box, viewport, *end);
    if (auto resize = resize_gesture(viewport, pointer)) return resize;
    if (const auto port = pointer.hit.port(); port && pointer.hit.part == Hit::Part::port) {
        // A lug is where cables start, with either tool; Shift keeps selecting.
        if (!pointer.modifiers.testFlag(Qt::ShiftModifier)) return pull_gesture(box, viewport, *port, pointer.view);
    }
    const auto& subject = pointer.hit.subject;
    if (pointer.hit.part == Hit::Part::cable && viewport.selection().only() == subject && box.tool == Tool::select)
        return std::make_unique<BendTool>(viewport, std::get<model::CableId>(*subject), pointer);
    if (subject) return std::make_unique<SelectTool>(viewport, pointer);
    return std::make_unique<MarqueeTool>(viewport, pointer);
}

}  // namespace streamwright::app
