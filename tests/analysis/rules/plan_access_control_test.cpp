#include "tests/analysis/rules/plan_question.h"

namespace streamwright::test::plan_access_control_test {

TEST(PlanAccessControl, isAskedWarnedOfAndAnswered) {
    hold_question("plan-access-control", &model::SecurityPlan::port_access_control);
}

TEST(PlanAccessControl, warnsOfCertificatesWithoutADayOfExpiry) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [](auto& row) { row.security.certificates_expire.clear(); });
    EXPECT_THAT(rules_found(c.design()), testing::ElementsAre("plan-access-control"));
    EXPECT_EQ(finding_of(c.design(), "plan-access-control").variant, 2);
}

}  // namespace streamwright::test::plan_access_control_test
