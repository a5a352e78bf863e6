#include "core/model/design.h"

namespace streamwright::model {

const Settings& Design::settings() const {
    static const Settings usual;
    const Settings* row = settings_table.find({});
    return row ? *row : usual;
}

const catalogue::DeviceType* Design::type_of(const Device& device) const {
    const auto* row = device_types.find(device.type);
    return row ? row->type.get() : nullptr;
}

const catalogue::CableType* Design::type_of(const Cable& cable) const {
    const auto* row = cable_types.find(cable.type);
    return row ? row->type.get() : nullptr;
}

}  // namespace streamwright::model
