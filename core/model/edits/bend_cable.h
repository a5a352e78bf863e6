// Stores the bends of one cable on a sheet, found or pinned by hand.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

namespace streamwright::model {

struct BendCable {
    CableLine line;
    friend bool operator==(const BendCable&, const BendCable&) = default;
};

base::Result<Delta> make(const Design& design, const BendCable& edit);

}  // namespace streamwright::model
