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

std::optional<ControlMethod> control_of(const PortType& port) {
    if (is_network(port.signal)) return ControlMethod::network;
    if (port.signal != Signal::control) return std::nullopt;
    const auto speaks = [&](std::string_view start) {
        return std::any_of(port.standards.begin(), port.standards.end(),
                           [&](const std::string& each) { return each.starts_with(start); });
    };
    if (speaks("IR")) return ControlMethod::ir;
    if (speaks("RS-")) return ControlMethod::serial;
    if (speaks("contact")) return ControlMethod::contact;
    return std::nullopt;
}

}  // namespace streamwright::catalogue
