// Where a device may be mounted: free units of racks, free slots of chassis, and a rack made for a device that needs
// one.
#pragma once

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/model/delta.h"

#include <memory>
#include <optional>
#include <string>

namespace streamwright::model {

/// The lowest unit of the rack from which the device fits on that face; nothing where it fits nowhere. A device of full
/// depth needs both faces.
std::optional<int> lowest_free_unit(const Design& design, RackId rack, DeviceId device, RackFace face);

/// The lowest slot of the chassis without a card; nothing where all are taken or it is no chassis.
std::optional<int> lowest_free_slot(const Design& design, DeviceId chassis, DeviceId card);

/// "Rack 3": the first such name that no rack has.
std::string next_rack_name(const Design& design);

/// Makes a rack of the type in the device's room and mounts the device in its lowest unit, as one change.
base::Result<Delta> mount_in_new_rack(const Design& design, base::IdSource& ids, DeviceId device,
                                      const std::shared_ptr<const catalogue::DeviceType>& rack_type);

}  // namespace streamwright::model
