#include "tests/support/wall_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::wall_tiles_differ_test {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr auto rule = "wall-tiles-differ";

TEST(WallTilesDiffer, FiresOnceOnOtherPixels) {
    WallRoom r;
    for (const std::size_t i : {2u, 3u})
        r.image(i, catalogue::ImageFacts{3840, 2160, WallRoom::length_um(1'209'600), WallRoom::length_um(680'400)});
    EXPECT_THAT(rules_found(r.design()), ElementsAre(rule));
    EXPECT_EQ(english_sentence(r.design(), finding_of(r.design(), rule)),
              "Tiles of Wall 1 differ: WT-1 has 1920 x 1080 pixels, WT-3 has 3840 x 2160.");
}

TEST(WallTilesDiffer, FiresOnAnotherSize) {
    WallRoom r;
    r.image(1, catalogue::ImageFacts{1920, 1080, WallRoom::length_um(1'018'000), WallRoom::length_um(573'000)});
    EXPECT_EQ(
        english_sentence(r.design(), finding_of(r.design(), rule)),
        "Tiles of Wall 1 differ: the image of WT-1 is 1.21 m wide and 680.4 mm high, that of WT-2 1.018 m and 573 mm.");
}

TEST(WallTilesDiffer, WhatIsNotStatedIsNotJudged) {
    WallRoom r;
    r.image(1, std::nullopt);
    r.image(2, catalogue::ImageFacts{1920, 1080, {}, {}});
    EXPECT_THAT(rules_found(r.design()), IsEmpty());
}

}  // namespace streamwright::test::wall_tiles_differ_test
