// A room of the venue.
#pragma once

#include "core/base/units.h"
#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"
#include "core/standards/viewing.h"

#include <optional>
#include <string>

namespace streamwright::model {

struct Room {
    RoomId id;
    std::string number;
    std::string name;
    std::string floor;
    std::optional<base::Temperature> temperature;  // of the cable ways at this room, hottest planned
    // For whom pictures in it must be large enough: who sits farthest from them, what they do with them, and the
    // smallest thing they must make out as a share of the height of the image.
    std::optional<base::Length> farthest_viewer;
    std::optional<standards::ViewingCategory> viewing;
    std::optional<standards::ElementHeight> element_height;
    std::string note;
    UnknownKeys unknown;

    using Key = RoomId;
    static Room blank(Key key) { return Room{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("number", s.number);
        v("name", s.name);
        v("floor", s.floor);
        v("temperature_mdegc", s.temperature);
        v("farthest_viewer_um", s.farthest_viewer);
        v("viewing", s.viewing);
        v("element_height_mpercent", s.element_height);
        v("note", s.note);
    }
    friend bool operator==(const Room&, const Room&) = default;
};

}  // namespace streamwright::model
