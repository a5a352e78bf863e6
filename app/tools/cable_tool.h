// Pulling a lead from a lug to another, or dragging the end of a cable elsewhere. Every port says whether it would do,
// and why not; the release makes one edit, bends included. With the keyboard, Tab walks the ports that fit.
#pragma once

#include "app/canvas/gesture.h"
#include "app/tools/choose_gesture.h"
#include "core/model/edits/reconnect.h"

namespace streamwright::app {

struct GrabbedEnd {
    model::CableId cable;
    model::WhichEnd end = model::WhichEnd::a;
};

/// From a free lug a fresh lead; from a cabled one the cable's end comes off.
std::unique_ptr<Gesture> pull_gesture(ToolBox& box, Viewport& viewport, const model::PortRef& port, QPointF at);
std::unique_ptr<Gesture> reconnect_gesture(ToolBox& box, Viewport& viewport, const GrabbedEnd& end);
/// By keyboard: Tab and Shift+Tab choose among the ports that fit, Enter connects, Escape drops.
std::unique_ptr<Gesture> keyboard_pull(ToolBox& box, Viewport& viewport, const model::PortRef& port);

}  // namespace streamwright::app
