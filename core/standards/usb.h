// USB: what a speed class carries and over how much cable, how deep hubs may stand, and what one camera may ask for.
#pragma once

#include "core/base/rate.h"
#include "core/base/units.h"
#include "core/standards/citation.h"
#include "core/standards/packet_delay.h"

#include <optional>
#include <span>
#include <string_view>

namespace streamwright::standards {

enum class UsbSpeed { low, full, high, super_5, super_10 };

struct UsbClass {
    UsbSpeed speed;
    std::string_view name;
    base::BitRate signalling;
    base::Length cable;  // longest passive cable: a limit for 1.x and 2.0, practical above
    Citation source;     // of the cable
};
std::span<const UsbClass> usb_classes();
const UsbClass& usb_class(UsbSpeed speed);

/// USB 2.0: delay that one cable may take, and what each metre may (a little over 5 m then).
inline constexpr Picoseconds usb_cable_delay = 26'000;
inline constexpr Picoseconds usb_cable_delay_per_metre = 5'200;
inline constexpr Citation usb_cable_delay_source{"USB", "2.0", "7.1.14 and 7.1.16"};

/// Hubs in series between host and device, a compound device counting as one; tiers with that of the host.
inline constexpr int most_usb_hubs = 5;
inline constexpr int most_usb_tiers = 7;
inline constexpr Citation usb_hubs_source{"USB", "2.0", "4.1.1"};

/// Addresses below one host, hubs included.
inline constexpr int most_usb_addresses = 127;
inline constexpr Citation usb_addresses_source{"USB", "2.0", "7-bit address"};

/// The longest way from host to device of USB 2.0 through so many hubs; nothing where hubs are too many.
std::optional<base::Length> usb_longest_path(int hubs);

/// What one isochronous endpoint of high speed carries at most: three transfers of 1024 octets in each of 8000
/// microframes a second. Extenders may carry less: a value of the type.
inline constexpr base::BitRate usb_isochronous_limit = base::BitRate::from_count(3LL * 1024 * 8 * 8000);
inline constexpr Citation usb_isochronous_source{"USB", "2.0", "5.6.3"};

}  // namespace streamwright::standards
