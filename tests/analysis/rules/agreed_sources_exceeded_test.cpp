#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::agreed_sources_exceeded_test {

using analysis::Severity;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// Two pictures cross the trunk in the preset; so many sources are agreed for it.
CleanDesign agreed(int sources) {
    auto c = clean_design();
    c.b.change<model::Cable>(c.trunk, [&](auto& row) { row.agreed = {sources, "IT", "2026-11-20"}; });
    return c;
}

// 2 of 1: more; 2 of 2 are 100 %, above the headroom of 80 %; 2 of 3 are 67 %.
TEST(AgreedSourcesExceeded, firesAboveAndWarnsNearTheNumberAgreed) {
    const auto over = agreed(1);
    EXPECT_THAT(rules_found(over.design()), ElementsAre("agreed-sources-exceeded"));
    const auto finding = finding_of(over.design(), "agreed-sources-exceeded");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{2}));
    EXPECT_EQ(finding.limit, base::Value(std::int64_t{1}));
    EXPECT_THAT(english_sentence(over.design(), finding), AllOf(HasSubstr("Lecture"), HasSubstr("2 different sources"),
                                                                HasSubstr("the number agreed, 1 (IT, 2026-11-20)")));
    const auto near = agreed(2);
    EXPECT_THAT(rules_found(near.design()), ElementsAre("agreed-sources-exceeded"));
    EXPECT_EQ(finding_of(near.design(), "agreed-sources-exceeded").severity, Severity::warning);
    EXPECT_THAT(rules_found(agreed(3).design()), IsEmpty());
}

TEST(AgreedSourcesExceeded, countsAStreamOnceHoweverManyWatchIt) {
    auto c = agreed(3);
    for (int i = 0; i < 3; ++i) {
        const auto decoder = c.b.device(types::decoder(), "DEC-9" + std::to_string(i));
        c.b.cable(types::cat6a(), port_of(decoder, "net"), port_of(c.switch_b, std::to_string(15 + i)));
        c.b.subscribe(c.preset, c.stream, decoder);
    }
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "agreed-sources-exceeded"), 0);
}

TEST(AgreedSourcesExceeded, countsNoSoundAndNothingThatNobodyBeyondIsShown) {
    auto c = agreed(1);
    c.b.design.subscriptions.erase(c.shown2);
    const auto one = rules_found(c.design());
    EXPECT_EQ(std::count(one.begin(), one.end(), "agreed-sources-exceeded"), 1) << "one of one: near";
    c.b.design.subscriptions.erase(c.shown);
    const auto none = rules_found(c.design());
    EXPECT_EQ(std::count(none.begin(), none.end(), "agreed-sources-exceeded"), 0);
}

}  // namespace streamwright::test::agreed_sources_exceeded_test
