// Sets the typed length of cables, or clears it. Negative or beyond 1,000 km is refused.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>
#include <vector>

namespace streamwright::model {

struct SetLength {
    std::vector<CableId> cables;
    std::optional<base::Length> length;
    friend bool operator==(const SetLength&, const SetLength&) = default;
};

base::Result<Delta> make(const Design& design, const SetLength& edit);

}  // namespace streamwright::model
