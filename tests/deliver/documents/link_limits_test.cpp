// Copper and fibre links with what they may measure and lose.
#include "tests/deliver/small_venue.h"
#include "tests/support/fibre_way.h"

#include <gtest/gtest.h>

namespace streamwright::test::link_limits {

using namespace base::literals;

TEST(LinkLimits, CopperTellsLengthsAndWarmth) {
    SmallVenue venue;
    venue.b.change<model::Settings>({}, [](auto& row) {
        row.cable_temperature = 40_degC;
        row.cabling.warm_rule = model::WarmRule::table;
    });
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("link-limits");
    const auto& copper = table(content);
    ASSERT_EQ(copper.rows.size(), 4u);
    // COP-013, TIA-568 annex: 87.0 m screened at 40 degrees C (the test cable is screened).
    EXPECT_EQ(cell(copper, copper.rows.front(), "at most, m"), "87000000");
    EXPECT_EQ(cell(copper, copper.rows.front(), "Channel at most, m"), "97000000");
    EXPECT_EQ(cell(copper, copper.rows.front(), "Expected speed, Mb/s"), "1000000000");
    EXPECT_EQ(cell(copper, copper.rows.front(), "Warm cable by"), "the table of TIA-568");
}

TEST(LinkLimits, FibreTellsLossAndSwaps) {
    FibreWay way(catalogue::CableGrade::om4, 398_m);
    way.lead([](auto& type) { type.crossed = true; });
    way.fixed([](auto& row) { row.fibre.pair_swaps = 1; });
    const Delivered delivered(way.b.design);
    const auto content = delivered.document("link-limits");
    const auto& fibre = table(content, 1);
    ASSERT_EQ(fibre.rows.size(), 1u);
    const auto& row = fibre.rows.front();
    // Worked example F-4: 2.7 dB of 2.9 dB (LOSS-006); reach 400 m (FIB-013).
    EXPECT_EQ(cell(fibre, row, "Loss"), "2.7 dB");
    EXPECT_EQ(cell(fibre, row, "Budget"), "2.9 dB");
    EXPECT_EQ(cell(fibre, row, "Reach, m"), "400000000");
    EXPECT_EQ(cell(fibre, row, "Connector pairs"), "2");
    EXPECT_EQ(cell(fibre, row, "Pair swaps"), "3");
}

TEST(LinkLimits, CautionsOfLasersAndHeat) {
    const Delivered delivered(SmallVenue().b.design);
    const auto content = delivered.document("link-limits");
    EXPECT_NE(table(content).notes.at(1).find("Local electrical codes"), std::string::npos);
    EXPECT_NE(table(content, 1).notes.at(0).find("laser"), std::string::npos);
}

}  // namespace streamwright::test::link_limits
