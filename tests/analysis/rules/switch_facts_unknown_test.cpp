#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::switch_facts_unknown_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// SW-B's type with some facts changed.
template <class Change>
CleanDesign with_facts(Change&& change) {
    auto c = clean_design();
    auto type = *types::switch_24();
    type.key = {"test.switch.unstated"};
    change(*type.bridging);
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(c.switch_b, [&](auto& row) { row.type = type.key; });
    return c;
}

TEST(SwitchFactsUnknown, advisesWhereSnoopingIsNotStated) {
    const auto c = with_facts([](auto& facts) { facts.unknown_groups.reset(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("switch-facts-unknown"));
    const auto finding = finding_of(c.design(), "switch-facts-unknown");
    EXPECT_EQ(finding.severity, analysis::Severity::advice);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("unknown groups"));
}

TEST(SwitchFactsUnknown, isSilentOnFactsThatDoNotDecide) {
    const auto c = with_facts([](auto& facts) {
        facts.fast_leave.reset();
        facts.vlan_limit.reset();
        facts.frame_limit.reset();
    });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(SwitchFactsUnknown, isSilentWhereNoStreamsAre) {
    auto c = with_facts([](auto& facts) { facts.unknown_groups.reset(); });
    c.b.design.subscriptions = {};
    c.b.design.streams = {};
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::switch_facts_unknown_test
