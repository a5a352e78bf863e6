// Gives a row another tag or name, or another note. Never changes a finding.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <optional>
#include <string>
#include <variant>

namespace streamwright::model {

using NamedId = std::variant<DeviceId, CableId, StreamId, PresetId, RoomId, RackId, VlanId, SheetId>;

struct Rename {
    NamedId row;
    std::optional<std::string> name;  // none: kept
    std::optional<std::string> note;  // none: kept; refused for rows without notes
    friend bool operator==(const Rename&, const Rename&) = default;
};

/// Refuses empty names, names over 200 characters and control characters; a tag borne by another row of the kind is
/// allowed here and found by a rule.
base::Result<Delta> make(const Design& design, const Rename& edit);

}  // namespace streamwright::model
