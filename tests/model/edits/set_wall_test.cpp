#include "core/model/edits/set_wall.h"

#include "core/model/clipping.h"
#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::base::literals;
using namespace streamwright::model;
using test::done, test::refused, test::row_of;

/// Four displays drawn two by two, the tags not in reading order, and an encoder.
struct FourDisplays {
    test::DesignBuilder b;
    SheetId sheet = b.sheet();
    RoomId room = b.room("1.01", "Hall");
    DeviceId left_top = b.device(test::types::display(), "D-4"), right_top = b.device(test::types::display(), "D-2");
    DeviceId left_low = b.device(test::types::display(), "D-1"), right_low = b.device(test::types::display(), "D-3");
    DeviceId encoder = b.device(test::types::encoder(), "ENC-1");
    std::vector<DeviceId> all{left_low, right_top, right_low, left_top};
    FourDisplays() {
        b.place(sheet, left_top, 10_mm, 10_mm);
        b.place(sheet, right_top, 60_mm, 10_mm);
        b.place(sheet, left_low, 10_mm, 50_mm);
        b.place(sheet, right_low, 60_mm, 50_mm);
        for (const auto id : all) b.change<Device>(id, [&](Device& row) { row.room = room; });
    }
    Wall wall() { return new_wall(b.design, WallId(7), all, sheet); }
};

TEST(SetWall, ANewWallIsAsSquareAsItsDisplaysAndInReadingOrder) {
    FourDisplays t;
    const auto wall = t.wall();
    EXPECT_EQ(wall.columns, 2);
    EXPECT_EQ(wall.rows, 2);
    EXPECT_EQ(wall.room, t.room);
    EXPECT_EQ(wall.tiles, (std::vector<std::optional<DeviceId>>{t.left_top, t.right_top, t.left_low, t.right_low}));
    const auto design = done(t.b.design, SetWall{wall});
    EXPECT_EQ(row_of<Wall>(design, WallId(7)).name, "Wall 1");
    EXPECT_EQ(wall_of(design, t.left_low)->id, WallId(7));
    EXPECT_EQ(wall_of(design, t.encoder), nullptr);
}

TEST(SetWall, ThreeStandInOneRowAndFiveTooSixStandThreeByTwo) {
    FourDisplays t;
    const auto shape = [&](int count) {
        std::vector<DeviceId> displays;
        for (int i = 0; i < count; ++i)
            displays.push_back(t.b.device(test::types::display(), "X-" + std::to_string(i)));
        const auto wall = new_wall(t.b.design, WallId(1), displays, {});
        return std::pair(wall.columns, wall.rows);
    };
    EXPECT_EQ(shape(2), std::pair(2, 1));
    EXPECT_EQ(shape(3), std::pair(3, 1));
    EXPECT_EQ(shape(5), std::pair(5, 1));
    EXPECT_EQ(shape(6), std::pair(3, 2));
    EXPECT_EQ(shape(9), std::pair(3, 3));
    EXPECT_EQ(shape(12), std::pair(4, 3));
}

TEST(SetWall, AnotherShapeKeepsColumnAndRow) {
    FourDisplays t;
    const auto wider = resized(t.wall(), 3, 2);
    EXPECT_EQ(wider.tiles, (std::vector<std::optional<DeviceId>>{t.left_top, t.right_top, std::nullopt, t.left_low,
                                                                 t.right_low, std::nullopt}));
    EXPECT_EQ(resized(wider, 2, 1).tiles, (std::vector<std::optional<DeviceId>>{t.left_top, t.right_top}));
    EXPECT_SAYS(refused(t.b.design, SetWall{resized(t.wall(), 0, 2)}), "number of columns");
}

TEST(SetWall, ATileLessLeavesItsPlaceEmpty) {
    FourDisplays t;
    const auto less = without_tile(t.wall(), t.right_top);
    ASSERT_TRUE(less);
    EXPECT_EQ(less->tiles[1], std::nullopt);
    auto lone = resized(*less, 2, 1);
    EXPECT_FALSE(without_tile(lone, t.left_top)) << "no display would be left";
}

