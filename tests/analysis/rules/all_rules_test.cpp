// The table of rules: sorted, each with words, patterns, and a source or why there is none.
#include "core/analysis/rule.h"
#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

#include <set>

namespace streamwright::test::all_rules_test {

TEST(AllRules, areSortedAndSpeak) {
    std::string before;
    for (const auto& rule : analysis::all_rules()) {
        const std::string id(rule.words.id);
        EXPECT_LT(before, id);
        before = id;
        EXPECT_EQ(analysis::find_rule(id), &rule);
        EXPECT_FALSE(rule.words.title.empty()) << id;
        EXPECT_FALSE(rule.words.meaning.empty()) << id;
        EXPECT_FALSE(rule.words.patterns.empty()) << id;
        EXPECT_NE(rule.words.sources.empty(), rule.words.no_source.empty()) << id;
        EXPECT_TRUE(rule.reads.any()) << id;
    }
    EXPECT_EQ(analysis::find_rule("no-such-rule"), nullptr);
}

TEST(AllRules, whatTakesLongIsDeferred) {
    const std::set<std::string_view> deferred{
        "aggregate-member-overfull", "agreed-sources-overfull", "failure-overfull",
        "link-overfull-worst-case",  "querier-place",           "single-point-of-failure"};
    for (const auto& rule : analysis::all_rules())
        EXPECT_EQ(rule.deferred, deferred.count(rule.words.id) > 0) << rule.words.id;
}

TEST(AllRules, findNothingInACleanDesignNorInAnEmptyOne) {
    EXPECT_THAT(rules_found(clean_design().design()), testing::IsEmpty());
    EXPECT_THAT(rules_found(model::Design{}), testing::IsEmpty());
}

}  // namespace streamwright::test::all_rules_test
