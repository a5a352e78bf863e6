#include "core/analysis/facts/power_budget.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::test::power_budget_test {

using namespace base::literals;

/// One device of that class and draw at the end of a cable of that length.
analysis::PowerBudget one_feed(int poe_class, base::Power draw, std::optional<base::Length> length, bool by_class) {
    DesignBuilder b;
    auto bridge = types::make_switch(4, 1_Gbps, 0);
    bridge.bridging->poe_by_class = by_class;
    for (auto& port : bridge.ports) port.poe->poe_class = 8;
    auto type = types::make_decoder();
    type.ports[1].poe = catalogue::PoePort{catalogue::PoeSide::takes, poe_class, draw};
    const auto id = b.device(bridge, "SW-1"), decoder = b.device(type, "DEC-1");
    b.cable(types::cat6a(), port_of(decoder, "net"), port_of(id, "1"), length);
    const auto wiring = graph::wire(b.design);
    return analysis::find_power_budget(wiring, graph::find_runs(wiring));
}

TEST(PowerBudget, reservesTheClassAtTheSupply) {
    // network-values.csv POE-015 to POE-032: power at the supplying port and at the device.
    const std::pair<int, base::Power> classes[] = {{0, 15'400_mW}, {1, 4_W},  {2, 7_W},  {3, 15'400_mW}, {4, 30_W},
                                                   {5, 45_W},      {6, 60_W}, {7, 75_W}, {8, 90_W}};
    for (const auto& [number, supplied] : classes) {
        const auto budget = one_feed(number, 1_W, 100_m, true);
        ASSERT_EQ(budget.feeds.size(), 1u);
        EXPECT_EQ(budget.switches[0].reserved, supplied) << "class " << number;
        EXPECT_EQ(budget.switches[0].budget, 740_W);
    }
}

TEST(PowerBudget, addsTheCableLossToTheDraw) {
    // Worked example P-9: 25.5 W over 12.5 ohm from 50 V are 30.0 W at the supply; half the cable loses about half.
    EXPECT_EQ(one_feed(4, 25'500_mW, 100_m, false).switches[0].drawn, 30_W);
    const auto half = one_feed(4, 25'500_mW, 50_m, false).switches[0].drawn;
    // 50 V, 6.25 ohm, 25.5 W: I = (50 - sqrt(2500 - 4 x 25.5 x 6.25)) / 12.5 = 0.5477 A, 27.375 W (by hand).
    EXPECT_NEAR(static_cast<double>(half.count()), 27'375, 15);
}

TEST(PowerBudget, assumesTheFullHundredMetresWithoutALength) {
    EXPECT_EQ(one_feed(4, 25'500_mW, {}, false).switches[0].drawn, 30_W);
}

TEST(PowerBudget, drawsTheClassWhereTheTypeStatesNoDraw) {
    EXPECT_EQ(one_feed(3, {}, 100_m, true).feeds[0].drawn, 12'950_mW);
}

TEST(PowerBudget, feedsNothingBetweenTwoPlainPorts) {
    DesignBuilder b;
    const auto one = b.device(types::switch_24(), "SW-1"), two = b.device(types::switch_24(), "SW-2");
    b.cable(types::cat6a(), port_of(one, "1"), port_of(two, "1"), 10_m);
    const auto wiring = graph::wire(b.design);
    EXPECT_TRUE(analysis::find_power_budget(wiring, graph::find_runs(wiring)).feeds.empty());
}

}  // namespace streamwright::test::power_budget_test
