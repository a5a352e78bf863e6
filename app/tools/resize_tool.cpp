#include "app/tools/resize_tool.h"

#include "app/canvas/viewport.h"
#include "core/model/edits/move_on_sheet.h"

#include <algorithm>
#include <cmath>

namespace streamwright::app {

namespace resize_tool_detail {
constexpr double catch_px = 6, least_mm = 20;
}

ResizeTool::ResizeTool(Viewport& viewport, model::RoomFrame frame, bool across, bool down)
    : viewport_(viewport), frame_(std::move(frame)), across_(across), down_(down) {}

void ResizeTool::moved(const Pointer& pointer) {
    dragged_ = true;
    const QPointF size = snapped(pointer.mm - to_mm(frame_.at));
    if (across_) frame_.width = from_mm(std::max(size.x(), resize_tool_detail::least_mm));
    if (down_) frame_.height = from_mm(std::max(size.y(), resize_tool_detail::least_mm));
    viewport_.overlay().marquee = QRectF(to_mm(frame_.at), QSizeF(to_mm(frame_.width), to_mm(frame_.height)));
    viewport_.tell(QObject::tr("%1 x %2 mm").arg(to_mm(frame_.width)).arg(to_mm(frame_.height)));
    viewport_.refresh();
}

void ResizeTool::released(const Pointer&) {
    viewport_.tell({});
    if (dragged_) viewport_.document().edit(model::MoveOnSheet{{}, {frame_}, {}, {}}, QObject::tr("Resize the frame"));
}

std::unique_ptr<Gesture> resize_gesture(Viewport& viewport, const Pointer& pointer) {
    const auto only = viewport.selection().only();
    const auto* id = only ? std::get_if<model::FrameId>(&*only) : nullptr;
    const auto* frame = id ? viewport.document().design().room_frames.find(*id) : nullptr;
    const auto box = only ? viewport.scene().bounds(*only) : std::nullopt;
    if (!frame || !box) return nullptr;
    const QRectF shown = viewport.view().to_view(*box);
    const double near = resize_tool_detail::catch_px;
    if (!shown.adjusted(-near, -near, near, near).contains(pointer.view)) return nullptr;
    const bool across = std::abs(pointer.view.x() - shown.right()) <= near;
    const bool down = std::abs(pointer.view.y() - shown.bottom()) <= near;
    if (!across && !down) return nullptr;
    return std::make_unique<ResizeTool>(viewport, *frame, across, down);
}

}  // namespace streamwright::app
