// Fibre reaches against tests/reference (rows FIB-, examples F-).
#include "core/standards/fibre_reach.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::test::fibre_reaches {

using namespace standards;
using namespace base::literals;
using enum FibreGrade;

struct RowOf {
    const char* id;
    const char* phy;
    FibreGrade grade;
};

const RowOf rows_of[] = {
    {"FIB-001", "1000BASE-SX", old_62_5}, {"FIB-002", "1000BASE-SX", om1},     {"FIB-003", "1000BASE-SX", old_50},
    {"FIB-004", "1000BASE-SX", om2},      {"FIB-005", "1000BASE-SX", om3},     {"FIB-005", "1000BASE-SX", om5},
    {"FIB-006", "1000BASE-LX", om2},      {"FIB-007", "1000BASE-LX", os2},     {"FIB-008", "1000BASE-LX10", os2},
    {"FIB-009", "10GBASE-SR", om1},       {"FIB-010", "10GBASE-SR", old_62_5}, {"FIB-011", "10GBASE-SR", om2},
    {"FIB-012", "10GBASE-SR", om3},       {"FIB-013", "10GBASE-SR", om4},      {"FIB-013", "10GBASE-SR", om5},
    {"FIB-014", "10GBASE-LRM", om1},      {"FIB-014", "10GBASE-LRM", om3},     {"FIB-015", "10GBASE-LR", os2},
    {"FIB-015", "10GBASE-LR", os1a},      {"FIB-016", "10GBASE-ER", os2},      {"FIB-017", "25GBASE-SR", om3},
    {"FIB-018", "25GBASE-SR", om4},       {"FIB-018", "25GBASE-SR", om5},      {"FIB-019", "25GBASE-LR", os2},
    {"FIB-020", "40GBASE-SR4", om3},      {"FIB-021", "40GBASE-SR4", om4},     {"FIB-022", "40GBASE-LR4", os2},
    {"FIB-023", "40GBASE-LR4", os1a},     {"FIB-024", "100GBASE-SR10", om3},   {"FIB-025", "100GBASE-SR10", om4},
    {"FIB-026", "100GBASE-SR4", om3},     {"FIB-027", "100GBASE-SR4", om4},    {"FIB-028", "100GBASE-LR4", os2}};

/// "2 to 550" and "10": the last number is the reach, the first the least where there are two.
void expect_reach(const FibreReach& row, const ReferenceRow& published) {
    const auto& value = published.value;
    const auto to = value.find(" to ");
    const auto with_unit = [&](const std::string& number) { return base::parse_length(number + " " + published.unit); };
    const auto most = with_unit(to == std::string::npos ? value : value.substr(to + 4));
    ASSERT_TRUE(most) << published.id;
    EXPECT_EQ(row.most, *most) << published.id << " " << published.source;
    // A row without a least length takes that of the physical layer's other rows.
    if (to == std::string::npos) return;
    EXPECT_EQ(row.least, *with_unit(value.substr(0, to))) << published.id;
}

TEST(FibreReach, EachRowIsAsPublished) {
    std::set<std::string> told;
    for (const auto& [id, phy, grade] : rows_of) {
        const auto* row = fibre_reach(phy, grade);
        ASSERT_TRUE(row) << id;
        expect_reach(*row, reference_row(id));
        EXPECT_EQ(row->source.standing != Standing::memory, was_read(id)) << id;
        told.insert(id);
    }
    for (const auto& row : reference_rows("FIB-"))
        EXPECT_TRUE(told.count(row.id) == 1 || row.id == "FIB-029") << row.id;
}

TEST(FibreReach, FourHundredGigabitHoldsTwoGradesInOneRow) {
    EXPECT_EQ(reference_row("FIB-029").value, "0.5 to 70 / 0.5 to 100");
    EXPECT_EQ(fibre_reach("400GBASE-SR8", om3)->most, 70_m);
    EXPECT_EQ(fibre_reach("400GBASE-SR8", om4)->most, 100_m);
    EXPECT_EQ(fibre_reach("400GBASE-SR8", om4)->least, 500_mm);
}

TEST(FibreReach, WorkedExamplesComeOut) {
    EXPECT_EQ(fibre_reach("1000BASE-SX", om1)->most, 1_m * example_number("F-10", "280 >", 0));
    EXPECT_EQ(fibre_reach("1000BASE-LX", os2)->most, 1_km * example_number("F-11", "7 >", 0));
    EXPECT_GE(fibre_reach("1000BASE-LX10", os2)->most, 7_km);
    EXPECT_EQ(fibre_reach("10GBASE-SR", om1)->most, 1_m * example_number("F-12", "pass (", 0));
    EXPECT_EQ(fibre_reach("100GBASE-SR4", om4)->most, 1_m * example_number("F-13", "fail (", 0));
    EXPECT_EQ(fibre_reach("100GBASE-SR10", om4)->most, 1_m * example_number("F-13", "SR10 pass (", 0));
    EXPECT_EQ(fibre_reach("25GBASE-SR", om4)->least, 100_mm * example_number("F-14", "below", 1));
}

TEST(FibreReach, NoShortWaveOnSingleModeAndNoLongReachOnMultimode) {
    for (const auto& row : standards::fibre_reaches()) {
        if (row.phy.find("-SR") != std::string_view::npos) {
            EXPECT_TRUE(is_multimode(row.grade)) << row.phy;
        }
        if (row.phy.ends_with("-LR") || row.phy.ends_with("-ER")) {
            EXPECT_FALSE(is_multimode(row.grade)) << row.phy;
        }
        EXPECT_LT(row.least, row.most) << row.phy;
    }
    EXPECT_FALSE(fibre_reach("10GBASE-LR", om4));
    EXPECT_TRUE(is_fibre_phy("10GBASE-LR"));
    EXPECT_FALSE(is_fibre_phy("10GBASE-T"));
}

}  // namespace streamwright::test::fibre_reaches
