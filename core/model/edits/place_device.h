// Places a device of a type: a fresh row with the next free tag, its type embedded, and its plate on a sheet.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/device_type.h"
#include "core/model/delta.h"

#include <memory>
#include <optional>
#include <string>

namespace streamwright::model {

struct PlaceDevice {
    DeviceId id;  // fresh
    std::shared_ptr<const catalogue::DeviceType> type;
    std::string tag;  // empty: the next free one of the type's prefix
    std::optional<RoomId> room;
    std::optional<SheetId> sheet;  // none: not drawn
    SheetPoint at;
    friend bool operator==(const PlaceDevice&, const PlaceDevice&) = default;
};

base::Result<Delta> make(const Design& design, const PlaceDevice& edit);

/// "ENC-007": the lowest number from 1 that no device bears, three digits at least.
std::string next_tag(const Design& design, const std::string& prefix);

}  // namespace streamwright::model
