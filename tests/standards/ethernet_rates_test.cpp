// Names and rates of physical layers, held together with the reach tables and the names' own form (IEEE 802.3
// clause 1.2.3: the data rate stands before BASE).
#include "core/standards/ethernet_rates.h"

#include "core/standards/copper_reach.h"
#include "core/standards/fibre_reach.h"

#include <gtest/gtest.h>

namespace streamwright::test::ethernet {

using namespace standards;
using namespace base::literals;

/// "10GBASE-SR" says 10 Gb/s, "1000BASE-T" says 1000 Mb/s.
base::BitRate rate_in_name(std::string_view name) {
    auto number = std::string(name.substr(0, name.find("BASE")));
    const bool giga = number.ends_with('G');
    if (giga) number.pop_back();
    return *base::parse_bit_rate(number + (giga ? " Gb/s" : " Mb/s"));
}

TEST(EthernetPhys, EachNameSaysItsRate) {
    for (const auto& phy : ethernet_phys()) EXPECT_EQ(phy.rate, rate_in_name(phy.name)) << phy.name;
}

TEST(EthernetPhys, EachReachRowNamesAKnownPhysicalLayer) {
    for (const auto& row : standards::copper_reaches()) {
        const auto* phy = ethernet_phy(row.phy);
        ASSERT_TRUE(phy) << row.phy;
        EXPECT_EQ(phy->rate, row.rate);
        EXPECT_EQ(copper_phy(row.rate), phy);
    }
    for (const auto& row : standards::fibre_reaches()) {
        const auto* phy = ethernet_phy(row.phy);
        ASSERT_TRUE(phy) << row.phy;
        const bool multimode = phy->medium == PhyMedium::multimode || phy->medium == PhyMedium::either_fibre;
        const bool singlemode = phy->medium == PhyMedium::singlemode || phy->medium == PhyMedium::either_fibre;
        EXPECT_TRUE(is_multimode(row.grade) ? multimode : singlemode) << row.phy;
    }
}

TEST(EthernetPhys, FastEthernetNeedsTwoPairsAndGigabitFour) {
    EXPECT_EQ(copper_phy(100_Mbps)->paths, 2);  // PHY-001: 2 pairs
    EXPECT_EQ(copper_phy(1_Gbps)->paths, 4);    // PHY-002: 4 pairs
    EXPECT_FALSE(copper_phy(100_Gbps));
    EXPECT_FALSE(ethernet_phy("10GBASE-XY"));
}

}  // namespace streamwright::test::ethernet
