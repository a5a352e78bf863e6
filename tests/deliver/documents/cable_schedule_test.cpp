// One row a cable, with both ends, the length typed, and labels that name the far end.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

namespace streamwright::test::cable_schedule {

TEST(CableSchedule, HasEachCableOnce) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("cable-schedule");
    EXPECT_EQ(table(content).rows.size(), venue.b.design.cables.size());
}

TEST(CableSchedule, NamesBothEnds) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("cable-schedule");
    const auto& cables = table(content);
    const auto* row = row_with(cables, "Cable", "N217");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(cables, *row, "From device"), "SW-S2");
    EXPECT_EQ(cell(cables, *row, "From connector"), "RJ45");
    EXPECT_EQ(cell(cables, *row, "From room"), "0.11");
    EXPECT_EQ(cell(cables, *row, "To device"), "DEC-001");
    EXPECT_EQ(cell(cables, *row, "To room"), "2.04");
    EXPECT_EQ(cell(cables, *row, "Length, m"), "46500000");
    EXPECT_EQ(cell(cables, *row, "Rev."), "C");
    EXPECT_EQ(row->subject, "cable:" + venue.n3.text());
}

TEST(CableSchedule, LabelsAtEachEndNameTheOther) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("cable-schedule");
    const auto& cables = table(content);
    const auto* row = row_with(cables, "Cable", "N217");
    ASSERT_NE(row, nullptr);
    EXPECT_NE(cell(cables, *row, "Label at from").find("DEC-001"), std::string::npos);
    EXPECT_NE(cell(cables, *row, "Label at to").find("SW-S2"), std::string::npos);
}

TEST(CableSchedule, AChannelCountsAllItsParts) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("cable-schedule");
    const auto& cables = table(content);
    const auto* row = row_with(cables, "Cable", "N218");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(cables, *row, "Channel, m"), "52000000");  // 50 m installed and a lead of 2 m
}

TEST(CableSchedule, AnOpenEndIsSaid) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("cable-schedule");
    EXPECT_NE(row_with(table(content), "To device", "open end"), nullptr);
}

TEST(CableSchedule, WarnsOfLaserLight) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("cable-schedule");
    EXPECT_TRUE(std::ranges::any_of(table(content).notes,
                                    [](const std::string& note) { return note.find("laser") != std::string::npos; }));
}

}  // namespace streamwright::test::cable_schedule
