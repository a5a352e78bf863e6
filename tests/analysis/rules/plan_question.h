// What every question of the security plan owes: asked while open, warned of where the answer is no, silent where it is
// yes and in a design without streams.
#pragma once

#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

#include <optional>
#include <string>

namespace streamwright::test {

inline model::Design with_answer(std::optional<bool> model::SecurityPlan::*question, std::optional<bool> answer) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [&](auto& row) { row.security.*question = answer; });
    return c.b.design;
}

inline void hold_question(const std::string& rule, std::optional<bool> model::SecurityPlan::*question) {
    using analysis::Severity;
    const auto open = with_answer(question, std::nullopt), refused = with_answer(question, false);
    EXPECT_THAT(rules_found(open), testing::ElementsAre(rule));
    EXPECT_EQ(finding_of(open, rule).severity, Severity::advice);
    EXPECT_THAT(rules_found(cured(open, finding_of(open, rule))), testing::IsEmpty());
    EXPECT_THAT(rules_found(refused), testing::ElementsAre(rule));
    EXPECT_EQ(finding_of(refused, rule).severity, Severity::warning);
    EXPECT_THAT(rules_found(with_answer(question, true)), testing::IsEmpty());
    DesignBuilder no_streams;
    no_streams.put(model::Settings{});
    EXPECT_THAT(rules_found(no_streams.design), testing::IsEmpty());
}

}  // namespace streamwright::test
