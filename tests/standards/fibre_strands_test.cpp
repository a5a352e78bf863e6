// Strands of each physical layer whose reach is known. Names tell the lanes: SR4 has four each way (IEEE 802.3, from
// memory).
#include "core/standards/fibre_strands.h"

#include "core/standards/fibre_reach.h"

#include <gtest/gtest.h>

namespace streamwright::test::strands {

TEST(FibreStrands, EveryPhysicalLayerWithAReachHasThem) {
    for (const auto& row : standards::fibre_reaches()) EXPECT_TRUE(standards::strands_of(row.phy)) << row.phy;
    EXPECT_FALSE(standards::strands_of("1000BASE-T"));
    EXPECT_EQ(standards::fibre_strands_source.standing, standards::Standing::memory);
}

TEST(FibreStrands, ParallelOnesTakeTwoForEachLane) {
    EXPECT_EQ(standards::strands_of("40GBASE-SR4"), 8);
    EXPECT_EQ(standards::strands_of("100GBASE-SR10"), 20);
    EXPECT_EQ(standards::strands_of("400GBASE-SR8"), 16);
    EXPECT_EQ(standards::strands_of("40GBASE-LR4"), 2) << "four wavelengths on one pair";
    EXPECT_EQ(standards::strands_of("1000BASE-BX10-D"), 1);
}

}  // namespace streamwright::test::strands
