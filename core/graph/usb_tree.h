// What is plugged in where over USB, through hubs.
#pragma once

#include "core/graph/runs.h"

#include <vector>

namespace streamwright::graph {

/// A port toward a computer, and the hubs between it and where the looking began.
struct UsbPlugged {
    PortAt at;
    int hubs = 0;
    friend auto operator<=>(const UsbPlugged&, const UsbPlugged&) = default;
};

/// All that is plugged into the device's USB sockets, and into the sockets of what is plugged in there. A device with
/// sockets of its own counts for the hubs that its type states, else for one. Endpoints end it; rings end.
std::vector<UsbPlugged> plugged_into(const Wiring&, const Runs&, int device);

/// What is at the far end of a USB port's lead; none where it is open or not USB.
std::optional<PortAt> usb_partner(const Wiring&, const Runs&, PortAt port);

}  // namespace streamwright::graph
