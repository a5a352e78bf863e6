#include "core/catalogue/device_type.h"

#include <algorithm>

namespace streamwright::catalogue {

const PortType* DeviceType::find_port(const PortKey& port) const {
    const auto at = std::find_if(ports.begin(), ports.end(), [&](const PortType& each) { return each.key == port; });
    return at == ports.end() ? nullptr : &*at;
}

bool DeviceType::can(Role role) const {
    return codec && std::find(codec->roles.begin(), codec->roles.end(), role) != codec->roles.end();
}

}  // namespace streamwright::catalogue
