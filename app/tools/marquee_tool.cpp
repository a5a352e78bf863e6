#include "app/tools/marquee_tool.h"

#include "app/canvas/viewport.h"

namespace streamwright::app {

MarqueeTool::MarqueeTool(Viewport& viewport, const Pointer& start)
    : viewport_(viewport),
      start_(start.mm),
      adding_(start.modifiers.testFlag(Qt::ShiftModifier)),
      before_(viewport.selection().all()) {}

void MarqueeTool::moved(const Pointer& pointer) {
    const QRectF caught = QRectF(start_, pointer.mm).normalized();
    viewport_.overlay().marquee = caught;
    auto chosen = caught_by(viewport_.scene(), caught);
    if (adding_) chosen.insert(before_.begin(), before_.end());
    viewport_.selection().set(std::move(chosen));
    viewport_.refresh();
}

void MarqueeTool::released(const Pointer&) {
    if (!viewport_.overlay().marquee && !adding_) viewport_.selection().clear();
}

void MarqueeTool::cancelled() { viewport_.selection().set(before_); }

}  // namespace streamwright::app
