// Adds or changes a stream.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

namespace streamwright::model {

struct SetStream {
    Stream row;
    friend bool operator==(const SetStream&, const SetStream&) = default;
};

base::Result<Delta> make(const Design& design, const SetStream& edit);

/// The next free "S-12".
std::string next_stream_tag(const Design& design);

}  // namespace streamwright::model
