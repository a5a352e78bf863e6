// Replaces the design's settings.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

namespace streamwright::model {

struct SetSettings {
    Settings row;
    friend bool operator==(const SetSettings&, const SetSettings&) = default;
};

base::Result<Delta> make(const Design& design, const SetSettings& edit);

}  // namespace streamwright::model
