// Placing a type: dragged in from the catalogue, or by Enter on its row. The plate shows where it will stand.
#pragma once

#include "app/canvas/gesture.h"
#include "app/document/library.h"

namespace streamwright::app {

class PlaceTool final : public DropTarget {
public:
    PlaceTool(Viewport& viewport, std::shared_ptr<const Library> library);
    bool entered(const QString& type_key) override;
    void moved(QPointF mm) override;
    void dropped(QPointF mm) override;
    void left() override;

private:
    Viewport& viewport_;
    std::shared_ptr<const Library> library_;
    std::shared_ptr<const catalogue::DeviceType> type_;
};

/// Places a device of the type with its middle there, in the room whose frame holds it, and selects it. Where plates
/// already stand, the next free place below is taken if `make_way`.
bool place_type(Viewport& viewport, const std::shared_ptr<const catalogue::DeviceType>& type, QPointF mm,
                bool make_way);

}  // namespace streamwright::app
