// Sizes against ISO 216 (A series, trimmed) and the grid of ISO 5457 (50 mm fields, no I or O).
#include "core/deliver/drawing/sheet_size.h"

#include <gtest/gtest.h>

namespace streamwright::deliver {
namespace {

using model::PaperSize;
using namespace base::literals;

struct Iso216 {
    PaperSize paper;
    base::Length width, height;  // ISO 216 table: A0 841 x 1189, A1 594 x 841, A2 420 x 594, A3 297 x 420, A4 210 x 297
};
constexpr Iso216 iso216[] = {{PaperSize::a0, 1189_mm, 841_mm},
                             {PaperSize::a1, 841_mm, 594_mm},
                             {PaperSize::a2, 594_mm, 420_mm},
                             {PaperSize::a3, 420_mm, 297_mm},
                             {PaperSize::a4, 210_mm, 297_mm}};

TEST(SheetSize, FollowsIso216) {
    for (const auto& [paper, width, height] : iso216) {
        EXPECT_EQ(sheet_size(paper).width, width);
        EXPECT_EQ(sheet_size(paper).height, height);
    }
}

TEST(SheetSize, FrameLeavesTwentyMillimetresToFileAndTenElsewhere) {
    for (const auto& [paper, width, height] : iso216) {
        const auto frame = sheet_size(paper).frame;
        EXPECT_EQ(frame.at.x, 20_mm);
        EXPECT_EQ(frame.at.y, 10_mm);
        EXPECT_EQ(frame.at.x + frame.width, width - 10_mm);
        EXPECT_EQ(frame.at.y + frame.height, height - 10_mm);
    }
}

TEST(GridReference, A3HasEightBySixFields) {  // ISO 5457, number of fields: A3 6 x 8
    const auto grid = grid_reference(PaperSize::a3);
    EXPECT_EQ(grid.columns, 8);
    EXPECT_EQ(grid.rows, 6);
    EXPECT_EQ(grid.first_x, 60_mm);
}

TEST(GridReference, OtherSizesByIso5457) {  // A0 16 x 24, A1 12 x 16, A2 8 x 12, A4 4 x 6 (rows x columns; A4 upright)
    EXPECT_EQ(grid_reference(PaperSize::a0).columns, 24);
    EXPECT_EQ(grid_reference(PaperSize::a0).rows, 16);
    EXPECT_EQ(grid_reference(PaperSize::a1).columns, 16);
    EXPECT_EQ(grid_reference(PaperSize::a1).rows, 12);
    EXPECT_EQ(grid_reference(PaperSize::a2).columns, 12);
    EXPECT_EQ(grid_reference(PaperSize::a2).rows, 8);
    EXPECT_EQ(grid_reference(PaperSize::a4).columns, 4);
    EXPECT_EQ(grid_reference(PaperSize::a4).rows, 6);
}

TEST(Zone, NamesTheFieldOfAPoint) {
    EXPECT_EQ(zone_of(PaperSize::a3, {25_mm, 15_mm}), "A1");
    EXPECT_EQ(zone_of(PaperSize::a3, {165_mm, 110_mm}), "C4");
    EXPECT_EQ(zone_of(PaperSize::a3, {409_mm, 286_mm}), "F8");
}

TEST(Zone, LeavesOutIAndO) {
    std::string letters;
    for (int row = 0; row < 16; ++row) letters += zone_letter(row);
    EXPECT_EQ(letters, "ABCDEFGHJKLMNPQR");
}

}  // namespace
}  // namespace streamwright::deliver
