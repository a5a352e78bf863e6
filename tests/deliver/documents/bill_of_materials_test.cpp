// The bill against counts made by hand over the rows of the design.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

#include <map>

namespace streamwright::test::bill {

TEST(BillOfMaterials, QuantitiesAreTheDrawingsCounts) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    std::map<std::string, int> drawn;
    for (const auto& device : venue.b.design.devices) ++drawn[device.type.text];
    for (const auto& cable : venue.b.design.cables) ++drawn[cable.type.text];
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    std::map<std::string, int> billed;
    for (const auto& row : bill.rows)
        if (cell(bill, row, "Remark") != "follows from the drawing")
            billed[cell(bill, row, "Type")] += std::stoi(cell(bill, row, "Quantity"));
    EXPECT_EQ(billed, drawn);
}

TEST(BillOfMaterials, InstalledCableIsSummedInMetres) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    const auto* row = row_with(bill, "Type", types::cat6a()->key.text);
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(bill, *row, "Length, m"), "175500000");  // 38 + 41 + 46.5 + 50 m, in micrometres
    EXPECT_EQ(cell(bill, *row, "Remark"), "the length of 1 cable is not known");
}

TEST(BillOfMaterials, TagsAreSortedAndRoomsNamed) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    const auto* row = row_with(bill, "Type", types::encoder()->key.text);
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(bill, *row, "Tags"), "ENC-001, ENC-002");
    EXPECT_EQ(cell(bill, *row, "Rooms"), "2.04");
}

TEST(BillOfMaterials, LinesAreNumberedAndGroupsStandTogether) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    std::vector<std::string> groups;
    int line = 0;
    for (const auto& row : bill.rows) {
        EXPECT_EQ(cell(bill, row, "Line"), std::to_string(++line));
        EXPECT_EQ(row.cells.size(), bill.columns.size());
        if (groups.empty() || groups.back() != row.group) groups.push_back(row.group);
    }
    auto unique = groups;
    std::ranges::sort(unique);
    EXPECT_EQ(std::ranges::adjacent_find(unique), unique.end());
}

}  // namespace streamwright::test::bill