TEST(SetWall, OnlyWhatShowsPicturesAndStandsInNoWallIsOffered) {
    FourDisplays t;
    t.b.design = done(t.b.design, SetWall{resized(t.wall(), 2, 1)});
    EXPECT_EQ(tiles_among(t.b.design, {t.encoder, t.left_top, t.left_low, t.right_low}),
              (std::vector<DeviceId>{t.left_low, t.right_low}));
}

TEST(SetWall, Refuses) {
    FourDisplays t;
    const auto with = [&](auto&& change) {
        auto row = t.wall();
        change(row);
        return refused(t.b.design, SetWall{row});
    };
    EXPECT_SAYS(with([](Wall& row) { row.rows = 0; }), "number of rows of the wall must be from 1 to 64");
    EXPECT_SAYS(with([](Wall& row) { row.columns = 65; }), "number of columns of the wall");
    EXPECT_SAYS(with([](Wall& row) { row.columns = 3; }), "A wall of 3 x 2 has 6 tiles; 4 were listed");
    EXPECT_SAYS(with([](Wall& row) { row.gap_across = -(1_mm); }), "gap across");
    EXPECT_SAYS(with([](Wall& row) { row.gap_down = 1001_mm; }), "gap down");
    EXPECT_SAYS(with([](Wall& row) { row.tiles[1] = row.tiles[0]; }), "stands twice in one wall");
    EXPECT_SAYS(with([](Wall& row) { row.tiles.assign(4, std::nullopt); }), "needs a display");
    EXPECT_SAYS(with([&](Wall& row) { row.tiles[2] = t.encoder; }), "ENC-1 shows no pictures");
    EXPECT_SAYS(with([](Wall& row) { row.tiles[2] = DeviceId(99); }), "the device");
    EXPECT_SAYS(with([](Wall& row) { row.room = RoomId(99); }), "the room");
    EXPECT_SAYS(with([](Wall& row) {
                    row.columns = row.rows = 1;
                    row.tiles.resize(1, std::nullopt);
                }),
                "two tiles or more");
    t.b.design = done(t.b.design, SetWall{resized(t.wall(), 2, 1)});
    auto other = t.wall();
    other.id = WallId(8);
    EXPECT_SAYS(refused(t.b.design, SetWall{other}), "D-4 is a tile of wall Wall 1 already");
}

TEST(SetWall, RemovingADisplayEmptiesItsPlaceAndTheLastTakesTheWallAlong) {
    FourDisplays t;
    t.b.design = done(t.b.design, SetWall{t.wall()});
    const auto three = done(t.b.design, Remove{{t.right_top}, false});
    EXPECT_EQ(row_of<Wall>(three, WallId(7)).tiles[1], std::nullopt);
    EXPECT_EQ(row_of<Wall>(three, WallId(7)).tiles[0], t.left_top);
    const auto none = done(three, Remove{{t.left_top, t.left_low, t.right_low}, false});
    EXPECT_EQ(none.walls.size(), 0u);
    const auto dissolved = done(t.b.design, Remove{{WallId(7)}, false});
    EXPECT_EQ(dissolved.walls.size(), 0u);
    EXPECT_EQ(dissolved.devices.size(), t.b.design.devices.size());
    EXPECT_FALSE(row_of<Wall>(done(t.b.design, Remove{{t.room}, false}), WallId(7)).room);
    EXPECT_SAYS(refused(dissolved, Remove{{WallId(7)}, false}), "no wall");
}

TEST(SetWall, AWallIsCopiedWithAllItsDisplays) {
    FourDisplays t;
    t.b.design = done(t.b.design, SetWall{t.wall()});
    const auto paste = [&](const std::vector<DeviceId>& devices) {
        auto clipping = copied(t.b.design, devices, t.sheet);
        return done(t.b.design, Paste{std::make_shared<const Design>(std::move(clipping)), t.sheet, {}, 5});
    };
    const auto twice = paste(t.all);
    ASSERT_EQ(twice.walls.size(), 2u);
    for (const auto& wall : twice.walls)
        if (wall.id != WallId(7)) {
            EXPECT_EQ(wall.name, "Wall 2");
            EXPECT_EQ(row_of<Device>(twice, *wall.tiles[0]).tag, "D-8") << "the next free number after D-4";
        }
    EXPECT_EQ(paste({t.left_top, t.right_top}).walls.size(), 1u) << "half a wall is none";
}

}  // namespace
