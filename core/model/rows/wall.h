// A video wall: displays side by side that show one picture, or one each. Its tiles are devices of the design; where
// they are drawn is their own affair.
#pragma once

#include "core/base/units.h"
#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::model {

struct Wall {
    WallId id;
    std::string name;
    std::optional<RoomId> room;
    int columns = 2, rows = 2;
    // Between two lit images, both bezels together; none between cabinets that meet.
    base::Length gap_across, gap_down;
    std::vector<std::optional<DeviceId>> tiles;  // row by row from the left top, as the audience sees them
    std::string note;
    UnknownKeys unknown;

    using Key = WallId;
    static Wall blank(Key key) { return Wall{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("name", s.name);
        v("room", s.room);
        v("columns", s.columns);
        v("rows", s.rows);
        v("gap_across_um", s.gap_across);
        v("gap_down_um", s.gap_down);
        v("tiles", s.tiles);
        v("note", s.note);
    }
    friend bool operator==(const Wall&, const Wall&) = default;
};

inline constexpr int most_wall_side = 64;  // tiles across or down

}  // namespace streamwright::model
