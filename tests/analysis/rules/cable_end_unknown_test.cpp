#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::cable_end_unknown_test {

using testing::Contains;
using testing::ElementsAre;

TEST(CableEndUnknown, firesOnAPortThatTheTypeLacks) {
    auto c = clean_design();
    const auto spare = c.b.device(types::display(), "DSP-9");
    c.b.cable(types::hdmi(), port_of(spare, "in-7"), port_of(spare, "in"));
    EXPECT_THAT(rules_found(c.design()), ElementsAre("cable-end-unknown"));
}

TEST(CableEndUnknown, firesWhereTheTypeIsNotInTheDesign) {
    auto c = clean_design();
    c.b.design.device_types.erase(types::display()->key);
    EXPECT_THAT(rules_found(c.design()), Contains("cable-end-unknown"));
}

TEST(CableEndUnknown, leavesOpenEndsToTheirOwnRule) {
    auto c = clean_design();
    c.b.open_cable(types::cat6a(), port_of(c.switch_a, "9"));
    EXPECT_THAT(rules_found(c.design()), ElementsAre("cable-end-open"));
}

}  // namespace streamwright::test::cable_end_unknown_test
