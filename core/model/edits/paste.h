// Puts copied devices into the design as new ones: fresh ids, fresh tags, the cables between them and the streams they
// send. What belongs to one unit alone stays behind: serial and host name, fixed addresses, stream groups, rack place.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

#include <cstdint>
#include <memory>

namespace streamwright::model {

struct Paste {
    std::shared_ptr<const Design> clipping;  // made by copied()
    SheetId sheet;                           // where the copies are drawn
    SheetPoint shift;                        // from where the copied plates stand
    std::uint64_t seed = 0;                  // of the fresh ids
    friend bool operator==(const Paste&, const Paste&) = default;
};

/// Rooms, VLANs and types are those of the design; a link to one that it has not is dropped, a type is embedded.
base::Result<Delta> make(const Design& design, const Paste& edit);

}  // namespace streamwright::model
