#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::plan_encryption_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;

model::Design answered(std::optional<bool> answer) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [&](auto& row) { row.security.streams_encrypted = answer; });
    return c.b.design;
}

TEST(PlanEncryption, asksWhatTheDesignerHasNotAnswered) {
    const auto open = answered(std::nullopt);
    EXPECT_THAT(rules_found(open), ElementsAre("plan-encryption"));
    EXPECT_EQ(finding_of(open, "plan-encryption").severity, Severity::advice);
    EXPECT_THAT(rules_found(cured(open, finding_of(open, "plan-encryption"))), IsEmpty());
}

TEST(PlanEncryption, warnsWhereTheAnswerIsNo) {
    EXPECT_THAT(rules_found(answered(false)), ElementsAre("plan-encryption"));
    EXPECT_EQ(finding_of(answered(false), "plan-encryption").severity, Severity::warning);
    EXPECT_THAT(rules_found(answered(true)), IsEmpty());
}

TEST(PlanEncryption, asksNothingOfADesignWithoutStreams) {
    DesignBuilder empty;
    empty.put(model::Settings{});
    EXPECT_THAT(rules_found(empty.design), IsEmpty());
}

}  // namespace streamwright::test::plan_encryption_test
