// Power over Ethernet against tests/reference (rows POE-, examples P-).
#include "core/standards/poe.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::poe {

using namespace standards;
using namespace base::literals;

TEST(Poe, EachClassIsAsPublished) {
    // POE-015 to POE-032: class 0 supply, class 0 device, class 1 supply, ...
    for (int number = 0; number <= 8; ++number) {
        const auto* row = poe_class(number);
        ASSERT_TRUE(row);
        const auto supply = "POE-0" + std::to_string(15 + 2 * number),
                   device = "POE-0" + std::to_string(16 + 2 * number);
        EXPECT_EQ(reference_row(supply).quantity, "class " + std::to_string(number) + " PSE output power");
        EXPECT_EQ(row->number, number);
        EXPECT_EQ(row->at_supply.count(), row_number(supply, 3)) << supply;
        EXPECT_EQ(row->at_device.count(), row_number(device, 3)) << device;
        const auto condition = "Type " + std::to_string(row->type) + ", " + std::to_string(row->pairs) + "-pair";
        EXPECT_EQ(reference_row(supply).condition, condition);
    }
    EXPECT_FALSE(poe_class(9));
    EXPECT_FALSE(poe_class(-1));
}

TEST(Poe, EachTypeIsAsPublished) {
    for (int type = 1; type <= 4; ++type) {
        const auto* row = poe_type(type);
        ASSERT_TRUE(row);
        const auto range = reference_row("POE-00" + std::to_string(type)).value;
        EXPECT_EQ(range,
                  std::to_string(row->least_supply_mv / 1000) + " to " + std::to_string(row->most_supply_mv / 1000));
        EXPECT_EQ(row->least_device_mv, row_number("POE-00" + std::to_string(4 + type), 3));
    }
    EXPECT_EQ(poe_type(1)->pair_set_ma, row_number("POE-009", 0));
    EXPECT_EQ(poe_type(2)->pair_set_ma, row_number("POE-010", 0));
    EXPECT_EQ(poe_type(3)->pair_set_ma, row_number("POE-010", 0));
    EXPECT_EQ(poe_type(4)->pair_set_ma, row_number("POE-011", 0));
    EXPECT_EQ(poe_type(1)->loop_milliohm, row_number("POE-012", 3));
    EXPECT_EQ(poe_type(2)->loop_milliohm, row_number("POE-013", 3));
    EXPECT_EQ(poe_type(4)->loop_milliohm, row_number("POE-014", 3));
    EXPECT_FALSE(poe_type(0));
    EXPECT_FALSE(poe_type(5));
}

TEST(Poe, TheSmallestSufficientClassIsFound) {
    EXPECT_EQ(class_for_draw(3840_mW), 1);
    EXPECT_EQ(class_for_draw(3841_mW), 2);
    EXPECT_EQ(class_for_draw(12950_mW), 3);
    EXPECT_EQ(class_for_draw(25_W), 4);
    EXPECT_EQ(class_for_draw(71300_mW), 8);
    EXPECT_EQ(class_for_draw(71301_mW), std::nullopt);
}

struct Case {
    const char* id;
    int number;
    std::int64_t volts, watts_tenths, microohm;
};
const Case class_cases[] = {{"P-1", 0, 44, 154, 20'000'000}, {"P-2", 1, 44, 40, 20'000'000},
                            {"P-3", 2, 44, 70, 20'000'000},  {"P-4", 4, 50, 300, 12'500'000},
                            {"P-5", 5, 50, 450, 6'250'000},  {"P-6", 6, 50, 600, 6'250'000},
                            {"P-7", 7, 52, 750, 6'250'000},  {"P-8", 8, 52, 900, 6'250'000}};

TEST(Poe, ClassPowersFollowFromCircuitArithmetic) {
    for (const auto& each : class_cases) {
        const auto flow = feed_from_supply(100_mW * each.watts_tenths, each.volts * 1000, each.microohm);
        EXPECT_NEAR(static_cast<double>(flow.current_ua), static_cast<double>(example_number(each.id, "I A", 6)), 50)
            << each.id;
        EXPECT_EQ(flow.device_mv, example_number(each.id, "Vpd V", 3)) << each.id;
        EXPECT_EQ(flow.at_device.count(), example_number(each.id, "Pd W", 3)) << each.id;
        // The table rounds the arithmetic to at most a tenth of a watt.
        EXPECT_NEAR(static_cast<double>(poe_class(each.number)->at_device.count()),
                    static_cast<double>(flow.at_device.count()), 65)
            << each.id;
    }
}

