// Click selects, Shift-click adds or takes away, dragging moves: plates go with the pointer, their cables follow by
// quick patterns, and the release makes one edit.
#pragma once

#include "app/canvas/gesture.h"
#include "core/model/ids.h"

#include <map>
#include <set>

namespace streamwright::app {

class SelectTool final : public Gesture {
public:
    SelectTool(Viewport& viewport, const Pointer& start);
    void moved(const Pointer& pointer) override;
    void released(const Pointer& pointer) override;

private:
    void begin_drag();
    void preview(QPointF by);

    Viewport& viewport_;
    Pointer start_;
    bool was_selected_;
    bool dragging_ = false;
    std::set<Chosen> moving_;
    std::vector<model::CableId> cables_;
    QPointF by_;
};

/// Arrow keys: moves the selection by millimetres.
bool nudge_selection(Viewport& viewport, QPointF mm);

}  // namespace streamwright::app
