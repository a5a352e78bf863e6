#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::reports_unheard_test {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

/// The encoders' switch drops unknown groups; the querier of both VLANs is the switch `asked_by`.
CleanDesign dropping(model::DeviceId CleanDesign::*asked_by) {
    auto c = clean_design();
    auto type = types::make_switch(24, base::BitRate::from_count(1'000'000'000), 4);
    type.key = {"test.drops"};
    type.bridging->unknown_groups = catalogue::UnknownGroups::drop;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.type = {"test.drops"}; });
    std::vector<model::Querier> queriers;
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.change<model::Device>(id, [&](auto& row) {
            for (const auto& each : row.bridging.queriers) queriers.push_back(each);
            row.bridging.queriers.clear();
        });
    c.b.change<model::Device>(c.*asked_by, [&](auto& row) { row.bridging.queriers = queriers; });
    return c;
}

// RFC 4541 2.1.1: reports go to router ports only, so toward switch B, never to A, where the streams enter.
TEST(ReportsUnheard, firesWhereReportsDoNotComeToASwitchThatDrops) {
    const auto c = dropping(&CleanDesign::switch_b);
    EXPECT_THAT(rules_found(c.design()), Contains("reports-unheard").Times(2));  // one a VLAN
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), "reports-unheard")), HasSubstr("dark: 1,"));
}

TEST(ReportsUnheard, isSilentWhereThatSwitchAsksItself) {
    EXPECT_THAT(rules_found(dropping(&CleanDesign::switch_a).design()), Not(Contains("reports-unheard")));
}

TEST(ReportsUnheard, isSilentWhereAPortTowardTheSourcesIsARouterPort) {
    auto c = dropping(&CleanDesign::switch_b);
    c.b.port(port_of(c.switch_b, "s1"), [](auto& row) { row.router_port = true; });
    EXPECT_THAT(rules_found(c.design()), Not(Contains("reports-unheard")));
}

TEST(ReportsUnheard, leavesASwitchWithoutQuerierToItsRule) {
    auto c = dropping(&CleanDesign::switch_b);
    c.b.change<model::Device>(c.switch_b, [](auto& row) { row.bridging.queriers.clear(); });
    EXPECT_THAT(rules_found(c.design()), Not(Contains("reports-unheard")));
}

TEST(ReportsUnheard, isSilentWithoutSubscriptions) {
    auto c = dropping(&CleanDesign::switch_b);
    c.b.design.subscriptions = {};
    EXPECT_THAT(rules_found(c.design()), Not(Contains("reports-unheard")));
}

}  // namespace streamwright::test::reports_unheard_test
