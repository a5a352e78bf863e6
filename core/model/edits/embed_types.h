// Embeds types, or refreshes the design's copies of types it has ("refresh types").
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <memory>
#include <vector>

namespace streamwright::model {

struct EmbedTypes {
    std::vector<std::shared_ptr<const catalogue::DeviceType>> devices;
    std::vector<std::shared_ptr<const catalogue::CableType>> cables;
    friend bool operator==(const EmbedTypes&, const EmbedTypes&) = default;
};

base::Result<Delta> make(const Design& design, const EmbedTypes& edit);

}  // namespace streamwright::model
