#include "tests/support/wall_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::wall_tile_missing_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr auto rule = "wall-tile-missing";

TEST(WallTileMissing, AWholeWallIsSilent) { EXPECT_THAT(rules_found(WallRoom().design()), IsEmpty()); }

TEST(WallTileMissing, FiresWhereADisplayIsMissing) {
    WallRoom r;
    r.change_wall([](auto& row) {
        row.columns = 3, row.tiles = {row.tiles[0], row.tiles[1], {}, row.tiles[2], row.tiles[3], {}};
    });
    EXPECT_THAT(rules_found(r.design()), ElementsAre(rule));
    const auto finding = finding_of(r.design(), rule);
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(english_sentence(r.design(), finding), "Wall 1 stays dark in 2 of its 6 places.");
    EXPECT_THAT(terms_of(r.design(), finding),
                ElementsAre("column 3, row 1: no display", "column 3, row 2: no display"));
    EXPECT_THAT(finding.subjects, ElementsAre(analysis::Subject(r.tiles[0])));
}

TEST(WallTileMissing, FiresOnATileThatNothingFeeds) {
    WallRoom r;
    r.unplug(3);
    const auto finding = finding_of(r.design(), rule);
    EXPECT_EQ(english_sentence(r.design(), finding), "Wall 1 stays dark in 1 of its 4 places.");
    EXPECT_THAT(terms_of(r.design(), finding), ElementsAre("column 2, row 2: nothing feeds WT-4"));
    EXPECT_THAT(finding.subjects, ElementsAre(analysis::Subject(r.tiles[3])));
}

TEST(WallTileMissing, WarnsOfAPresetThatForgetsOneTile) {
    WallRoom r;
    r.forget(2);
    EXPECT_THAT(rules_found(r.design()), ElementsAre(rule));
    const auto finding = finding_of(r.design(), rule);
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_EQ(english_sentence(r.design(), finding),
              "In Lecture WT-3 of Wall 1 show nothing, while other tiles of the wall do.");
    for (const std::size_t i : {0u, 1u, 3u}) r.forget(i);
    EXPECT_THAT(rules_found(r.design()), IsEmpty()) << "a preset may leave the wall dark";
}

TEST(WallTileMissing, ASwitcherThatMayTakeASourceIsLeftAlone) {
    // The third tile takes its picture from a source as well: nobody says which it shows.
    WallRoom r;
    r.forget(2);
    r.unplug(2);
    const auto passer = r.room.passer("SW-9", WallRoom::port(), WallRoom::port());
    r.type_of(passer, [](auto& type) {
        auto second = type.ports[0];
        second.key = {"in-2"};
        type.ports.push_back(second);
    });
    r.room.join(r.decoders[2], "out", passer);
    r.room.join(r.room.source("PC-1", WallRoom::port()), "out", passer, "in-2");
    r.room.join(passer, "out-1", r.tiles[2]);
    EXPECT_THAT(rules_found(r.design()), testing::Not(testing::Contains(rule)));
}

}  // namespace streamwright::test::wall_tile_missing_test
