#include "core/standards/ethernet_rates.h"

#include <array>

namespace streamwright::standards {

namespace ethernet_rates_detail {

using namespace base::literals;

constexpr std::array rates{
    EthernetRate{10_Mbps, "10M", "10BASE-T", 2},  EthernetRate{100_Mbps, "100M", "100BASE-TX", 2},
    EthernetRate{1_Gbps, "1G", "1000BASE-T", 4},  EthernetRate{2500_Mbps, "2.5G", "2.5GBASE-T", 4},
    EthernetRate{5_Gbps, "5G", "5GBASE-T", 4},    EthernetRate{10_Gbps, "10G", "10GBASE-T", 4},
    EthernetRate{25_Gbps, "25G", "25GBASE-T", 4}, EthernetRate{40_Gbps, "40G", "40GBASE-T", 4},
    EthernetRate{50_Gbps, "50G", "", 0},          EthernetRate{100_Gbps, "100G", "", 0},
    EthernetRate{200_Gbps, "200G", "", 0},        EthernetRate{400_Gbps, "400G", "", 0},
};

}  // namespace ethernet_rates_detail

std::span<const EthernetRate> ethernet_rates() { return ethernet_rates_detail::rates; }

std::string_view short_rate_name(base::BitRate rate) {
    for (const auto& row : ethernet_rates_detail::rates)
        if (row.rate == rate) return row.short_name;
    return {};
}

std::string_view copper_phy(base::BitRate rate) {
    for (const auto& row : ethernet_rates_detail::rates)
        if (row.rate == rate) return row.copper_phy;
    return {};
}

}  // namespace streamwright::standards
