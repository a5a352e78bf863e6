#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::both_roles_at_once_test {

using catalogue::Role;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// An endpoint with a source before it and a display behind it, set to those roles.
struct Both {
    CleanDesign c = clean_design();
    model::DeviceId endpoint{0};
    explicit Both(std::vector<Role> roles, const types::DevicePtr& type = types::endpoint()) {
        endpoint = c.b.device(type, "EP-1");
        const auto source = c.b.device(types::source(), "SRC-9"), display = c.b.device(types::display(), "DSP-9");
        c.b.cable(types::hdmi(), port_of(source, "out"), port_of(endpoint, "in"), 2_m);
        c.b.cable(types::hdmi(), port_of(endpoint, "out"), port_of(display, "in"), 2_m);
        c.b.cable(types::cat6a(), port_of(endpoint, "net"), port_of(c.switch_a, "9"), 20_m);
        c.b.change<model::Device>(endpoint, [&](auto& row) { row.roles = roles; });
    }
    void sends() { c.b.stream(endpoint, 100_Mbps, "239.192.1.9"); }
    void takes() { c.b.subscribe(c.preset, c.stream, endpoint); }
};

TEST(BothRolesAtOnce, firesWhereSetToBoth) {
    Both both({Role::encoder, Role::decoder});
    both.sends();
    EXPECT_THAT(rules_found(both.c.design()), ElementsAre("both-roles-at-once"));
    const auto after = cured(both.c.design(), finding_of(both.c.design(), "both-roles-at-once"));
    EXPECT_THAT(rules_found(after), IsEmpty());
    EXPECT_THAT(after.devices.find(both.endpoint)->roles, ElementsAre(Role::encoder));
    EXPECT_EQ(after.devices.find(both.endpoint)->tag, "EP-1") << "a remedy leaves the tag alone";
}

TEST(BothRolesAtOnce, firesWhereBothAreAskedOfAnUndecidedOne) {
    Both both({});
    both.sends();
    EXPECT_THAT(rules_found(both.c.design()), IsEmpty()) << "one role is asked only";
    both.takes();
    EXPECT_THAT(rules_found(both.c.design()), ElementsAre("both-roles-at-once"));
}

TEST(BothRolesAtOnce, isSilentWhereTheTypeDoesBoth) {
    auto type = types::make_endpoint();
    type.codec->roles_at_once = true;
    Both both({Role::encoder, Role::decoder}, std::make_shared<const catalogue::DeviceType>(type));
    both.sends();
    both.takes();
    EXPECT_THAT(rules_found(both.c.design()), IsEmpty());
}

}  // namespace streamwright::test::both_roles_at_once_test
