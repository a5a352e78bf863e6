// Sets one port: module, VLANs, tree cost, marks. A row equal to a blank one goes. Embeds the module's type if given.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/device_type.h"
#include "core/model/delta.h"

#include <memory>

namespace streamwright::model {

struct ConfigurePort {
    PortOverride row;
    std::shared_ptr<const catalogue::DeviceType> module;  // of row.module, when not yet in the design
    friend bool operator==(const ConfigurePort&, const ConfigurePort&) = default;
};

base::Result<Delta> make(const Design& design, const ConfigurePort& edit);

}  // namespace streamwright::model
