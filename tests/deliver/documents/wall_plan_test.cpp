// Canvas, cuts and scaling of a wall by arithmetic, and what differs by preset.
#include "tests/deliver/small_venue.h"
#include "tests/support/wall_room.h"

#include <gtest/gtest.h>

namespace streamwright::test::wall_plan {

const deliver::TablePart& part(const deliver::Content& content, std::size_t index) {
    return std::get<deliver::TablePart>(content.parts.at(index));
}

TEST(WallPlan, SaysTheCanvasOfEachWall) {
    const WallRoom r;
    const Delivered delivered(r.design());
    const auto content = delivered.document("wall-plan");
    const auto& walls = part(content, 0);
    const auto* row = row_with(walls, "Wall", "Wall 1");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(walls, *row, "Pixels of a tile"), "1920 x 1080");
    EXPECT_EQ(cell(walls, *row, "Canvas"), "3843 x 2163");
    EXPECT_EQ(cell(walls, *row, "Hidden in a seam"), "3 across, 3 down");
    EXPECT_EQ(std::get<base::Length>(row->cells[7]), WallRoom::length_um(2'421'000)) << "2 x 1209.6 + 1.8 mm";
}

// Of a 1920 x 1080 picture over 3843 x 2163: the right low tile begins at 1923 x 1920 / 3843 = 960.75, nearest 961,
// and ends with the picture; 1920 / 959 = 2.002.
TEST(WallPlan, CutsOnePictureForAllTiles) {
    const WallRoom r;
    const Delivered delivered(r.design());
    const auto content = delivered.document("wall-plan");
    const auto& tiles = part(content, 1);
    ASSERT_EQ(tiles.rows.size(), 4u);
    const auto* row = row_with(tiles, "Display", "WT-4");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(tiles, *row, "Place"), "column 2, row 2");
    EXPECT_EQ(cell(tiles, *row, "Fed by"), "DEC-4");
    EXPECT_EQ(cell(tiles, *row, "On canvas"), "1923, 1083");
    EXPECT_EQ(cell(tiles, *row, "Preset"), "Lecture");
    EXPECT_EQ(cell(tiles, *row, "Source"), "1920 x 1080");
    EXPECT_EQ(std::get<std::int64_t>(row->cells[8]), 961);
    EXPECT_EQ(std::get<std::int64_t>(row->cells[10]), 1920 - 961);
    EXPECT_EQ(cell(tiles, *row, "Scaled"), "x 2.00");
}

TEST(WallPlan, ARowForEachPresetWhereTheyDiffer) {
    WallRoom r;
    const auto second = r.room.b.preset("Evening"), third = r.room.b.preset("Dark");
    const auto other = r.room.encoder("ENC-2", WallRoom::port());
    const auto source = r.room.source("PLAYER-2", WallRoom::port());
    r.room.join(source, "out", other);
    r.room.set(source, "out", "2160p60");
    const auto stream = r.room.stream(other);
    r.room.b.subscribe(second, stream, r.decoders[0]);
    r.room.b.subscribe(second, r.stream, r.decoders[1]);
    const Delivered delivered(r.design());
    const auto content = delivered.document("wall-plan");
    const auto& tiles = part(content, 1);
    std::vector<std::vector<std::string>> found;
    for (const auto& row : tiles.rows)
        if (cell(tiles, row, "Display") == "WT-1")
            found.push_back({cell(tiles, row, "Preset"), cell(tiles, row, "Source"), cell(tiles, row, "Scaled")});
    // A 3840 x 2160 picture of its own, whole on 1920 x 1080: half.
    EXPECT_EQ(found, (std::vector<std::vector<std::string>>{{"Lecture", "1920 x 1080", "x 2.00"},
                                                            {"Evening", "3840 x 2160", "x 0.50"}}));
    EXPECT_FALSE(row_with(tiles, "Preset", "Dark")) << "nothing is shown in it";
    (void)third;
}

TEST(WallPlan, SaysWhatIsMissing) {
    WallRoom r;
    r.unplug(1);
    r.image(2, std::nullopt);
    r.change_wall([](auto& row) { row.tiles[3].reset(); });
    const Delivered delivered(r.design());
    const auto content = delivered.document("wall-plan");
    EXPECT_EQ(cell(part(content, 0), part(content, 0).rows.at(0), "Canvas"), "");
    EXPECT_EQ(cell(part(content, 0), part(content, 0).rows.at(0), "Pixels of a tile"), "not known");
    EXPECT_EQ(cell(part(content, 1), *row_with(part(content, 1), "Display", "WT-2"), "Fed by"), "none");
    EXPECT_EQ(cell(part(content, 1), *row_with(part(content, 1), "Place", "column 2, row 2"), "Display"), "none");
}

}  // namespace streamwright::test::wall_plan
