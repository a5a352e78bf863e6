// Canvas and crops against row DSP-020 (3 x 3 with 3 hidden pixels: 5766 x 3246) and arithmetic by hand.
#include "core/analysis/wall_picture.h"

#include "tests/support/wall_room.h"

#include <gtest/gtest.h>

namespace streamwright::test::wall_picture_test {

using standards::PixelRectangle;
using standards::PixelSize;

struct Worked {
    analysis::Analysis analysis;
    std::vector<analysis::WallPicture> walls;
    explicit Worked(const model::Design& design) : analysis(analysis::analyse(design)) {
        walls = analysis::find_wall_pictures(wiring(), analysis.facts.get<graph::SignalGraph>());
    }
    const graph::Wiring& wiring() const { return analysis.facts.get<graph::Wiring>(); }
};

TEST(WallPicture, CanvasAndCropsOfFourTiles) {
    const WallRoom r;
    const Worked w(r.design());
    ASSERT_EQ(w.walls.size(), 1u);
    const auto& wall = w.walls[0];
    ASSERT_TRUE(wall.raster);
    // 1.8 mm / (1209.6 mm / 1920) = 2.86, nearest 3: 2 x 1920 + 3 = 3843 and 2 x 1080 + 3 = 2163.
    EXPECT_EQ(standards::wall_canvas(*wall.raster), (PixelSize{3843, 2163}));
    EXPECT_EQ(standards::tile_on_canvas(*wall.raster, 1, 1), (PixelRectangle{1923, 1083, 1920, 1080}));
    // Of 1080p the left tile lights 1920 x 1920 / 3843 = 959.25 columns.
    EXPECT_EQ(standards::tile_of_source(*wall.raster, 0, 0, {1920, 1080}), (PixelRectangle{0, 0, 959, 539}));
    EXPECT_EQ(wall.width, WallRoom::length_um(2 * 1'209'600 + 1'800));
    EXPECT_EQ(wall.height, WallRoom::length_um(2 * 680'400 + 1'800));
}

TEST(WallPicture, WhoFeedsEachTileAndWithWhat) {
    WallRoom r;
    const Worked w(r.design());
    for (std::size_t i = 0; i < 4; ++i) {
        const auto* feed = w.walls[0].tiles[i].decoder();
        ASSERT_NE(feed, nullptr);
        EXPECT_EQ(w.wiring().devices[static_cast<std::size_t>(feed->device)].row->id, r.decoders[i]);
        EXPECT_EQ(feed->delay, base::Duration::from_count(16'700'000));
        const auto shown = analysis::shown_by(w.wiring(), feed->device, r.room.preset);
        ASSERT_EQ(shown.size(), 1u);
        EXPECT_EQ(shown[0]->id, r.stream);
        const auto& chains = w.analysis.facts.get<analysis::VideoChains>();
        EXPECT_EQ(analysis::source_size(chains, w.wiring(), *shown[0]), (PixelSize{1920, 1080}));
    }
}

TEST(WallPicture, ALoopThroughAddsOnlyWhatTheLastShows) {
    // The second tile hangs on the first: it is fed by the first's decoder and as late as the first.
    WallRoom r;
    r.state_delays(base::Duration::from_count(10'000'000));
    r.unplug(1);
    r.type_of(r.tiles[0], [](auto& type) {
        type.ports.push_back(type.ports[0]);
        type.ports.back().key = {"loop"};
        type.ports.back().way = catalogue::Way::out;
    });
    r.room.join(r.tiles[0], "loop", r.tiles[1]);
    const Worked w(r.design());
    EXPECT_EQ(w.walls[0].tiles[1].feeds, w.walls[0].tiles[0].feeds);
    EXPECT_EQ(w.walls[0].tiles[1].feeds.size(), 1u);
}

TEST(WallPicture, NoCanvasWhereItIsNotKnown) {
    WallRoom unlike;
    unlike.image(2, catalogue::ImageFacts{1280, 720, {}, {}});
    EXPECT_FALSE(Worked(unlike.design()).walls[0].raster);
    WallRoom unstated;
    unstated.image(2, std::nullopt);
    EXPECT_FALSE(Worked(unstated.design()).walls[0].raster);
    WallRoom sizeless;
    for (std::size_t i = 0; i < 4; ++i) sizeless.image(i, catalogue::ImageFacts{1920, 1080, {}, {}});
    EXPECT_FALSE(Worked(sizeless.design()).walls[0].raster) << "a gap without a size is so many pixels, nobody knows";
    sizeless.change_wall([](auto& row) { row.gap_across = row.gap_down = {}; });
    const auto wall = Worked(sizeless.design()).walls[0];
    ASSERT_TRUE(wall.raster);
    EXPECT_EQ(standards::wall_canvas(*wall.raster), (PixelSize{3840, 2160}));
    EXPECT_FALSE(wall.height);
}

TEST(WallPicture, CabinetsAreFedThroughTheirProcessor) {
    LedRoom r(std::nullopt);
    r.chain("data-1", 2, catalogue::ImageFacts{320, 180, {}, {}});
    auto row = model::Wall::blank(model::WallId(5));
    row.rows = 1;
    for (const auto& device : r.design().devices)
        if (device.type.text.starts_with("test.cabinet")) row.tiles.emplace_back(device.id);
    r.c.b.put(row);
    const Worked w(r.design());
    for (const auto& tile : w.walls[0].tiles) {
        ASSERT_EQ(tile.feeds.size(), 1u);
        EXPECT_FALSE(tile.feeds[0].decoder) << "a source on a lead";
        EXPECT_EQ(w.wiring().devices[static_cast<std::size_t>(tile.feeds[0].device)].row->tag, "SRC-9");
    }
    EXPECT_EQ(standards::wall_canvas(*w.walls[0].raster), (PixelSize{640, 180}));
}

}  // namespace streamwright::test::wall_picture_test
