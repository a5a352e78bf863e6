// Drags the right and lower edge of a selected room frame.
#pragma once

#include "app/canvas/gesture.h"
#include "core/model/rows/sheet.h"

namespace streamwright::app {

class ResizeTool final : public Gesture {
public:
    ResizeTool(Viewport& viewport, model::RoomFrame frame, bool across, bool down);
    void moved(const Pointer& pointer) override;
    void released(const Pointer& pointer) override;

private:
    Viewport& viewport_;
    model::RoomFrame frame_;
    bool across_, down_;
    bool dragged_ = false;
};

/// The tool where the press is at such an edge of the one selected frame; else nothing.
std::unique_ptr<Gesture> resize_gesture(Viewport& viewport, const Pointer& pointer);

}  // namespace streamwright::app
