// Gives cables another type; a lead's typed length is dropped in favour of the made one.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/cable_type.h"
#include "core/model/delta.h"

#include <memory>
#include <vector>

namespace streamwright::model {

struct SetCableType {
    std::vector<CableId> cables;
    std::shared_ptr<const catalogue::CableType> type;
    friend bool operator==(const SetCableType&, const SetCableType&) = default;
};

base::Result<Delta> make(const Design& design, const SetCableType& edit);

}  // namespace streamwright::model
