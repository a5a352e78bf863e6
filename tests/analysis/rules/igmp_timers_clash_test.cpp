#include "core/model/edits/all_edits.h"
#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::igmp_timers_clash_test {

using model::IgmpDocument;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr std::string_view rule = "igmp-timers-clash";

CleanDesign with_timers(int robustness, int interval_s, int response_s, IgmpDocument document = IgmpDocument::rfc2236) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [&](auto& row) {
        row.robustness = robustness;
        row.query_interval_s = interval_s;
        row.query_response_s = response_s;
        row.igmp = document;
    });
    return c;
}

// RFC 3376, 8.1: should not be one. 1 x 125 + 10 = 135 s.
TEST(IgmpTimersClash, firesForRobustnessOneAndIsCuredByTwo) {
    const auto c = with_timers(1, 125, 10);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("135 s"));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
    EXPECT_THAT(rules_found(with_timers(2, 125, 10).design()), IsEmpty());
}

// RFC 2236, 2.2: eight bits of tenths of a second, 25.5 s.
TEST(IgmpTimersClash, firesForAResponseTimeThatVersionTwoCannotSay) {
    const auto c = with_timers(2, 125, 26);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), rule))), IsEmpty());
    EXPECT_THAT(rules_found(with_timers(2, 125, 25).design()), IsEmpty());
    EXPECT_THAT(rules_found(with_timers(2, 125, 26, IgmpDocument::rfc9776).design()), IsEmpty());
}

TEST(IgmpTimersClash, isSilentWhereNobodyAsks) {
    auto c = with_timers(1, 125, 10);
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.bridging.queriers.clear(); });
    EXPECT_THAT(rules_found(c.design()), Not(Contains(rule)));
}

// Worked example I-7 (response time not below the interval) and RFC 3376, 8.1 (never 0): refused before any rule.
TEST(IgmpTimersClash, leavesToTheEditWhatItRefuses) {
    const auto design = clean_design().design();
    for (const auto& [robustness, response_s] : {std::pair(2, 125), std::pair(2, 200), std::pair(0, 10)}) {
        auto row = design.settings();
        row.robustness = robustness;
        row.query_response_s = response_s;
        EXPECT_FALSE(model::make(design, model::SetSettings{row}).ok()) << robustness << ' ' << response_s;
    }
}

}  // namespace streamwright::test::igmp_timers_clash_test
