// Drags a stretch of a selected cable; what was moved by hand is pinned and left alone by automatic routing.
#pragma once

#include "app/canvas/gesture.h"
#include "core/model/rows/sheet.h"

#include <vector>

namespace streamwright::app {

class BendTool final : public Gesture {
public:
    BendTool(Viewport& viewport, model::CableId cable, const Pointer& start);
    void moved(const Pointer& pointer) override;
    void released(const Pointer& pointer) override;

private:
    Viewport& viewport_;
    model::CableId cable_;
    Pointer start_;
    bool dragging_ = false;
    std::vector<model::SheetPoint> points_;  // ends included, as dragged
};

/// The line with the stretch moved across its own way to `mm`; end stretches get a jog, so that the ends stay.
std::vector<model::SheetPoint> with_stretch_at(const std::vector<model::SheetPoint>& points, int stretch, QPointF mm);

}  // namespace streamwright::app
