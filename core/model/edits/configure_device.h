// Sets up a device: roles, host name, addresses, bridge settings; name and place are other verbs.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"

namespace streamwright::model {

struct ConfigureDevice {
    Device row;  // as it shall be; type, tag, room and rack are taken from the design
    friend bool operator==(const ConfigureDevice&, const ConfigureDevice&) = default;
};

base::Result<Delta> make(const Design& design, const ConfigureDevice& edit);

}  // namespace streamwright::model
