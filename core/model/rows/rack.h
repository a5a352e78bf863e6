// A rack of the venue; the devices in it name it.
#pragma once

#include "core/base/units.h"
#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>

namespace streamwright::model {

struct Rack {
    RackId id;
    std::string name;
    TypeKey type;  // a device type of kind rack
    std::optional<RoomId> room;
    int units = 42;
    base::Length depth;
    UnknownKeys unknown;

    using Key = RackId;
    static Rack blank(Key key) { return Rack{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("name", s.name);
        v("type", s.type);
        v("room", s.room);
        v("units", s.units);
        v("depth_um", s.depth);
    }
    friend bool operator==(const Rack&, const Rack&) = default;
};

}  // namespace streamwright::model
