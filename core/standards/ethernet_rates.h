// The line rates of Ethernet and the names of their physical layers over balanced copper.
#pragma once

#include "core/base/units.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

struct EthernetRate {
    base::BitRate rate;
    std::string_view short_name;  // "10G"
    std::string_view copper_phy;  // empty: none over balanced copper
    int copper_pairs;             // pairs that carry data
};

/// By rate (IEEE 802.3: clauses 25, 40, 55, 113, 126 for copper).
std::span<const EthernetRate> ethernet_rates();
/// "1G", "2.5G"; empty for a rate that is not one of Ethernet.
std::string_view short_rate_name(base::BitRate rate);
/// Empty where there is none.
std::string_view copper_phy(base::BitRate rate);

}  // namespace streamwright::standards
