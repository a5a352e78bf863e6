#include "core/graph/usb_tree.h"

#include <algorithm>

namespace streamwright::graph {

namespace usb_detail {

using catalogue::Way;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

bool has_sockets(const catalogue::DeviceType& type) {
    return std::any_of(type.ports.begin(), type.ports.end(),
                       [](const auto& port) { return port.way == Way::usb_host; });
}

void collect(const Wiring& wiring, const Runs& runs, int device, int hubs, std::vector<bool>& seen,
             std::vector<UsbPlugged>& found) {
    if (seen[at(device)] || !wiring.devices[at(device)].type) return;
    seen[at(device)] = true;
    const auto& ports = wiring.devices[at(device)].type->ports;
    for (int p = 0; p < static_cast<int>(ports.size()); ++p) {
        if (ports[at(p)].way != Way::usb_host) continue;
        const auto plug = usb_partner(wiring, runs, {device, p});
        if (!plug || wiring.port_type(*plug).way != Way::usb_device) continue;
        found.push_back({*plug, hubs});
        const auto* type = wiring.devices[at(plug->device)].type;
        if (!type || type->codec || !has_sockets(*type)) continue;
        collect(wiring, runs, plug->device, hubs + type->usb_hubs.value_or(1), seen, found);
    }
}

}  // namespace usb_detail

std::optional<PortAt> usb_partner(const Wiring& wiring, const Runs& runs, PortAt port) {
    for (const int cable : wiring.cables_at(port)) {
        const auto& run = runs.list[usb_detail::at(runs.run_of_cable[usb_detail::at(cable)])];
        if (!run.a || !run.b) continue;
        const auto far = *run.a == port ? *run.b : *run.a;
        if (wiring.port_type(far).signal == catalogue::Signal::usb) return far;
    }
    return std::nullopt;
}

std::vector<UsbPlugged> plugged_into(const Wiring& wiring, const Runs& runs, int device) {
    std::vector<bool> seen(wiring.devices.size(), false);
    std::vector<UsbPlugged> found;
    usb_detail::collect(wiring, runs, device, 0, seen, found);
    return found;
}

}  // namespace streamwright::graph
