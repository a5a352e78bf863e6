// Adds or replaces rows of the plain kinds: rooms, racks, VLANs, presets and what they show, sheets, frames, notes,
// revisions.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <variant>
#include <vector>

namespace streamwright::model {

using PlainRow = std::variant<Room, Rack, Vlan, Preset, Subscription, Sheet, RoomFrame, Note, Revision>;

struct AddRows {
    std::vector<PlainRow> rows;
    friend bool operator==(const AddRows&, const AddRows&) = default;
};

base::Result<Delta> make(const Design& design, const AddRows& edit);

}  // namespace streamwright::model
