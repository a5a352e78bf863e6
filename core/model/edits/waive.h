// Accepts a finding with a reason, or changes a waiver.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

namespace streamwright::model {

struct Waive {
    Waiver row;  // an empty reason is refused
    friend bool operator==(const Waive&, const Waive&) = default;
};

base::Result<Delta> make(const Design& design, const Waive& edit);

}  // namespace streamwright::model
