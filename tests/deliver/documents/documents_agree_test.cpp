// All documents tell the same story: cables, ports, tags and revision agree wherever they appear.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::test::agreement {

TEST(DocumentsAgree, EveryCableAtASwitchIsInThePortSchedule) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto cable_content = delivered.document("cable-schedule");
    const auto port_content = delivered.document("port-schedule");
    const auto& cables = table(cable_content);
    std::set<std::pair<std::string, std::string>> by_cable, by_port;  // port of the switch, cable
    for (const auto& row : cables.rows)
        for (const std::string side : {"From", "To"})
            if (cell(cables, row, side + " device") == "SW-S2")
                by_cable.emplace(cell(cables, row, side + " port"), cell(cables, row, "Cable"));
    const auto& ports = table(port_content);
    for (const auto& row : ports.rows)
        if (const auto tag = cell(ports, row, "Cable"); !tag.empty()) by_port.emplace(cell(ports, row, "Port"), tag);
    EXPECT_EQ(by_cable, by_port);
    EXPECT_EQ(by_port.size(), 5u);
}

TEST(DocumentsAgree, EveryTableIsSquareAndCarriesTheRevision) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    for (const auto& content : delivered.all())
        for (const auto& part : content.parts) {
            const auto* each = std::get_if<deliver::TablePart>(&part);
            if (!each) continue;
            for (const auto& row : each->rows) {
                EXPECT_EQ(row.cells.size(), each->columns.size()) << content.name;
                if (each->columns.back().title == "Rev.") {
                    EXPECT_EQ(cell(*each, row, "Rev."), "C") << content.name;
                }
            }
        }
}

TEST(DocumentsAgree, TagsOfTheBillAreThoseOfTheDesign) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    std::string billed;
    const auto content = delivered.document("bill-of-materials");
    for (const auto& tags : column(table(content), "Tags")) billed += ", " + tags + ",";
    for (const auto& device : venue.b.design.devices)
        EXPECT_NE(billed.find(" " + device.tag + ","), std::string::npos) << device.tag;
    for (const auto& cable : venue.b.design.cables)
        EXPECT_NE(billed.find(" " + cable.tag + ","), std::string::npos) << cable.tag;
}

TEST(DocumentsAgree, EveryDocumentOfAnEmptyDesignIsMade) {
    const Delivered delivered{model::Design{}};
    const auto contents = delivered.all();
    EXPECT_EQ(contents.size(), deliver::all_documents().size());
    for (const auto& format : deliver::core_formats())
        EXPECT_TRUE(format.write(contents, deliver::stamp_of(delivered.design)).ok()) << format.name;
}

}  // namespace streamwright::test::agreement
