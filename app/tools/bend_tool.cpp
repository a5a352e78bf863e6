#include "app/tools/bend_tool.h"

#include "app/canvas/viewport.h"
#include "core/layout/lines.h"
#include "core/model/edits/bend_cable.h"

#include <algorithm>

namespace streamwright::app {

namespace bend_tool_detail {
constexpr double drag_px = 4;
const auto stub = base::Length::from_count(5000);  // a lane: how far a jog stays off the lug
}  // namespace bend_tool_detail

std::vector<model::SheetPoint> with_stretch_at(const std::vector<model::SheetPoint>& points, int stretch, QPointF mm) {
    auto line = points;
    auto at = static_cast<std::size_t>(stretch);
    if (at + 1 >= line.size()) return line;
    const bool level = line[at].y == line[at + 1].y;
    const auto toward = [&](const model::SheetPoint& from, const model::SheetPoint& to) {
        auto point = from;
        auto& axis = level ? point.x : point.y;
        const auto goal = level ? to.x : to.y;
        const auto step = std::min(bend_tool_detail::stub, (goal < axis ? axis - goal : goal - axis) / 3);
        axis += goal < axis ? -step : step;
        return point;
    };
    if (at + 2 == line.size()) {  // the last stretch: keep its end by a jog
        const auto jog = toward(line[at + 1], line[at]);
        line.insert(line.end() - 1, {jog, jog});
    }
    if (at == 0) {
        const auto jog = toward(line[0], line[1]);
        line.insert(line.begin() + 1, {jog, jog});
        at = 2;
    }
    const auto to = from_mm(snapped(mm));
    for (const auto each : {at, at + 1}) (level ? line[each].y : line[each].x) = level ? to.y : to.x;
    return line;
}

BendTool::BendTool(Viewport& viewport, model::CableId cable, const Pointer& start)
    : viewport_(viewport), cable_(cable), start_(start) {}

void BendTool::moved(const Pointer& pointer) {
    const auto* cable = viewport_.scene().cable(cable_);
    const QPointF off = pointer.view - start_.view;
    if (!cable || (!dragging_ && std::max(std::abs(off.x()), std::abs(off.y())) < bend_tool_detail::drag_px)) return;
    dragging_ = true;
    points_ = with_stretch_at(cable->line.points, start_.hit.segment, pointer.mm);
    auto& overlay = viewport_.overlay();
    overlay.lines = {{points_, cable->line.signal, false}};
    if (overlay.hidden.insert(Chosen(cable_)).second) viewport_.refresh_scene();
    viewport_.refresh();
}

void BendTool::released(const Pointer&) {
    if (!dragging_) return;
    auto& document = viewport_.document();
    const auto* cable = viewport_.scene().cable(cable_);
    if (!cable || points_.size() < 2) return;
    const auto clean = layout::without_idle_points(points_);
    model::BendCable edit{model::CableLine{{viewport_.sheet(), cable_}}};
    // The ends belong to the lugs, or to the flags that the line leads to.
    const auto first = clean.begin() + (cable->line.flag_at_start ? 0 : 1);
    const auto last = clean.end() - (cable->line.flag_at_end ? 0 : 1);
    if (first < last) edit.line.bends.assign(first, last);
    edit.line.pinned = true;
    document.edit(edit, QObject::tr("Bend"));
}

}  // namespace streamwright::app
