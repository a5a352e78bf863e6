// Makes a video wall of displays, or changes one; a wall is dissolved by Remove, which leaves its displays.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <cstddef>
#include <optional>
#include <vector>

namespace streamwright::model {

struct SetWall {
    Wall row;
    friend bool operator==(const SetWall&, const SetWall&) = default;
};

/// A wall without a name is called by the next free number.
base::Result<Delta> make(const Design& design, const SetWall& edit);

/// The wall that has the device as a tile; null if none.
const Wall* wall_of(const Design& design, DeviceId device);
/// Devices that show pictures and stand in no wall yet, of those given and in their order.
std::vector<DeviceId> tiles_among(const Design& design, const std::vector<DeviceId>& devices);
/// A wall of these displays, all in one row or as square as their number lets it be, in the room that they share. Where
/// they are drawn on the sheet says who stands where: from the top, and from the left.
Wall new_wall(const Design& design, WallId id, const std::vector<DeviceId>& displays, std::optional<SheetId> sheet);
/// The same wall with so many columns and rows; displays keep their column and row, and those without a place go.
Wall resized(Wall wall, int columns, int rows);
/// The wall without the tile: its place is empty; nothing if no display would be left.
std::optional<Wall> without_tile(Wall wall, DeviceId device);

}  // namespace streamwright::model
