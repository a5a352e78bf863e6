// Loss budgets and channel losses against tests/reference (rows LOSS-, ATT-, examples F-).
#include "core/standards/fibre_loss.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::test::fibre_losses {

using namespace standards;
using namespace base::literals;
using enum FibreGrade;

struct RowOf {
    const char* id;
    const char* phy;
    FibreGrade grade;
};
const RowOf rows_of[] = {
    {"LOSS-001", "1000BASE-SX", om1},  {"LOSS-002", "1000BASE-SX", om2},  {"LOSS-003", "1000BASE-LX", om2},
    {"LOSS-004", "1000BASE-LX", os2},  {"LOSS-005", "10GBASE-SR", om3},   {"LOSS-006", "10GBASE-SR", om4},
    {"LOSS-007", "10GBASE-SR", om2},   {"LOSS-008", "10GBASE-SR", om1},   {"LOSS-009", "10GBASE-LRM", om3},
    {"LOSS-010", "10GBASE-LR", os2},   {"LOSS-011", "10GBASE-ER", os2},   {"LOSS-012", "25GBASE-SR", om3},
    {"LOSS-013", "25GBASE-SR", om4},   {"LOSS-014", "40GBASE-SR4", om3},  {"LOSS-015", "40GBASE-SR4", om4},
    {"LOSS-016", "40GBASE-LR4", os2},  {"LOSS-017", "100GBASE-SR4", om3}, {"LOSS-018", "100GBASE-SR4", om4},
    {"LOSS-019", "100GBASE-LR4", os2}, {"LOSS-020", "25GBASE-LR", os2}};

TEST(FibreLoss, EachBudgetIsAsPublished) {
    std::set<std::string> told;
    for (const auto& [id, phy, grade] : rows_of) {
        const auto* row = loss_budget(phy, grade);
        ASSERT_TRUE(row) << id;
        EXPECT_EQ(row->budget.count(), row_number(id, 3)) << id << " " << reference_row(id).source;
        EXPECT_EQ(row->source.standing != Standing::memory, was_read(id)) << id;
        told.insert(id);
    }
    for (const auto& row : reference_rows("LOSS-")) EXPECT_EQ(told.count(row.id), 1U) << row.id;
}

TEST(FibreLoss, EachBudgetBelongsToTheReachOfItsPhysicalLayer) {
    for (const auto& row : loss_budgets()) {
        const auto* reach = fibre_reach(row.phy, row.grade);
        ASSERT_TRUE(reach) << row.phy;
        // Single-mode 40GBASE-LR4 shares one budget; its reach on OS1a is shorter because the fibre loses more.
        if (row.phy == "40GBASE-LR4") continue;
        EXPECT_EQ(reach->most, row.reach) << row.phy;
    }
}

TEST(FibreLoss, AttenuationAndJointsAreAsPublished) {
    EXPECT_EQ(attenuation(om1, 850)->per_km.count(), row_number("ATT-001", 3));
    EXPECT_EQ(attenuation(om2, 850)->per_km.count(), row_number("ATT-001", 3));
    EXPECT_EQ(attenuation(om3, 1300)->per_km.count(), row_number("ATT-002", 3));
    EXPECT_EQ(attenuation(om4, 850)->per_km.count(), row_number("ATT-003", 3));
    EXPECT_EQ(attenuation(om5, 953)->per_km.count(), row_number("ATT-004", 3));
    EXPECT_EQ(attenuation(os1a, 1310)->per_km.count(), row_number("ATT-005", 3));
    EXPECT_EQ(attenuation(os2, 1550)->per_km.count(), row_number("ATT-007", 3));
    EXPECT_EQ(mated_pair_loss.count(), row_number("ATT-010", 3));
    EXPECT_EQ(splice_loss.count(), row_number("ATT-012", 3));
    EXPECT_FALSE(attenuation(om3, 1550));
}

TEST(FibreLoss, LightBetweenTheRowsTakesTheNearest) {
    EXPECT_EQ(attenuation_near(om3, 1310)->wavelength_nm, 1300);  // ATT-002 is stated for 1300 nm
    EXPECT_EQ(attenuation_near(om4, 860)->wavelength_nm, 850);
    EXPECT_FALSE(attenuation_near(om3, 1000));
    EXPECT_FALSE(attenuation_near(om3, 1550));
    // ATT-007: one figure from 1310 to 1550 nm.
    for (const int nm : {1271, 1310, 1331, 1490, 1550})
        EXPECT_EQ(attenuation_near(os2, nm)->per_km.count(), row_number("ATT-007", 3));
    EXPECT_FALSE(attenuation_near(os2, 850));
    // No row speaks of fibres older than the OM names.
    EXPECT_FALSE(attenuation_near(old_62_5, 850));
}

base::Loss lost(base::Length length, FibreGrade grade, int wavelength, int pairs,
                base::Loss per_pair = mated_pair_loss) {
    return channel_loss({length, attenuation(grade, wavelength)->per_km, pairs, per_pair});
}

TEST(FibreLoss, WorkedExamplesComeOut) {
    EXPECT_EQ(lost(95_m, om4, 850, 2).count(), example_number("F-1", "", 3));
    EXPECT_LE(lost(95_m, om4, 850, 2), loss_budget("25GBASE-SR", om4)->budget);
    EXPECT_EQ(lost(80_m, om3, 850, 2).count(), example_number("F-2", "although", 3));
    EXPECT_GT(80_m, fibre_reach("25GBASE-SR", om3)->most);
    EXPECT_EQ(lost(300_m, om3, 850, 2).count(), example_number("F-3", "", 3));
    EXPECT_EQ(lost(400_m, om4, 850, 2).count(), example_number("F-4", "", 3));
    EXPECT_EQ(lost(400_m, om4, 850, 3).count(), example_number("F-5", "", 3));
    EXPECT_GT(lost(400_m, om4, 850, 3), loss_budget("10GBASE-SR", om4)->budget);
    EXPECT_EQ(lost(10_km, os2, 1310, 4, 500_mdB).count(), example_number("F-7", "", 3));
    EXPECT_LE(lost(10_km, os2, 1310, 4, 500_mdB), loss_budget("40GBASE-LR4", os2)->budget);
    EXPECT_EQ(lost(5_km, os1a, 1310, 4, 500_mdB).count(), example_number("F-8", "", 3));
    EXPECT_GT(lost(5_km, os1a, 1310, 4, 500_mdB), loss_budget("40GBASE-LR4", os1a)->budget);
}

TEST(FibreLoss, TwoPairsBreakTheLongFourLaneLink) {
    // At 150 m of OM4 the budget of 1.5 dB leaves 1.05 dB for joints (network-examples, trap 6).
    EXPECT_GT(lost(150_m, om4, 850, 2), loss_budget("40GBASE-SR4", om4)->budget);
    EXPECT_LE(lost(150_m, om4, 850, 2, 500_mdB), loss_budget("40GBASE-SR4", om4)->budget);
}

TEST(FibreLoss, SplicesCountAndPartsOfAThousandthRoundUp) {
    EXPECT_EQ(channel_loss({.length = 0_m, .per_km = 400_mdB, .mated_pairs = 0, .splices = 3}), 900_mdB);
    EXPECT_EQ(channel_loss({.length = 1_mm, .per_km = 400_mdB, .mated_pairs = 0}), 1_mdB);
}

}  // namespace streamwright::test::fibre_losses
