// Writes down how many different sources may cross a link at once, by whom and when it was agreed, or clears it.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>

namespace streamwright::model {

struct AgreeContention {
    CableId cable;
    std::optional<AgreedContention> agreed;  // none: nothing is agreed
    friend bool operator==(const AgreeContention&, const AgreeContention&) = default;
};

/// Refuses a cable that is not there, a number below 0 or above 100,000, an agreement without a role, and a day that is
/// no date.
base::Result<Delta> make(const Design& design, const AgreeContention& edit);

}  // namespace streamwright::model
