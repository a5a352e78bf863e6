#include "core/standards/ethernet_rates.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

namespace ethernet_detail {

using namespace base::literals;
using enum PhyMedium;

constexpr Citation clause(std::string_view number, Standing standing = Standing::read) {
    return {"IEEE", "802.3", number, standing};
}

constexpr std::array phys{
    EthernetPhy{"10BASE-T", 10_Mbps, balanced_copper, 2, clause("clause 14", Standing::memory)},
    EthernetPhy{"100BASE-TX", 100_Mbps, balanced_copper, 2, clause("clause 25")},
    EthernetPhy{"1000BASE-T", 1_Gbps, balanced_copper, 4, clause("clause 40")},
    EthernetPhy{"2.5GBASE-T", 2500_Mbps, balanced_copper, 4, clause("clause 126")},
    EthernetPhy{"5GBASE-T", 5_Gbps, balanced_copper, 4, clause("clause 126")},
    EthernetPhy{"10GBASE-T", 10_Gbps, balanced_copper, 4, clause("clause 55")},
    EthernetPhy{"25GBASE-T", 25_Gbps, balanced_copper, 4, clause("clause 113")},
    EthernetPhy{"40GBASE-T", 40_Gbps, balanced_copper, 4, clause("clause 113")},
    EthernetPhy{"25GBASE-CR", 25_Gbps, twinax, 1, clause("clause 110")},
    EthernetPhy{"25GBASE-CR-S", 25_Gbps, twinax, 1, clause("clause 110", Standing::memory)},
    EthernetPhy{"40GBASE-CR4", 40_Gbps, twinax, 4, clause("clause 85")},
    EthernetPhy{"100GBASE-CR4", 100_Gbps, twinax, 4, clause("clause 92", Standing::memory)},
    EthernetPhy{"1000BASE-SX", 1_Gbps, multimode, 2, clause("clause 38")},
    EthernetPhy{"1000BASE-LX", 1_Gbps, either_fibre, 2, clause("clause 38")},
    EthernetPhy{"1000BASE-LX10", 1_Gbps, singlemode, 2, clause("clause 59", Standing::memory)},
    EthernetPhy{"1000BASE-BX10-D", 1_Gbps, singlemode, 1, clause("clause 59", Standing::memory)},
    EthernetPhy{"1000BASE-BX10-U", 1_Gbps, singlemode, 1, clause("clause 59", Standing::memory)},
    EthernetPhy{"10GBASE-SR", 10_Gbps, multimode, 2, clause("clause 52")},
    EthernetPhy{"10GBASE-LRM", 10_Gbps, multimode, 2, clause("clause 68")},
    EthernetPhy{"10GBASE-LR", 10_Gbps, singlemode, 2, clause("clause 52")},
    EthernetPhy{"10GBASE-ER", 10_Gbps, singlemode, 2, clause("clause 52")},
    EthernetPhy{"25GBASE-SR", 25_Gbps, multimode, 2, clause("clause 112")},
    EthernetPhy{"25GBASE-LR", 25_Gbps, singlemode, 2, clause("clause 114", Standing::memory)},
    EthernetPhy{"40GBASE-SR4", 40_Gbps, multimode, 8, clause("clause 86")},
    EthernetPhy{"40GBASE-LR4", 40_Gbps, singlemode, 2, clause("clause 87")},
    EthernetPhy{"100GBASE-SR10", 100_Gbps, multimode, 20, clause("clause 86")},
    EthernetPhy{"100GBASE-SR4", 100_Gbps, multimode, 8, clause("clause 95")},
    EthernetPhy{"100GBASE-LR4", 100_Gbps, singlemode, 2, clause("clause 88", Standing::memory)},
    EthernetPhy{"400GBASE-SR8", 400_Gbps, multimode, 16, clause("clause 138")},
};

template <class Same>
const EthernetPhy* find_phy(Same same) {
    const auto found = std::find_if(phys.begin(), phys.end(), same);
    return found == phys.end() ? nullptr : &*found;
}

}  // namespace ethernet_detail

std::span<const EthernetPhy> ethernet_phys() { return ethernet_detail::phys; }

const EthernetPhy* ethernet_phy(std::string_view name) {
    return ethernet_detail::find_phy([&](const EthernetPhy& phy) { return phy.name == name; });
}

const EthernetPhy* copper_phy(base::BitRate rate) {
    return ethernet_detail::find_phy(
        [&](const EthernetPhy& phy) { return phy.rate == rate && phy.medium == PhyMedium::balanced_copper; });
}

}  // namespace streamwright::standards
