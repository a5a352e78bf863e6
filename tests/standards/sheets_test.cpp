// Drawing sheets and racks against tests/reference (rows DRW-, RACK-).
#include "core/standards/sheets.h"

#include "core/standards/rack_units.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::sheets {

using namespace standards;
using namespace base::literals;

std::string millimetres(base::Length a, base::Length b) {
    return base::print_decimal(a.count(), 3) + "x" + base::print_decimal(b.count(), 3);
}

TEST(Sheets, SizesFramesAndGridsAreAsPublished) {
    int n = 1;
    for (const auto& each : standards::sheets()) {
        const auto id = [&](int offset) { return (n + offset < 10 ? "DRW-00" : "DRW-0") + std::to_string(n + offset); };
        // The table gives the short side first, the drawing space width first, fields by long side.
        EXPECT_EQ(millimetres(std::min(each.width, each.height), std::max(each.width, each.height)),
                  reference_row(id(0)).value);
        EXPECT_EQ(millimetres(drawing_width(each), drawing_height(each)), reference_row(id(1)).value);
        EXPECT_EQ(
            std::to_string(std::max(each.columns, each.rows)) + "x" + std::to_string(std::min(each.columns, each.rows)),
            reference_row(id(2)).value);
        EXPECT_EQ(each.columns > each.rows, each.width > each.height) << each.name;
        EXPECT_EQ(reference_row(id(0)).condition, each.name);
        n += 3;
    }
    EXPECT_EQ(sheet(SheetSize::a4).name, "A4");
    EXPECT_LT(sheet(SheetSize::a4).width, sheet(SheetSize::a4).height);  // DRW-023
}

TEST(Sheets, BordersLinesAndFieldsAreAsPublished) {
    EXPECT_EQ(filing_border.count(), row_number("DRW-017", 3));
    EXPECT_EQ(other_border.count(), row_number("DRW-018", 3));
    EXPECT_EQ(frame_line.count(), row_number("DRW-019", 3));
    EXPECT_EQ(grid_line.count(), row_number("DRW-020", 3));
    EXPECT_EQ(grid_field.count(), row_number("DRW-021", 3));
    EXPECT_EQ(title_block_width.count(), row_number("DRW-024", 3));
    std::string letters;
    for (int i = 0; i < 24; ++i) letters += grid_letter(i);
    EXPECT_EQ(letters, "ABCDEFGHJKLMNPQRSTUVWXYZ");  // DRW-022
}

TEST(Sheets, TitleBlockFieldsAreAsPublished) {
    std::string mandatory, optional;
    for (const auto& field : title_fields()) {
        auto& list = field.mandatory ? mandatory : optional;
        list += (list.empty() ? "" : "; ") + std::string(field.name);
        // DRW-027: identification number / title / creator.
        const auto characters = field.name == "identification number" ? 16
                                : field.name == "title"               ? 25
                                : field.name == "creator"             ? 20
                                                                      : field.characters;
        EXPECT_EQ(field.characters, characters) << field.name;
    }
    EXPECT_EQ(mandatory, reference_row("DRW-025").value);
    EXPECT_EQ(optional, reference_row("DRW-026").value);
    EXPECT_EQ(reference_row("DRW-027").value, "16 / 25 / 20");
}

TEST(Racks, GeometryIsAsPublished) {
    EXPECT_EQ(rack_unit.count(), row_number("RACK-001", 3));
    EXPECT_EQ(rack_panel_width.count(), row_number("RACK-002", 3));
    EXPECT_EQ(rack_hole_centres.count(), row_number("RACK-003", 3));
    EXPECT_EQ(rack_hole_steps[0] + rack_hole_steps[1] + rack_hole_steps[2], rack_unit);
    EXPECT_EQ(rack_opening.count(), row_number("RACK-005", 3));
    EXPECT_EQ(reference_row("RACK-006").value, "1U panel 43.66");
    EXPECT_EQ(panel_height(1), 43'660_um);
    EXPECT_EQ(rack_height(42), 1'866'900_um);  // IEC 60297-3-100: 42 x 44.45 mm
}

}  // namespace streamwright::test::sheets
