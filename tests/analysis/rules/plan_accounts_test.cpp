#include "tests/analysis/rules/plan_question.h"

namespace streamwright::test::plan_accounts_test {

TEST(PlanAccounts, isAskedWarnedOfAndAnswered) {
    hold_question("plan-accounts", &model::SecurityPlan::account_directory);
}

}  // namespace streamwright::test::plan_accounts_test
