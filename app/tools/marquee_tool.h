// Selects by a rectangle drawn on the empty canvas; a mere click clears the selection.
#pragma once

#include "app/canvas/gesture.h"

#include <set>

namespace streamwright::app {

class MarqueeTool final : public Gesture {
public:
    MarqueeTool(Viewport& viewport, const Pointer& start);
    void moved(const Pointer& pointer) override;
    void released(const Pointer& pointer) override;
    void cancelled() override;

private:
    Viewport& viewport_;
    QPointF start_;
    bool adding_;
    std::set<Chosen> before_;
};

}  // namespace streamwright::app
