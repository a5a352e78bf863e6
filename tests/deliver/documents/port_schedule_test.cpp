// A table for each switch, a row for each of its ports, spare ones too.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

namespace streamwright::test::port_schedule {

TEST(PortSchedule, HasEveryPortOfEverySwitch) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("port-schedule");
    ASSERT_EQ(content.parts.size(), 1u);
    EXPECT_EQ(table(content).rows.size(), 28u);  // 24 copper ports and 4 cages
}

TEST(PortSchedule, UsedPortsTellTheFarEnd) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("port-schedule");
    const auto& ports = table(content);
    const auto* row = row_with(ports, "Cable", "N211");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(ports, *row, "Far device"), "ENC-001");
    EXPECT_EQ(cell(ports, *row, "Role"), "encoder");
    EXPECT_EQ(cell(ports, *row, "Room"), "2.04");
    EXPECT_EQ(cell(ports, *row, "Streams to switch"), "1");
}

TEST(PortSchedule, LooksThroughPanelsToTheDevice) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("port-schedule");
    const auto& ports = table(content);
    const auto* row = row_with(ports, "Cable", "N300");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(ports, *row, "Far device"), "DEC-002");
    EXPECT_TRUE(cell(ports, *row, "Patch").starts_with("PP-1/"));
}

TEST(PortSchedule, SaysHowThePortIsMarkedForTheTree) {
    SmallVenue venue;
    const Delivered before(venue.b.design);
    const auto plain = before.document("port-schedule");
    for (const char* mark : {"Edge port", "BPDU guard", "Loop guard"}) {
        const auto cells = column(table(plain), mark);
        EXPECT_EQ(std::ranges::count(cells, ""), 28) << mark;
    }
    venue.b.port(port_of(venue.sw, "1"), [](auto& row) { row.edge = row.loop_guard = true; });
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("port-schedule");
    EXPECT_EQ(std::ranges::count(column(table(content), "Edge port"), "yes"), 1);
    EXPECT_EQ(std::ranges::count(column(table(content), "BPDU guard"), "yes"), 0);
    EXPECT_EQ(std::ranges::count(column(table(content), "Loop guard"), "yes"), 1);
}

TEST(PortSchedule, SparePortsAreCounted) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("port-schedule");
    const auto& ports = table(content);
    const auto far = column(ports, "Far device");
    EXPECT_EQ(std::ranges::count(far, "spare"), 23);  // 28 ports, five cabled
    EXPECT_EQ(std::ranges::count(far, "open end"), 1);
    ASSERT_FALSE(ports.notes.empty());
    EXPECT_EQ(ports.notes.front(), "5 ports in use, 23 spare.");
}

TEST(PortSchedule, PoeIsReservedByClass) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("port-schedule");
    const auto& ports = table(content);
    const auto* row = row_with(ports, "Cable", "N211");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(ports, *row, "PoE class"), "3");
    EXPECT_EQ(cell(ports, *row, "Reserved, W"), "15400");  // IEEE 802.3 class 3: 15.4 W at the switch
}

TEST(PortSchedule, AcceptanceIsLeftOpenForThePen) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("port-schedule");
    for (const char* name : {"Speed measured", "Errors", "Date, initials"})
        for (const auto& text : column(table(content), name)) EXPECT_TRUE(text.empty());
}

}  // namespace streamwright::test::port_schedule
