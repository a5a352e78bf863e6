// What USB ports ask for and give beyond their speed, and what an endpoint carries of USB over the network.
#pragma once

#include "core/base/units.h"

#include <optional>

namespace streamwright::catalogue {

struct UsbPort {
    std::optional<base::BitRate> isochronous;  // of a camera and the like: what its largest format sends
    bool human_interface = false;              // a keyboard, mouse or touch surface
    std::optional<base::Power> charges;        // most that it gives a computer over USB-C
    std::optional<base::Power> charging;       // what the computer asks of its charger
    friend bool operator==(const UsbPort&, const UsbPort&) = default;
};

struct UsbCarriage {
    std::optional<base::BitRate> isochronous;  // most of one camera; none: not known
    bool human_interface_only = false;         // keyboard, mouse and touch alone
    std::optional<int> hubs;                   // that the path puts in series
    std::optional<int> devices;                // at most, behind all ends
    friend bool operator==(const UsbCarriage&, const UsbCarriage&) = default;
};

}  // namespace streamwright::catalogue
