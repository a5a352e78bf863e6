#include "tests/analysis/rules/plan_question.h"

namespace streamwright::test::plan_encryption_test {

TEST(PlanEncryption, isAskedWarnedOfAndAnswered) {
    hold_question("plan-encryption", &model::SecurityPlan::streams_encrypted);
}

TEST(PlanEncryption, keepsTheTitleGivenAfterTheQuestionWasAsked) {
    const auto before = with_answer(&model::SecurityPlan::streams_encrypted, std::nullopt);
    auto after = before;
    auto settings = before.settings();
    settings.title = "Quay Hall";
    after.settings_table.put(settings);
    analysis::Analyser analyser(before);
    analyser.update(after, model::difference(before, after));
    ASSERT_EQ(analyser.findings().size(), 1U);
    EXPECT_EQ(cured(after, analyser.findings().front()).settings().title, "Quay Hall");
}

}  // namespace streamwright::test::plan_encryption_test
