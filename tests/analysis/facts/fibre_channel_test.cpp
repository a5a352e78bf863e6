#include "core/analysis/facts/fibre_channel.h"

#include "tests/support/fibre_way.h"

#include <gtest/gtest.h>

namespace streamwright::test::fibre_channel_test {

using catalogue::CableGrade;
using catalogue::Polish;
using namespace base::literals;

TEST(FibreChannel, addsGlassPairsAndSplices) {
    // Worked example F-4: 400 m OM4 at 3.0 dB/km and two pairs of 0.75 dB are 2.7 dB; leads of 1 m each beside it.
    FibreWay way(CableGrade::om4, 400_m);
    const auto channel = way.channel();
    EXPECT_EQ(channel.joints, 2);
    EXPECT_EQ(channel.length, 402_m);
    EXPECT_EQ(channel.glass, 1206_mdB);  // 3.0 dB/km x 402 m
    EXPECT_EQ(channel.loss, 2706_mdB);
    way.fixed([](auto& row) { row.fibre = {{}, 2, 1}; });  // 2 x 0.3 + 0.75
    EXPECT_EQ(way.channel().loss, 4056_mdB);
}

TEST(FibreChannel, takesWhatTheDesignAndTheTypeState) {
    FibreWay way(CableGrade::om4, 400_m);
    way.b.change<model::Settings>({}, [](auto& row) { row.cabling.joint_loss = 500_mdB; });  // ATT-011, typical
    EXPECT_EQ(way.channel().loss, 2206_mdB);
    way.type([](auto& type) { type.loss_per_km = 2500_mdB; });  // 2.5 x 0.4 + 3.0 x 0.002
    EXPECT_EQ(way.channel().loss, 2006_mdB);
}

TEST(FibreChannel, doesNotKnowWhatNobodyStates) {
    FibreWay way(CableGrade::om4, 400_m);
    way.fixed([](auto& row) { row.length.reset(); });
    EXPECT_FALSE(way.channel().loss);
    EXPECT_FALSE(way.channel().length);
    FibreWay plain(CableGrade::none, 400_m);
    EXPECT_FALSE(plain.channel().loss);
    EXPECT_FALSE(plain.channel().swaps);
    EXPECT_FALSE(plain.channel().swaps_stated);
}

TEST(FibreChannel, addsTheSwapsOfEveryPart) {
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.crossed = true; });
    EXPECT_FALSE(way.channel().swaps);
    EXPECT_TRUE(way.channel().swaps_stated);
    way.fixed([](auto& row) { row.fibre.pair_swaps = 0; });
    EXPECT_EQ(way.channel().swaps, 2);
    way.fixed([](auto& row) { row.fibre.pair_swaps = 1; });
    EXPECT_EQ(way.channel().swaps, 3);
}

TEST(FibreChannel, cassettesCountTwoPairsAndMaySwap) {
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.crossed = false; });
    way.fixed([](auto& row) { row.fibre.pair_swaps = 0; });
    EXPECT_EQ(way.channel().swaps, 0);
    way.panel([](auto& port) { port.joints = 2; });
    EXPECT_EQ(way.channel().joints, 4);
    EXPECT_FALSE(way.channel().swaps) << "a cassette may be wired either way";
    way.panel([](auto& port) { port.crosses = true; });
    EXPECT_EQ(way.channel().swaps, 2);
}

TEST(FibreChannel, findsWhereGrindsAndKindsChange) {
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.polish = Polish::flat; });
    EXPECT_TRUE(way.channel().clashes.empty());
    way.type([](auto& type) { type.polish = Polish::angled; });
    EXPECT_EQ(way.channel().clashes.size(), 2U);
    EXPECT_FALSE(way.channel().cores_mixed);
    FibreWay old(CableGrade::om1, 50_m);
    EXPECT_TRUE(old.channel().cores_mixed);
    EXPECT_FALSE(old.channel().media_mixed);
    old.lead([](auto& type) { type.medium = catalogue::Medium::singlemode, type.grade = CableGrade::os2; });
    EXPECT_TRUE(old.channel().media_mixed);
    EXPECT_FALSE(old.channel().cores_mixed);
}

}  // namespace streamwright::test::fibre_channel_test
