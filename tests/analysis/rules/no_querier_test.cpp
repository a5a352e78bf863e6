#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::no_querier_test {

using catalogue::UnknownGroups;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

CleanDesign without_querier(UnknownGroups mode) {
    auto c = clean_design();
    auto type = *types::switch_24();
    type.bridging->unknown_groups = mode;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(c.switch_a,
                              [](auto& row) { row.bridging.queriers.erase(row.bridging.queriers.begin()); });
    return c;
}

TEST(NoQuerier, firesAndIsCuredByOne) {
    const auto c = without_querier(UnknownGroups::router_ports);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("no-querier"));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), "no-querier"))), IsEmpty());
}

TEST(NoQuerier, saysWhatHappensAfterTheMembershipTime) {
    // Worked example I-1: 2 x 125 + 10 = 260 s by RFC 2236 and 3376, 270 s by RFC 9776. Field case F03.
    auto c = without_querier(UnknownGroups::drop);
    const auto words = [&] { return english_sentence(c.design(), finding_of(c.design(), "no-querier")); };
    EXPECT_THAT(words(), HasSubstr("260 s"));
    EXPECT_THAT(words(), HasSubstr("black"));
    c.b.change<model::Settings>({}, [](auto& row) { row.igmp = model::IgmpDocument::rfc9776; });
    EXPECT_THAT(words(), HasSubstr("270 s"));
    const auto flooding = without_querier(UnknownGroups::flood);
    EXPECT_THAT(english_sentence(flooding.design(), finding_of(flooding.design(), "no-querier")),
                HasSubstr("every port"));
}

TEST(NoQuerier, WithoutAnyVlanTheRemedySetsOneUpAndAsksInIt) {
    auto c = without_querier(UnknownGroups::router_ports);
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.change<model::Device>(id, [](auto& row) {
            row.bridging.queriers.clear();
            row.bridging.snooping_off_vlans.clear();
        });
    std::vector<model::VlanId> gone;
    for (const auto& row : c.design().vlans) gone.push_back(row.id);
    model::Remove remove;
    for (const auto id : gone) remove.rows.emplace_back(id);
    model::apply(c.b.design, *model::make(c.design(), remove));
    ASSERT_EQ(c.design().vlans.size(), 0U);
    const auto finding = finding_of(c.design(), "no-querier");
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("no VLAN is set up"));
    const auto cure = cured(c.design(), finding);
    EXPECT_THAT(rules_found(cure), IsEmpty());
    ASSERT_EQ(cure.vlans.size(), 1U);
    EXPECT_EQ(cure.settings().usual_vlan, cure.vlans.begin()->id) << "ports that say nothing are in it";
}

TEST(NoQuerier, ABuiltInSwitchOfAnEndpointIsNeverAskedToAsk) {
    auto c = without_querier(UnknownGroups::router_ports);
    auto type = *types::encoder();
    type.bridging = types::switch_24()->bridging;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    const auto finding = finding_of(c.design(), "no-querier");
    EXPECT_EQ(finding.subjects.back(), analysis::Subject(c.switch_a)) << "the switch that the encoder hangs on";
    ASSERT_EQ(finding.remedies.size(), 1U);
    EXPECT_EQ(std::get<model::ConfigureDevice>(finding.remedies.front().edit).row.id, c.switch_a);
}

TEST(NoQuerier, isSilentOnAVlanWithoutStreams) {
    auto c = without_querier(UnknownGroups::router_ports);
    c.b.design.subscriptions.erase(c.shown);
    c.b.design.streams.erase(c.stream);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(NoQuerier, isSilentWhereNothingSnoops) {
    auto c = without_querier(UnknownGroups::router_ports);
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.change<model::Device>(id, [&](auto& row) { row.bridging.snooping_off_vlans = {c.usual}; });
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "no-querier"), 0);
}

TEST(NoQuerier, offersNoQuerierThatNobodyWouldFollow) {
    // RFC 4541 2.1.1: a query from 0.0.0.0 makes no router port, so between switches the querier needs an address.
    auto c = without_querier(UnknownGroups::router_ports);
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.addresses.clear(); });
    c.b.change<model::Vlan>(c.usual, [](auto& row) { row.subnet.reset(); });
    EXPECT_THAT(finding_of(c.design(), "no-querier").remedies, IsEmpty());
}

}  // namespace streamwright::test::no_querier_test
