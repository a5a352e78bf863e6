#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::untagged_vlan_mismatch_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(UntaggedVlanMismatch, firesWhereTheEndsDiffer) {
    auto c = clean_design();
    const auto third = c.b.vlan(60, "Control");
    c.b.port(port_of(c.switch_b, "s1"), [&](auto& row) { row.untagged = third; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("untagged-vlan-mismatch"));
    const auto finding = finding_of(c.design(), "untagged-vlan-mismatch");
    EXPECT_EQ(finding.severity, analysis::Severity::error);
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(UntaggedVlanMismatch, warnsWhereOneEndTakesNone) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "s1"), [&](auto& row) {
        row.no_untagged = true;
        row.tagged = {c.second};
    });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("untagged-vlan-mismatch"));
    EXPECT_EQ(finding_of(c.design(), "untagged-vlan-mismatch").severity, analysis::Severity::warning);
}

TEST(UntaggedVlanMismatch, isSilentWhereBothTakeNone) {
    auto c = clean_design();
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.port(port_of(id, "s1"), [&](auto& row) {
            row.no_untagged = true;
            row.tagged = {c.usual, c.second};
        });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::untagged_vlan_mismatch_test