void expect_flow(const char* id, const std::optional<PoeFlow>& flow) {
    ASSERT_TRUE(flow) << id;
    EXPECT_NEAR(static_cast<double>(flow->current_ua), static_cast<double>(example_number(id, "I A", 6)), 50) << id;
    EXPECT_NEAR(static_cast<double>(flow->device_mv), static_cast<double>(example_number(id, "Vpd V", 3)), 1) << id;
    EXPECT_NEAR(static_cast<double>(flow->at_supply.count()), static_cast<double>(example_number(id, "Ppse W", 3)), 1)
        << id;
    EXPECT_NEAR(static_cast<double>(flow->lost.count()), static_cast<double>(example_number(id, "loss W", 3)), 1) << id;
}

TEST(Poe, DesignCasesComeOut) {
    expect_flow("P-9", feed_device(25500_mW, 50'000, 12'500'000));
    expect_flow("P-10", feed_device(25500_mW, 50'000, *loop_microohm(24, 100_m, 2)));
    expect_flow("P-11", feed_device(25500_mW, 54'000, *loop_microohm(24, 60_m, 2)));
    expect_flow("P-13", feed_device(71300_mW, 52'000, *loop_microohm(23, 100_m, 4)));
    expect_flow("P-14", feed_device(71300_mW, 52'000, *loop_microohm(24, 100_m, 4)));
}

TEST(Poe, ResistanceOfAChannelFollowsItsGaugeLengthPairsAndHeat) {
    EXPECT_NEAR(static_cast<double>(*loop_microohm(24, 100_m, 2)) / 1e4, static_cast<double>(row_number("COP-037", 2)),
                1);
    EXPECT_NEAR(static_cast<double>(*loop_microohm(23, 100_m, 2)) / 1e4, static_cast<double>(row_number("COP-036", 2)),
                1);
    EXPECT_NEAR(static_cast<double>(*loop_microohm(22, 100_m, 2)) / 1e4, static_cast<double>(row_number("COP-035", 2)),
                1);
    EXPECT_NEAR(static_cast<double>(*loop_microohm(26, 100_m, 2)) / 1e4, static_cast<double>(row_number("COP-038", 2)),
                1);
    EXPECT_NEAR(static_cast<double>(*loop_microohm(28, 100_m, 2)) / 1e4, static_cast<double>(row_number("COP-039", 2)),
                1);
    // At 60 degrees C copper resists 15.7 % more (COP-040: 0.00393 per degree).
    const auto cold = static_cast<double>(*loop_microohm(24, 100_m, 2));
    EXPECT_NEAR(static_cast<double>(*loop_microohm(24, 100_m, 2, 60_degC)) / cold, 1.1572, 0.0001);
    EXPECT_EQ(loop_microohm(25, 100_m, 2), std::nullopt);
    EXPECT_EQ(loop_microohm(24, 100_m, 3), std::nullopt);
}

TEST(Poe, MoreThanTheCableCarriesIsRefused) {
    // V^2 < 4 P R: 50 x 50 = 2500 < 4 x 60 x 12.5 = 3000.
    EXPECT_EQ(feed_device(60_W, 50'000, 12'500'000), std::nullopt);
    EXPECT_TRUE(feed_device(50_W, 50'000, 12'500'000));  // 2500 = 4 x 50 x 12.5: just
    const auto no_cable = feed_device(50_W, 50'000, 0);
    ASSERT_TRUE(no_cable);
    EXPECT_EQ(no_cable->current_ua, 1'000'000);
    EXPECT_EQ(no_cable->lost, 0_W);
}

TEST(Poe, SupplyBudgetSumsTheWattsAtTheSupply) {
    const auto sum = poe_class(4)->at_supply * 8 + poe_class(6)->at_supply * 4;
    EXPECT_EQ(sum.count(), example_number("P-17", "4 x 60 =", 3));
    EXPECT_EQ((poe_class(4)->at_device * 8 + poe_class(6)->at_device * 4).count(),
              example_number("P-17", "PD sum is", 3));
}

}  // namespace streamwright::test::poe
