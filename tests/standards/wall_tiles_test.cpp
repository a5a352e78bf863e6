// Walls of displays against tests/reference (rows DSP-018 to DSP-020).
#include "core/standards/wall_tiles.h"

#include "core/standards/viewing.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::wall_tiles {

using namespace standards;

std::string text(const PixelSize& size) { return std::to_string(size.width) + "x" + std::to_string(size.height); }

TEST(WallTiles, HiddenPixelsAreAsPublished) {
    const auto width = image_width(55 * inch, 16, 9);
    EXPECT_NEAR(static_cast<double>(width.count()) / 1920, static_cast<double>(row_number("DSP-018", 6)) / 1000, 0.001);
    const auto gap = base::Length::from_count(1'800);
    EXPECT_NEAR(static_cast<double>(hidden_thousandths(gap, width, 1920)),
                static_cast<double>(row_number("DSP-019", 6)) / 1000, 0.501);
    EXPECT_EQ(hidden_pixels(gap, width, 1920), number_after(reference_row("DSP-020").condition, "wall, ", 0));
}

TEST(WallTiles, TheCanvasIsAsPublished) {
    const WallTiles wall{3, 3, 1920, 1080, 3, 3};
    EXPECT_EQ(text(wall_canvas(wall)), reference_row("DSP-020").value);
    EXPECT_EQ(text(wall_canvas({3, 3, 1920, 1080, 0, 0})), "5760x3240") << "without compensation";
    EXPECT_EQ(text(wall_canvas(led_wall(8, 4, 176, 176))), "1408x704");
}

TEST(WallTiles, TilesAndSeamsMakeTheCanvas) {
    for (const int hidden : {0, 3, 40}) {
        const WallTiles wall{4, 2, 1920, 1080, hidden, hidden * 2};
        const auto canvas = wall_canvas(wall);
        const auto last = tile_on_canvas(wall, 3, 1);
        EXPECT_EQ(last.left + last.width, canvas.width);
        EXPECT_EQ(last.top + last.height, canvas.height);
        EXPECT_EQ(tile_on_canvas(wall, 0, 0), (PixelRectangle{0, 0, 1920, 1080}));
        EXPECT_EQ(tile_on_canvas(wall, 1, 0).left - tile_on_canvas(wall, 0, 0).width, hidden);
        EXPECT_EQ(tile_on_canvas(wall, 0, 1).top - tile_on_canvas(wall, 0, 0).height, hidden * 2);
    }
}

TEST(WallTiles, CropsOfASourceMeetWhereThereIsNoSeam) {
    // A 3840x2160 picture over 2x2 displays without seams is four quarters, by arithmetic.
    const WallTiles wall{2, 2, 1920, 1080, 0, 0};
    EXPECT_EQ(tile_of_source(wall, 1, 1, {3840, 2160}), (PixelRectangle{1920, 1080, 1920, 1080}));
    EXPECT_EQ(tile_of_source(wall, 1, 0, {1920, 1080}), (PixelRectangle{960, 0, 960, 540}));
    const WallTiles odd{3, 3, 1920, 1080, 0, 0};
    for (int row = 0; row < 3; ++row)
        for (int column = 0; column < 3; ++column) {
            const auto tile = tile_of_source(odd, column, row, {1000, 700});
            if (column < 2) {
                EXPECT_EQ(tile.left + tile.width, tile_of_source(odd, column + 1, row, {1000, 700}).left);
            }
            if (row < 2) {
                EXPECT_EQ(tile.top + tile.height, tile_of_source(odd, column, row + 1, {1000, 700}).top);
            }
        }
    const auto last = tile_of_source(odd, 2, 2, {1000, 700});
    EXPECT_EQ(last.left + last.width, 1000);
    EXPECT_EQ(last.top + last.height, 700);
}

TEST(WallTiles, SeamsHideWhatLiesBehindThem) {
    // 5766 canvas pixels of a 5766 wide source: the crop is the place on the canvas itself.
    const WallTiles wall{3, 3, 1920, 1080, 3, 3};
    for (int row = 0; row < 3; ++row)
        for (int column = 0; column < 3; ++column)
            EXPECT_EQ(tile_of_source(wall, column, row, wall_canvas(wall)), tile_on_canvas(wall, column, row));
}

}  // namespace streamwright::test::wall_tiles
