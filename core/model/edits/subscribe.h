// In a preset, lets a decoder input show a stream, or nothing. An input shows at most one stream in a preset.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>

namespace streamwright::model {

struct Subscribe {
    SubscriptionId id;  // fresh; the row of the input keeps its own
    PresetId preset;
    DeviceId decoder;
    InputKey input;
    std::optional<StreamId> stream;  // none: shows nothing
    friend bool operator==(const Subscribe&, const Subscribe&) = default;
};

base::Result<Delta> make(const Design& design, const Subscribe& edit);

}  // namespace streamwright::model
