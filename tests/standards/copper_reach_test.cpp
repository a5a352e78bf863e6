// Copper reaches and the geometry of structured cabling against tests/reference (rows PHY-, COP-, examples C-).
#include "core/standards/copper_reach.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::copper_reaches {

using namespace standards;
using namespace base::literals;
using enum CopperGrade;

base::Length metres(std::int64_t n) { return 1_m * n; }
base::Length centimetres(std::int64_t n) { return base::Length::from_count(n * 10'000); }
base::Length decimetres(std::int64_t n) { return base::Length::from_count(n * 100'000); }

struct RowOf {
    const char* id;
    const char* phy;
    CopperGrade grade;
};
class EachCopperRow : public testing::TestWithParam<RowOf> {};

TEST_P(EachCopperRow, IsAsPublished) {
    const auto [id, phy, grade] = GetParam();
    const auto* row = copper_reach(phy, grade);
    ASSERT_TRUE(row);
    EXPECT_EQ(row->channel, metres(row_number(id, 0))) << id << " " << reference_row(id).source;
    EXPECT_EQ(row->source.standing != Standing::memory, was_read(id)) << id;
}
INSTANTIATE_TEST_SUITE_P(Reference, EachCopperRow,
                         testing::Values(RowOf{"PHY-001", "100BASE-TX", cat5e}, RowOf{"PHY-002", "1000BASE-T", cat5e},
                                         RowOf{"PHY-003", "2.5GBASE-T", cat5e}, RowOf{"PHY-004", "5GBASE-T", cat6},
                                         RowOf{"PHY-005", "10GBASE-T", cat6a}, RowOf{"PHY-006", "10GBASE-T", cat6},
                                         RowOf{"PHY-008", "10GBASE-T", cat5e}, RowOf{"PHY-009", "25GBASE-T", cat8},
                                         RowOf{"PHY-009", "40GBASE-T", cat8}));

TEST(CopperReach, FindsTheRowByRateAsWellAsByName) {
    for (const auto& row : standards::copper_reaches()) {
        EXPECT_EQ(copper_reach(row.rate, row.grade), &row) << row.phy;
        EXPECT_EQ(copper_reach(row.phy, row.grade), &row) << row.phy;
        EXPECT_EQ(row.support == Support::none, row.channel == 0_m) << row.phy;
    }
    EXPECT_FALSE(copper_reach("10GBASE-SR", cat6a));
    EXPECT_FALSE(copper_reach(100_Gbps, cat8));
}

TEST(CopperReach, ABetterGradeNeverReachesLess) {
    for (const auto& row : standards::copper_reaches())
        for (const auto& better : standards::copper_reaches())
            if (row.phy == better.phy && better.grade > row.grade) {
                EXPECT_GE(better.channel, row.channel) << row.phy;
            }
}

TEST(CopperReach, LeastCategoryForAHundredMetresIsAsPublished) {
    // PHY-010: 1G / 2.5G / 5G / 10G at 100 m need 5e / 5e / 6 / 6A; less than "full" where crosstalk decides.
    EXPECT_EQ(reference_row("PHY-010").value, "5e / 5e / 6 / 6A");
    EXPECT_EQ(copper_reach(1_Gbps, cat5e)->channel, 100_m);
    EXPECT_EQ(copper_reach(2500_Mbps, cat5e)->channel, 100_m);
    EXPECT_EQ(copper_reach(5_Gbps, cat6)->channel, 100_m);
    EXPECT_LT(copper_reach(10_Gbps, cat6)->channel, 100_m);
    EXPECT_EQ(copper_reach(10_Gbps, cat6a)->channel, 100_m);
}

TEST(CopperReach, HostileNeighboursAndTwinaxAreAsPublished) {
    EXPECT_EQ(cat6_among_hostile_neighbours().channel, metres(row_number("PHY-007", 0)));
    EXPECT_EQ(twinax_reach(25_Gbps)->most, metres(row_number("PHY-011", 0)));
    EXPECT_EQ(twinax_reach(40_Gbps)->most, metres(row_number("PHY-013", 0)));
    EXPECT_EQ(twinax_reach(100_Gbps)->most, metres(row_number("PHY-014", 0)));
    EXPECT_EQ(twinax_reach(10_Gbps)->most, metres(row_number("PHY-015", 0)));
    for (const auto& row : twinax_reaches())
        if (row.phy == "25GBASE-CR-S") {
            EXPECT_EQ(row.most, metres(row_number("PHY-012", 0)));
        }
    EXPECT_FALSE(twinax_reach(1_Gbps));
}

TEST(CopperReach, WorkedExamplesComeOut) {
    EXPECT_EQ(permanent_link_limit + cords_limit, metres(example_number("C-1", "", 0)));
    EXPECT_EQ(copper_reach("10GBASE-T", cat6)->channel, metres(example_number("C-8", "fail (", 0)));
    EXPECT_GE(copper_reach("10GBASE-T", cat6a)->channel, 60_m);
    EXPECT_EQ(reference_example("C-9").expected, "caution");
    EXPECT_EQ(copper_reach("5GBASE-T", cat5e)->support, Support::conditional);
    EXPECT_EQ(copper_reach("25GBASE-T", cat8)->channel, metres(example_number("C-10", "fail (", 0)));
}

TEST(CopperGeometry, LimitsAreAsPublished) {
    EXPECT_EQ(permanent_link_limit, metres(row_number("COP-001", 0)));
    EXPECT_EQ(cords_limit, metres(row_number("COP-002", 0)));
    EXPECT_EQ(channel_limit, metres(row_number("COP-003", 0)));
    EXPECT_EQ(single_cord_limit, metres(row_number("COP-004", 0)));
}

TEST(CopperGeometry, HeatTableIsAsPublished) {
    // COP-009 to COP-017 step by 5 degrees from 20; unscreened before, screened after the stroke.
    std::int64_t celsius = 20;
    for (int n = 9; n <= 17; ++n, celsius += 5) {
        const auto id = n == 9 ? std::string("COP-009") : "COP-0" + std::to_string(n);
        const auto& value = reference_row(id).value;
        const auto at = base::Temperature::from_count(celsius * 1000);
        const auto unscreened = base::parse_length(value.substr(0, value.find('/')));
        const auto screened = base::parse_length(value.substr(value.find('/') + 1));
        ASSERT_TRUE(unscreened && screened) << id;
        EXPECT_EQ(permanent_link_at(at, false, DeratingRule::table), *unscreened) << id;
        EXPECT_EQ(permanent_link_at(at, true, DeratingRule::table), *screened) << id;
    }
}

TEST(CopperGeometry, HeatRulesDifferAndAreNamed) {
    // C-3, C-6 and COP-018 to COP-020.
    EXPECT_EQ(permanent_link_at(40_degC, false, DeratingRule::table), decimetres(example_number("C-3", "table", 1)));
    EXPECT_EQ(permanent_link_at(40_degC, false, DeratingRule::linear), decimetres(row_number("COP-018", 1)));
    EXPECT_EQ(permanent_link_at(60_degC, false, DeratingRule::linear), decimetres(row_number("COP-019", 1)));
    EXPECT_EQ(permanent_link_at(60_degC, true, DeratingRule::linear), decimetres(row_number("COP-020", 1)));
    EXPECT_EQ(permanent_link_at(60_degC, false, DeratingRule::linear), decimetres(example_number("C-6", "0.80:", 1)));
    const auto quotient = permanent_link_at(40_degC, false, DeratingRule::quotient);
    ASSERT_TRUE(quotient);
    EXPECT_NEAR(static_cast<double>(quotient->count()),
                static_cast<double>(centimetres(example_number("C-3", "90/1.08 =", 2)).count()), 5'000);
}

TEST(CopperGeometry, BetweenTwoRowsTheWarmerCountsAndBeyondThemNone) {
    EXPECT_EQ(permanent_link_at(base::Temperature::from_count(40'001), false, DeratingRule::table), 81'700_mm);
    EXPECT_EQ(permanent_link_at(5_degC, false, DeratingRule::table), 90_m);
    EXPECT_EQ(permanent_link_at(base::Temperature::from_count(60'001), false, DeratingRule::table), std::nullopt);
}

TEST(CopperGeometry, HeatNeverLengthensALink) {
    for (const auto rule : {DeratingRule::table, DeratingRule::linear, DeratingRule::quotient})
        for (const bool screened : {false, true})
            for (int celsius = 0; celsius < 60; ++celsius) {
                const auto cool = permanent_link_at(base::Temperature::from_count(celsius * 1000), screened, rule);
                const auto warm =
                    permanent_link_at(base::Temperature::from_count(celsius * 1000 + 1000), screened, rule);
                EXPECT_LE(*warm, *cool);
            }
}

/// "C = 14.17 / 18.33 / ..." holds one figure per horizontal length; half the last digit is allowed.
void expect_near_centimetres(std::optional<base::Length> have, std::string_view text) {
    const auto want = base::parse_length(text);
    ASSERT_TRUE(have && want) << text;
    EXPECT_NEAR(static_cast<double>(have->count()), static_cast<double>(want->count()), 5'000) << text;
}

TEST(CopperGeometry, CordLengthsFollowTheOpenOfficeFormula) {
    const std::string_view cords_24[] = {"14.17", "18.33", "22.50", "26.67"},
                           work_24[] = {"9.17", "13.33", "17.50", "21.67"};
    const std::string_view cords_26[] = {"11.33", "14.67", "18.00", "21.33"},
                           work_26[] = {"7.33", "10.67", "14.00", "17.00"};
    for (const auto* each : {&cords_24[0], &work_24[0]})
        EXPECT_NE(reference_example("C-4").expected.find(*each), std::string::npos);
    for (const auto* each : {&cords_26[0], &work_26[0]})
        EXPECT_NE(reference_example("C-5").expected.find(*each), std::string::npos);
    for (std::size_t i = 0; i < 4; ++i) {
        const auto horizontal = 85_m - 5_m * static_cast<std::int64_t>(i);
        expect_near_centimetres(combined_cords(horizontal, 24), cords_24[i]);
        expect_near_centimetres(work_area_cord(horizontal, 24), work_24[i]);
        expect_near_centimetres(combined_cords(horizontal, 26), cords_26[i]);
        expect_near_centimetres(work_area_cord(horizontal, 26), work_26[i]);
    }
    EXPECT_EQ(combined_cords(90_m, 24), decimetres(example_number("C-2", "1.2 =", 1)));
    EXPECT_EQ(work_area_cord(20_m, 24), metres(22));  // COP-023: cap 22
    EXPECT_EQ(combined_cords(90_m, 23), std::nullopt);
    EXPECT_EQ(combined_cords(120_m, 24), 0_m);
    EXPECT_EQ(horizontal_given_up(4_m), metres(example_number("C-11", "shortened by", 0)));
}

}  // namespace streamwright::test::copper_reaches
