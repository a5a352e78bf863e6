#include "core/standards/usb.h"

#include <array>

namespace streamwright::standards {

namespace usb_detail {

using namespace base::literals;

constexpr std::array classes{
    UsbClass{UsbSpeed::low, "low speed", 1500 * 1000_bps, 3_m, {"USB", "1.1 / 2.0", "captive cable"}},
    UsbClass{UsbSpeed::full, "full speed", 12_Mbps, 5_m, {"USB", "2.0", "7.1.14"}},
    UsbClass{UsbSpeed::high, "high speed", 480_Mbps, 5_m, {"USB", "2.0", "7.1.14"}},
    UsbClass{UsbSpeed::super_5, "5 Gb/s", 5_Gbps, 3_m, {"USB", "3.0", "electrical limits, practical with AWG 26"}},
    UsbClass{UsbSpeed::super_10, "10 Gb/s", 10_Gbps, 1_m, {"trade practice", "USB 3.1", "Gen 2", Standing::memory}},
};

}  // namespace usb_detail

std::span<const UsbClass> usb_classes() { return usb_detail::classes; }

const UsbClass& usb_class(UsbSpeed speed) { return usb_detail::classes[static_cast<std::size_t>(speed)]; }

std::optional<base::Length> usb_longest_path(int hubs) {
    if (hubs < 0 || hubs > most_usb_hubs) return std::nullopt;
    return usb_class(UsbSpeed::high).cable * (hubs + 1);
}

}  // namespace streamwright::standards
