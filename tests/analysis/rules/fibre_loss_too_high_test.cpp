#include "tests/support/fibre_way.h"

#include <gmock/gmock.h>

namespace streamwright::test::fibre_loss_too_high_test {

using analysis::Severity;
using catalogue::CableGrade;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(FibreLossTooHigh, threePairsBreakWhatTwoKeep) {
    // Worked examples F-4 and F-5: 400 m OM4 with two pairs 2.7 dB of 2.9 dB (LOSS-006), with three 3.45 dB.
    FibreWay way(CableGrade::om4, 398_m);  // 400 m with its leads
    EXPECT_THAT(rules_found(way.b.design), IsEmpty());
    way.fixed([](auto& row) { row.fibre.joints = 1; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-loss-too-high"));
    const auto finding = finding_of(way.b.design, "fibre-loss-too-high");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.measured, base::Value(3450_mdB));
    EXPECT_EQ(finding.limit, base::Value(2900_mdB));
    EXPECT_THAT(terms_of(way.b.design, finding),
                ElementsAre("400 m of OM4 at 850 nm: 1.2 dB", "3 connector pairs x 0.75 dB = 2.25 dB",
                            "3.45 dB - 2.9 dB = 0.55 dB too much"));
}

TEST(FibreLossTooHigh, justFitsAndJustDoesNot) {
    // 1.2 dB of glass and 2 pairs of 0.85 dB are 2.9 dB.
    FibreWay way(CableGrade::om4, 398_m);
    way.b.change<model::Settings>({}, [](auto& row) { row.cabling.joint_loss = 850_mdB; });
    EXPECT_THAT(rules_found(way.b.design), IsEmpty());
    way.b.change<model::Settings>({}, [](auto& row) { row.cabling.joint_loss = 851_mdB; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-loss-too-high"));
}

TEST(FibreLossTooHigh, warnsOnlyWhereTheBudgetIsRemembered) {
    // LOSS-007: 1.8 dB for OM2, from memory. 80 m at 3.5 dB/km with two pairs: 1.773 dB; a splice makes it too much.
    FibreWay way(CableGrade::om2, 78_m);
    EXPECT_THAT(rules_found(way.b.design), IsEmpty());
    way.fixed([](auto& row) { row.fibre.splices = 1; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-loss-too-high"));
    EXPECT_EQ(finding_of(way.b.design, "fibre-loss-too-high").severity, Severity::warning);
}

TEST(FibreLossTooHigh, isSilentWhereNothingIsKnown) {
    FibreWay way(CableGrade::om4, 398_m);
    way.fixed([](auto& row) { row.fibre.joints = 9, row.length.reset(); });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("length-unknown"));
}

}  // namespace streamwright::test::fibre_loss_too_high_test
