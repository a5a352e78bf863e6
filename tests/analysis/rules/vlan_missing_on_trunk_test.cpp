#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::vlan_missing_on_trunk_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(VlanMissingOnTrunk, firesAndTagsThePort) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "s1"), [](auto& row) { row.tagged.clear(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("vlan-missing-on-trunk"));
    const auto finding = finding_of(c.design(), "vlan-missing-on-trunk");
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("SW-B s1"));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(VlanMissingOnTrunk, offersNoSingleEditWhereBothEndsLackIt) {
    auto c = clean_design();
    for (const auto id : {c.switch_a, c.switch_b}) c.b.port(port_of(id, "s1"), [](auto& row) { row.tagged.clear(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("vlan-missing-on-trunk"));
    EXPECT_THAT(finding_of(c.design(), "vlan-missing-on-trunk").remedies, IsEmpty());
}

TEST(VlanMissingOnTrunk, isSilentWhereNothingNeedsToCross) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "s1"), [](auto& row) { row.tagged.clear(); });
    c.b.design.subscriptions.erase(c.shown2);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::vlan_missing_on_trunk_test
