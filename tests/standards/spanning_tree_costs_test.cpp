// Path costs, priorities and timers against tests/reference (rows STP-, examples S-8 to S-10).
#include "core/standards/spanning_tree_costs.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::tree_costs {

using namespace standards;
using namespace base::literals;

TEST(TreeCosts, LongCostsAreAsPublished) {
    struct Case {
        const char* id;
        base::BitRate speed;
    };
    const Case cases[] = {{"STP-006", 1_Mbps},    {"STP-007", 10_Mbps},    {"STP-008", 100_Mbps},
                          {"STP-009", 1_Gbps},    {"STP-010", 10_Gbps},    {"STP-011", 100_Gbps},
                          {"STP-012", 1000_Gbps}, {"STP-013", 10000_Gbps}, {"STP-014", 2500_Mbps},
                          {"STP-015", 5_Gbps},    {"STP-016", 25_Gbps},    {"STP-017", 40_Gbps}};
    for (const auto& [id, speed] : cases) EXPECT_EQ(long_path_cost(speed), row_number(id, 0)) << id;
    for (const auto& [mbps, label] : {std::pair{100, ": 100 ->"},
                                      {1000, "; 1000 ->"},
                                      {2500, "; 2500 ->"},
                                      {5000, "; 5000 ->"},
                                      {10000, "; 10000 ->"},
                                      {25000, "; 25000 ->"},
                                      {40000, "; 40000 ->"},
                                      {100000, "; 100000 ->"}}) {
        const auto text = reference_example("S-8").expected;
        const auto found = text.find(std::string(label).substr(1));
        ASSERT_NE(found, std::string::npos) << label;
        EXPECT_EQ(std::to_string(long_path_cost(1_Mbps * mbps)),
                  text.substr(found + std::string(label).size(), std::to_string(long_path_cost(1_Mbps * mbps)).size()));
    }
}

TEST(TreeCosts, LongCostsStayInTheirRange) {
    EXPECT_EQ(reference_row("STP-019").value, "1 to 200,000,000");
    EXPECT_EQ(long_path_cost(100000_Gbps), 1);
    EXPECT_EQ(long_path_cost(1_bps), 200'000'000);
    EXPECT_EQ(long_path_cost(0_bps), 200'000'000);
}

TEST(TreeCosts, ShortCostsAreAsPublishedAndBlindAboveTenGigabit) {
    EXPECT_EQ(short_path_cost(10_Mbps), row_number("STP-001", 0));
    EXPECT_EQ(short_path_cost(100_Mbps), row_number("STP-002", 0));
    EXPECT_EQ(short_path_cost(1_Gbps), row_number("STP-003", 0));
    EXPECT_EQ(short_path_cost(10_Gbps), row_number("STP-004", 0));
    for (const auto speed : {25_Gbps, 40_Gbps, 100_Gbps}) EXPECT_EQ(short_path_cost(speed), row_number("STP-005", 0));
    EXPECT_EQ(short_path_cost(2500_Mbps), 4);
    EXPECT_EQ(short_cost_source(25_Gbps).standing, Standing::practice);
}

TEST(TreeCosts, PrioritiesGoInSteps) {
    EXPECT_EQ(usual_bridge_priority, row_number("STP-020", 0));
    EXPECT_EQ(reference_row("STP-021").value, "0 to 61440 in steps of 4096");
    EXPECT_TRUE(bridge_priority_valid(0));
    EXPECT_TRUE(bridge_priority_valid(4096));  // S-9
    EXPECT_FALSE(bridge_priority_valid(5000));
    EXPECT_TRUE(bridge_priority_valid(61440));
    EXPECT_FALSE(bridge_priority_valid(65536));
    EXPECT_FALSE(bridge_priority_valid(-4096));
    EXPECT_EQ(reference_row("STP-023").value, "128 / 16");
    EXPECT_TRUE(port_priority_valid(128));
    EXPECT_FALSE(port_priority_valid(129));
    EXPECT_FALSE(port_priority_valid(256));
}

TEST(TreeCosts, TimersHoldTheirRelation) {
    EXPECT_TRUE(tree_timers_valid({}));                                         // S-10: 28 >= 20 >= 6
    EXPECT_FALSE(tree_timers_valid({.max_age_s = 20, .forward_delay_s = 10}));  // 18 < 20
    EXPECT_FALSE(tree_timers_valid({.hello_s = 10, .max_age_s = 20}));          // 20 < 22
    EXPECT_FALSE(tree_timers_valid({.max_age_s = 41, .forward_delay_s = 30}));
}

}  // namespace streamwright::test::tree_costs
