#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::cable_over_own_limit_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

model::Design lead_of(base::Length length, std::optional<base::Length> most) {
    auto c = clean_design();
    auto type = *types::hdmi();
    type.key = {"test.hdmi.limited"};
    type.most_length = most;
    c.b.embed(std::make_shared<const catalogue::CableType>(type));
    c.b.change<model::Cable>(c.display_lead, [&](auto& row) {
        row.type = type.key;
        row.length = length;
    });
    return c.design();
}

TEST(CableOverOwnLimit, firesJustAboveTheLimitThatTheTypeStates) {
    EXPECT_THAT(rules_found(lead_of(10_m, 10_m)), IsEmpty());
    EXPECT_THAT(rules_found(lead_of(10_m + 1_mm, 10_m)), ElementsAre("cable-over-own-limit"));
}

TEST(CableOverOwnLimit, namesItsArithmetic) {
    const auto design = lead_of(12_m, 10_m);
    EXPECT_THAT(terms_of(design, finding_of(design, "cable-over-own-limit")),
                ElementsAre("12 m - 10 m = 2 m too long"));
}

TEST(CableOverOwnLimit, isSilentWhereTheTypeStatesNone) { EXPECT_THAT(rules_found(lead_of(90_m, {})), IsEmpty()); }

}  // namespace streamwright::test::cable_over_own_limit_test
