// Which gesture a press on the canvas starts, by tool and by what is under the pointer.
#pragma once

#include "app/canvas/gesture.h"
#include "app/document/library.h"
#include "app/tools/cable_choice.h"

namespace streamwright::app {

enum class Tool { select, cable };

/// The parts that gestures share for as long as a view lives.
struct ToolBox {
    Tool tool = Tool::select;
    std::shared_ptr<const Library> library;
    CableChoice cables;
};

std::unique_ptr<Gesture> choose_gesture(ToolBox& box, Viewport& viewport, const Pointer& pointer);

}  // namespace streamwright::app
