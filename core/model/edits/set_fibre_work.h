// Sets what was done to a fibre on its way: pair swaps as installed, splices, connector pairs that are not drawn.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

namespace streamwright::model {

struct SetFibreWork {
    CableId cable;
    FibreWork work;
    friend bool operator==(const SetFibreWork&, const SetFibreWork&) = default;
};

/// Refuses counts out of range, and any work on a cable whose type is known not to be fibre.
base::Result<Delta> make(const Design& design, const SetFibreWork& edit);

}  // namespace streamwright::model
