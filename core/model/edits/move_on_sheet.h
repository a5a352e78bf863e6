// Moves plates, frames and notes on a sheet, with the new bends of the cables that this touches. Never changes a
// finding.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <vector>

namespace streamwright::model {

struct MoveOnSheet {
    std::vector<Place> places;  // as they shall stand
    std::vector<RoomFrame> frames;
    std::vector<Note> notes;
    std::vector<CableLine> lines;
    friend bool operator==(const MoveOnSheet&, const MoveOnSheet&) = default;
};

base::Result<Delta> make(const Design& design, const MoveOnSheet& edit);

}  // namespace streamwright::model
