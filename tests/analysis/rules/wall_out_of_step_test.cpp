#include "tests/support/wall_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::wall_out_of_step_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;

constexpr auto rule = "wall-out-of-step";

base::Duration us(std::int64_t count) { return base::Duration::from_count(count * 1000); }

/// The decoder shows another stream instead.
void show_instead(WallRoom& r, std::size_t tile, model::StreamId stream) {
    r.forget(tile);
    r.room.show(stream, r.decoders[tile]);
}

TEST(WallOutOfStep, LikeDecodersAreInStepWhetherTheyStateTheirDelayOrNot) {
    WallRoom r;
    EXPECT_THAT(rules_found(r.design()), IsEmpty());
    const auto one_type = r.design().devices.find(r.decoders[0])->type;
    for (const auto id : r.decoders) r.room.b.change<model::Device>(id, [&](auto& row) { row.type = one_type; });
    r.delay(0, std::nullopt);
    EXPECT_THAT(rules_found(r.design()), IsEmpty());
}

// 25.0333 - 16.7 = 8.3333 ms is half a frame of 60 a second; a microsecond more is past it.
TEST(WallOutOfStep, TellsTheFigurePastHalfAFrame) {
    WallRoom r;
    r.state_delays(us(16'700));
    r.delay(1, us(16'700) + base::Duration::from_count(8'333'333));
    EXPECT_THAT(rules_found(r.design()), IsEmpty());
    r.delay(1, us(50'000));
    r.delay(2, us(20'000));
    EXPECT_THAT(rules_found(r.design()), ElementsAre(rule));
    const auto finding = finding_of(r.design(), rule);
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_EQ(finding.measured, base::Value(us(33'300))) << "50 - 16.7";
    EXPECT_EQ(english_sentence(r.design(), finding),
              "In Lecture WT-2 of Wall 1 shows ENC-1 by 33.3 ms later than WT-1.");
    EXPECT_THAT(terms_of(r.design(), finding), ElementsAre("WT-2 by DEC-2: 70 ms", "WT-1 by DEC-1: 36.7 ms"));
}

TEST(WallOutOfStep, CountsWhatTheDisplaysTakeThemselves) {
    WallRoom r;
    r.state_delays(us(16'700));
    r.type_of(r.tiles[3], [](auto& type) { type.delay = us(40'000); });
    EXPECT_EQ(finding_of(r.design(), rule).measured, base::Value(us(20'000)));
}

TEST(WallOutOfStep, UnlikeDecodersOfUnknownDelayAreAdvice) {
    WallRoom r;
    r.state_delays(us(16'700));
    r.delay(1, std::nullopt);
    const auto finding = finding_of(r.design(), rule);
    EXPECT_EQ(finding.severity, Severity::advice);
    EXPECT_EQ(
        english_sentence(r.design(), finding),
        "In Lecture tiles of Wall 1 show ENC-1 through unlike decoders, DEC-1 and DEC-2, whose delay is not stated.");
}

TEST(WallOutOfStep, FiresOnTwoStreamsOfOneEncoder) {
    WallRoom r;
    const auto small = r.room.stream(r.encoder);
    r.room.b.change<model::Stream>(small, [](auto& row) { row.tag = "S-LOW"; });
    r.room.b.change<model::Stream>(r.stream, [](auto& row) { row.tag = "S-HIGH"; });
    show_instead(r, 3, small);
    EXPECT_THAT(rules_found(r.design()), ElementsAre(rule));
    EXPECT_EQ(english_sentence(r.design(), finding_of(r.design(), rule)),
              "In Lecture tiles of Wall 1 show ENC-1 from different streams: WT-1 takes S-HIGH, WT-4 takes S-LOW.");
}

TEST(WallOutOfStep, FiresOnTwoEncodersOfOneSource) {
    // A splitter feeds a second encoder from the same player.
    WallRoom r;
    for (const auto& cable : r.design().cables)
        if (cable.a && cable.a->port.device == r.source) {
            r.room.b.design.cables.erase(cable.id);
            break;
        }
    const auto splitter = r.room.passer("SPL-1", WallRoom::port(), WallRoom::port(), 2);
    const auto second = r.room.encoder("ENC-2", WallRoom::port());
    r.room.join(r.source, "out", splitter);
    r.room.join(splitter, "out-1", r.encoder);
    r.room.join(splitter, "out-2", second);
    EXPECT_THAT(rules_found(r.design()), testing::Not(testing::Contains(rule)));
    show_instead(r, 3, r.room.stream(second));
    EXPECT_THAT(rules_found(r.design()), testing::Contains(rule));
}

TEST(WallOutOfStep, AMosaicOfSourcesKeepsNoStep) {
    WallRoom r;
    r.state_delays(us(16'700));
    r.delay(1, us(50'000));
    for (std::size_t i = 1; i < 4; ++i) {
        const auto n = std::to_string(i + 1);
        const auto encoder = r.room.encoder("ENC-" + n, WallRoom::port());
        const auto source = r.room.source("PLAYER-" + n, WallRoom::port());
        r.room.join(source, "out", encoder);
        r.room.set(source, "out", "1080p60");
        show_instead(r, i, r.room.stream(encoder));
    }
    EXPECT_THAT(rules_found(r.design()), IsEmpty());
}

}  // namespace streamwright::test::wall_out_of_step_test
