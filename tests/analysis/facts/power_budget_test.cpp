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

/// Four decoders of class 4 that draw 12 W each, on a switch whose settings and ports are changed as said.
struct Four {
    DesignBuilder b;
    model::DeviceId bridge{0};
    explicit Four(std::optional<bool> lldp = {}, base::Power one = 60_W, std::optional<base::Power> two = 120_W) {
        auto type = types::make_switch(4, 1_Gbps, 0);
        type.bridging->poe_budget = one;
        type.bridging->poe_budget_two = two;
        bridge = b.device(type, "SW-1");
        auto decoder = types::make_decoder();
        decoder.ports[1].poe = catalogue::PoePort{catalogue::PoeSide::takes, 4, 12_W, lldp};
        for (const char* port : {"1", "2", "3", "4"})
            b.cable(types::cat6a(), port_of(b.device(decoder, std::string("DEC-") + port), "net"),
                    port_of(bridge, port), 50_m);
    }
    void set(catalogue::SupplySet supplies, std::optional<catalogue::PoeAllocation> by = {}) {
        b.change<model::Device>(bridge, [&](auto& row) {
            row.bridging.supplies = supplies;
            row.bridging.poe_allocation = by;
        });
    }
    analysis::PowerBudget budget() const {
        const auto wiring = graph::wire(b.design);
        return analysis::find_power_budget(wiring, graph::find_runs(wiring));
    }
    std::vector<bool> started() const {
        std::vector<bool> all;
        for (const auto& feed : budget().feeds) all.push_back(feed.starts);
        return all;
    }
};

TEST(PowerBudget, suppliesAddUpOrStandBy) {
    Four four;
    using enum catalogue::SupplySet;
    EXPECT_EQ(four.budget().switches[0].budget, 60_W);
    EXPECT_EQ(four.started(), (std::vector<bool>{true, true, false, false}));
    four.set(two_added);
    EXPECT_EQ(four.budget().switches[0].budget, 120_W);
    EXPECT_EQ(four.budget().switches[0].one_supply, 60_W);
    EXPECT_EQ(four.started(), (std::vector<bool>{true, true, true, true}));
    four.set(two_redundant);
    EXPECT_EQ(four.budget().switches[0].budget, 60_W);
    EXPECT_FALSE(four.budget().switches[0].one_supply);
    Four silent({}, 60_W, {});
    silent.set(two_added);
    EXPECT_FALSE(silent.budget().switches[0].budget) << "what two give is not the double unless the type says so";
}

TEST(PowerBudget, setsAsideByClassByDrawOrAsAskedFor) {
    using enum catalogue::PoeAllocation;
    const auto reserved = [](std::optional<bool> lldp, catalogue::PoeAllocation by) {
        Four four(lldp);
        four.set(catalogue::SupplySet::one, by);
        return four.budget().feeds[0].reserved;
    };
    EXPECT_EQ(reserved(true, by_class), 30_W);  // POE-023
    // 12 W over 50 m as assumed, 6.25 ohm from 50 V: I = (50 - sqrt(2500 - 4 x 12 x 6.25)) / 12.5 = 0.24767 A, 12.383
    // W.
    EXPECT_NEAR(static_cast<double>(reserved(true, by_draw).count()), 12'383, 2);
    // Asked for over LLDP: over 100 m, 12.5 ohm: I = (50 - sqrt(2500 - 600)) / 25 = 0.25644 A, 12.822 W.
    EXPECT_NEAR(static_cast<double>(reserved(true, by_lldp).count()), 12'822, 2);
    EXPECT_EQ(reserved(false, by_lldp), 30_W) << "a device that does not ask gets its class";
    EXPECT_EQ(reserved({}, by_lldp), 30_W) << "nor one of which it is not known";
}

TEST(PowerBudget, servesCriticalPortsFirst) {
    Four four;
    const auto priority = [&](const char* port, model::PoePriority value) {
        four.b.port(port_of(four.bridge, port), [&](auto& row) { row.poe.priority = value; });
    };
    priority("4", model::PoePriority::critical);
    priority("3", model::PoePriority::high);
    EXPECT_EQ(four.started(), (std::vector<bool>{false, false, true, true}));
    EXPECT_EQ(four.budget().switches[0].feeds.front(), 3);
}

TEST(PowerBudget, passesOverWhatNoLongerFits) {
    // 40 W: one of class 4 (30 W), then one limited to class 2 (7 W, POE-019) still fits.
    Four four({}, 40_W, {});
    four.b.port(port_of(four.bridge, "4"), [&](auto& row) { row.poe.limit = 10_W; });
    EXPECT_EQ(four.started(), (std::vector<bool>{true, false, false, true}));
    EXPECT_EQ(four.budget().feeds[3].granted_class, 2);
    EXPECT_EQ(four.budget().feeds[3].wanted_class, 4);
}

TEST(PowerBudget, aPortThatIsOffOrLimitedBelowClassOneFeedsNothing) {
    Four four;
    four.b.port(port_of(four.bridge, "1"), [&](auto& row) { row.poe.off = true; });
    four.b.port(port_of(four.bridge, "2"), [&](auto& row) { row.poe.limit = 3'999_mW; });  // POE-017: 4.0 W
    EXPECT_EQ(four.budget().feeds.size(), 2U);
}

TEST(PowerBudget, wattsArriveByGaugeLengthAndHeat) {
    // COP-037: 24 AWG 8.42 ohm per 100 m; two pairs in parallel make the loop the same. 30 W at 50 V: 0.6 A.
    auto cable = *types::cat6a();
    cable.key = {"test.gauged"};
    cable.awg = 24;
    Four four;
    four.b.embed(std::make_shared<const catalogue::CableType>(cable));
    for (const auto& each : model::Design(four.b.design).cables)
        four.b.change<model::Cable>(each.id, [&](auto& row) { row.type = cable.key, row.length = 100_m; });
    const auto feed = four.budget().feeds[0];
    EXPECT_TRUE(feed.cable.by_gauge);
    EXPECT_NEAR(static_cast<double>(feed.cable.microohm) / 1e6, 8.42, 0.005);
    EXPECT_NEAR(static_cast<double>(feed.arriving.count()), 30'000 - 360 * 8.42, 3);  // I^2 R = 0.36 x 8.42 W
    EXPECT_EQ(feed.supply_mv, 50'000);
    four.b.change<model::Settings>({}, [](auto& row) { row.cable_temperature = 60_degC; });
    // COP-040: 15.72 % more at 60 degrees C.
    EXPECT_NEAR(static_cast<double>(four.budget().feeds[0].cable.microohm) / 1e6, 8.42 * 1.1572, 0.006);
}

TEST(PowerBudget, feedsNothingBetweenTwoPlainPorts) {
    DesignBuilder b;
    const auto one = b.device(types::switch_24(), "SW-1"), two = b.device(types::switch_24(), "SW-2");
    b.cable(types::cat6a(), port_of(one, "1"), port_of(two, "1"), 10_m);
    const auto wiring = graph::wire(b.design);
    EXPECT_TRUE(analysis::find_power_budget(wiring, graph::find_runs(wiring)).feeds.empty());
}

}  // namespace streamwright::test::power_budget_test
