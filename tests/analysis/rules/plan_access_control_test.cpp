#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::plan_access_control_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;

model::Design answered(std::optional<bool> answer) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [&](auto& row) { row.security.port_access_control = answer; });
    return c.b.design;
}

TEST(PlanAccessControl, asksWhatTheDesignerHasNotAnswered) {
    const auto open = answered(std::nullopt);
    EXPECT_THAT(rules_found(open), ElementsAre("plan-access-control"));
    EXPECT_EQ(finding_of(open, "plan-access-control").severity, Severity::advice);
    EXPECT_THAT(rules_found(cured(open, finding_of(open, "plan-access-control"))), IsEmpty());
}

TEST(PlanAccessControl, warnsWhereTheAnswerIsNo) {
    EXPECT_THAT(rules_found(answered(false)), ElementsAre("plan-access-control"));
    EXPECT_EQ(finding_of(answered(false), "plan-access-control").severity, Severity::warning);
    EXPECT_THAT(rules_found(answered(true)), IsEmpty());
}

TEST(PlanAccessControl, warnsOfCertificatesWithoutADayOfExpiry) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [](auto& row) { row.security.certificates_expire.clear(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("plan-access-control"));
    EXPECT_EQ(finding_of(c.design(), "plan-access-control").variant, 2);
}

TEST(PlanAccessControl, asksNothingOfADesignWithoutStreams) {
    DesignBuilder empty;
    empty.put(model::Settings{});
    EXPECT_THAT(rules_found(empty.design), IsEmpty());
}

}  // namespace streamwright::test::plan_access_control_test
