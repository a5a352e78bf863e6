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
        if (cell(bill, row, "How counted").starts_with("drawn"))
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
    EXPECT_EQ(cell(bill, *row, "How counted"), "drawn; the length of 1 cable is not known");
    EXPECT_EQ(cell(bill, *row, "To order"), "") << "bought by the metre";
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

TEST(BillOfMaterials, LeadsThatAreNotDrawnSayWhichAndWhy) {
    // By hand: N211, N212 and N217 end in two ports each, N218 in one (its other end is the rear of a panel), and the
    // open cable in one: 3 x 2 + 1 + 1.
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    const auto* row = row_with(bill, "Description", "Patch lead, category 6A, screened, RJ45");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(bill, *row, "Quantity"), "8");
    EXPECT_EQ(row->group, "Leads");
    EXPECT_EQ(cell(bill, *row, "Type"), "");
    EXPECT_EQ(cell(bill, *row, "How counted"),
              "one for each end of installed cable drawn straight to a port; lengths still to be chosen");
    EXPECT_TRUE(cell(bill, *row, "Tags").ends_with("N211, N212, N217, N218"));
    EXPECT_EQ(cell(bill, *row, "Rooms"), "0.11, 2.04");
}

TEST(BillOfMaterials, LicencesSuppliesAndMainsLeadsHaveTheirLines) {
    SmallVenue venue;
    catalogue::DeviceType server;
    server.key = {"test.server"};
    server.kind = catalogue::DeviceKind::management_server;
    server.licences = {{"Management licence, 10 encoders", catalogue::LicencePer::encoder, 10, 2}};
    server.ports = {
        types::make_port("mains", catalogue::Signal::power, catalogue::Way::in, catalogue::Connector::iec_c14)};
    venue.b.device(server, "MS-001");
    catalogue::DeviceType ups;
    ups.key = {"test.ups-3000"};
    ups.kind = catalogue::DeviceKind::ups;
    ups.ports = {
        types::make_port("mains", catalogue::Signal::power, catalogue::Way::in, catalogue::Connector::iec_c20)};
    venue.b.device(ups, "UPS-001");
    venue.b.device(types::encoder(), "ENC-003");  // on no network, so nothing feeds it
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    const auto* licence = row_with(bill, "Description", "Management licence, 10 encoders");
    ASSERT_NE(licence, nullptr);
    EXPECT_EQ(cell(bill, *licence, "Quantity"), "2");
    EXPECT_EQ(cell(bill, *licence, "How counted"), "3 encoders: 2 for each 10 begun");
    EXPECT_EQ(cell(bill, *licence, "Tags"), "MS-001");
    const auto* supply = row_with(bill, "Description", "Plug-in supply for: Encoder");
    ASSERT_NE(supply, nullptr);
    EXPECT_EQ(cell(bill, *supply, "Quantity"), "1");
    EXPECT_EQ(cell(bill, *supply, "Tags"), "ENC-003");
    const auto* mains = row_with(bill, "Description", "Mains lead, IEC 60320 C13, for C14 inlets");
    ASSERT_NE(mains, nullptr);
    EXPECT_EQ(cell(bill, *mains, "Quantity"), "1");
    EXPECT_EQ(mains->group, "Mains leads and supplies");
    const auto* heavy = row_with(bill, "Description", "Mains lead, IEC 60320 C19, for C20 inlets");
    ASSERT_NE(heavy, nullptr);
    EXPECT_EQ(cell(bill, *heavy, "Quantity"), "1");
    EXPECT_EQ(cell(bill, *heavy, "Tags"), "UPS-001");
}

TEST(BillOfMaterials, SparesStandBesideTheQuantityAndInWhatIsOrdered) {
    SmallVenue venue;
    auto settings = venue.b.design.settings();
    settings.spares = {.endpoints_percent = 10, .of_each_lead = 3};
    venue.b.put(settings);
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    const auto* encoders = row_with(bill, "Type", types::encoder()->key.text);
    EXPECT_EQ(cell(bill, *encoders, "Quantity"), "2");
    EXPECT_EQ(cell(bill, *encoders, "Spare"), "1") << "10 % of 2, rounded up";
    EXPECT_EQ(cell(bill, *encoders, "To order"), "3");
    EXPECT_EQ(cell(bill, *encoders, "How counted"), "drawn; spare: 10 %, rounded up");
    const auto* lead = row_with(bill, "Type", types::cat6a_lead()->key.text);
    EXPECT_EQ(cell(bill, *lead, "To order"), "4");
    const auto* display = row_with(bill, "Type", types::display()->key.text);
    EXPECT_EQ(cell(bill, *display, "Spare"), "");
    EXPECT_EQ(cell(bill, *display, "To order"), "1");
}

TEST(BillOfMaterials, RacksBringTheirFittingsAndCablesTheirLabels) {
    SmallVenue venue;
    const auto rack = venue.b.rack("S-A");
    venue.b.change<model::Rack>(rack, [&](auto& row) { row.room = venue.comms; });
    venue.b.change<model::Device>(venue.sw, [&](auto& row) { row.rack = model::RackPlace{rack, 40}; });
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("bill-of-materials");
    const auto& bill = table(content);
    const std::map<std::string, std::string> by_hand{
        {"Blanking panel, 1 RU", "41"},               // 42 units, one taken
        {"Cage nuts and screws, set of four", "42"},  // the switch and 41 blanks
        {"Earthing kit for a rack", "1"},
        {"Cable label", "16"},  // eight cables, two ends each
    };
    for (const auto& [name, quantity] : by_hand) {
        const auto* row = row_with(bill, "Description", name);
        ASSERT_NE(row, nullptr) << name;
        EXPECT_EQ(cell(bill, *row, "Quantity"), quantity) << name;
        EXPECT_EQ(row->group, "Fittings and labels");
        if (name == "Cable label") continue;
        EXPECT_EQ(cell(bill, *row, "Tags"), "S-A");
        EXPECT_EQ(cell(bill, *row, "Rooms"), "0.11");
    }
    EXPECT_EQ(row_with(bill, "Description", "Rack shelf"), nullptr);
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
