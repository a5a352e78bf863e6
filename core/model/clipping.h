// What is copied from a design: a small design of its own, sound by itself, so that the readers and writers of designs
// serve the clipboard as well.
#pragma once

#include "core/model/design.h"

#include <vector>

namespace streamwright::model {

/// The devices with what is set on their ports, the cables between them, the streams they send, the walls whose
/// displays all are among them, and how all this is
/// drawn on the sheet; with the types, rooms and VLANs that these rows name. Rack places stay behind, and the slot of a
/// card whose chassis is not copied: two units cannot stand in one place.
Design copied(const Design& design, const std::vector<DeviceId>& devices, SheetId sheet);

}  // namespace streamwright::model
