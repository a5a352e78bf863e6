// Says where devices belong in the venue: room, place in the room, rack unit, chassis slot.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>
#include <vector>

namespace streamwright::model {

struct StandInRoom {
    std::vector<DeviceId> devices;
    std::optional<RoomId> room;
    std::optional<Standing> standing;     // one device only
    std::optional<RackPlace> rack;        // one device only
    std::optional<ChassisPlace> chassis;  // one device only
    friend bool operator==(const StandInRoom&, const StandInRoom&) = default;
};

base::Result<Delta> make(const Design& design, const StandInRoom& edit);

}  // namespace streamwright::model
