#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::plan_accounts_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;

model::Design answered(std::optional<bool> answer) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [&](auto& row) { row.security.account_directory = answer; });
    return c.b.design;
}

TEST(PlanAccounts, asksWhatTheDesignerHasNotAnswered) {
    const auto open = answered(std::nullopt);
    EXPECT_THAT(rules_found(open), ElementsAre("plan-accounts"));
    EXPECT_EQ(finding_of(open, "plan-accounts").severity, Severity::advice);
    EXPECT_THAT(rules_found(cured(open, finding_of(open, "plan-accounts"))), IsEmpty());
}

TEST(PlanAccounts, warnsWhereTheAnswerIsNo) {
    EXPECT_THAT(rules_found(answered(false)), ElementsAre("plan-accounts"));
    EXPECT_EQ(finding_of(answered(false), "plan-accounts").severity, Severity::warning);
    EXPECT_THAT(rules_found(answered(true)), IsEmpty());
}

TEST(PlanAccounts, asksNothingOfADesignWithoutStreams) {
    DesignBuilder empty;
    empty.put(model::Settings{});
    EXPECT_THAT(rules_found(empty.design), IsEmpty());
}

}  // namespace streamwright::test::plan_accounts_test
