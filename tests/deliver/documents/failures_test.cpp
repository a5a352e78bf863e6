// One row a thing that can fail: what is lost with it, said by preset.
#include "tests/deliver/small_venue.h"
#include "tests/support/demo_designs.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::test::failures_document {

/// One asks, so that the stream arrives at DEC-001.
SmallVenue asked_venue() {
    SmallVenue venue;
    const auto vlan = venue.b.vlan(1, "AV", "10.1.0.0/24");
    venue.b.usual_vlan(vlan);
    venue.b.querier(venue.sw, vlan, "10.1.0.2");
    return venue;
}

TEST(FailuresDocument, SaysWhatEachThingTakesWithIt) {
    const auto venue = asked_venue();
    const auto content = Delivered(venue.b.design).document("failures");
    const auto& rows = table(content);
    // N211, N212, N217 and the lead to the panel reach a device each; SW-S2 is the only switch.
    ASSERT_EQ(rows.rows.size(), 5u);
    const auto* sw = row_with(rows, "What fails", "SW-S2");
    ASSERT_TRUE(sw);
    EXPECT_EQ(cell(rows, *sw, "Kind"), "switch");
    EXPECT_EQ(cell(rows, *sw, "Pictures lost"), "1");
    EXPECT_EQ(cell(rows, *sw, "Lost, by preset"), "Lecture: DEC-001");
    EXPECT_EQ(cell(rows, *sw, "Network parts"), "0");
    const auto* lead = row_with(rows, "What fails", "N300");
    ASSERT_TRUE(lead);
    EXPECT_EQ(cell(rows, *lead, "Kind"), "cable of a device");
    EXPECT_EQ(cell(rows, *lead, "Between, or feeds"), "SW-S2, DEC-002");
    EXPECT_EQ(cell(rows, *lead, "Pictures lost"), "0");
    EXPECT_EQ(cell(rows, *lead, "Return after"), "");
    EXPECT_EQ(cell(rows, *row_with(rows, "What fails", "N211"), "Lost, by preset"), "Lecture: DEC-001");
}

TEST(FailuresDocument, EveryThingOfFerrowQuayThatCanFailIsListed) {
    const Delivered venue(ferrow_quay().design);
    const auto content = venue.document("failures");
    const auto& rows = table(content);
    const auto names = column(rows, "What fails");
    const std::set<std::string> listed(names.begin(), names.end());
    EXPECT_EQ(listed.size(), names.size());
    std::size_t expected = 0;
    std::set<std::string> ducts;
    for (const auto& device : venue.design.devices) {
        const auto* type = venue.design.type_of(device);
        if (!type || !type->bridging) continue;
        ++expected;
        EXPECT_TRUE(listed.contains(device.tag)) << device.tag;
    }
    for (const auto& cable : venue.design.cables)
        if (!cable.duct.empty()) ducts.insert(cable.duct);
    for (const auto& duct : ducts) EXPECT_TRUE(listed.contains(duct)) << duct;
    EXPECT_GT(expected, 9u);
    int losing = 0;
    for (const auto& row : rows.rows) losing += cell(rows, row, "Lost, by preset").empty() ? 0 : 1;
    EXPECT_GT(losing, 20);
}

TEST(FailuresDocument, WithoutAnythingItIsAnEmptyTable) {
    const auto content = Delivered(model::Design()).document("failures");
    EXPECT_TRUE(table(content).rows.empty());
}

}  // namespace streamwright::test::failures_document
