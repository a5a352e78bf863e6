// Removes rows and all that cannot stand without them: a device takes its cables' ends, places, streams and
// subscriptions with it and
// leaves its place in a wall empty; cables between two removed devices go, others keep an open end only if
// `keep_cables`.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <variant>
#include <vector>

namespace streamwright::model {

using AnyId = std::variant<RoomId, RackId, VlanId, DeviceId, CableId, StreamId, PresetId, SubscriptionId, WallId,
                           SheetId, FrameId, NoteId, WaiverId, RevisionId>;

struct Remove {
    std::vector<AnyId> rows;
    bool keep_cables = false;
    friend bool operator==(const Remove&, const Remove&) = default;
};

base::Result<Delta> make(const Design& design, const Remove& edit);

}  // namespace streamwright::model
