#include "core/analysis/facts/address_plan.h"

#include "tests/support/clean_design.h"

#include <gtest/gtest.h>

namespace streamwright::test::address_plan_test {

analysis::AddressPlan plan_of(const model::Design& design) {
    const auto wiring = graph::wire(design);
    return analysis::find_address_plan(wiring, graph::find_runs(wiring));
}

TEST(AddressPlan, findsTheVlanOfAnAddressAtTheSwitchPort) {
    const auto c = clean_design();
    const auto plan = plan_of(c.design());
    const auto vlan_at = [&](const char* address) -> std::optional<model::VlanId> {
        for (const auto& use : plan.hosts)
            if (use.address == *base::parse_ipv4(address)) return use.vlan;
        return std::nullopt;
    };
    EXPECT_EQ(vlan_at("10.30.0.21"), c.usual) << "the usual one: nothing is set on the port";
    EXPECT_EQ(vlan_at("10.50.0.21"), c.second) << "untagged on the port it is cabled to";
}

TEST(AddressPlan, listsQueriersBesideHosts) {
    const auto c = clean_design();
    const auto plan = plan_of(c.design());
    int queriers = 0;
    for (const auto& use : plan.hosts) queriers += use.querier ? 1 : 0;
    EXPECT_EQ(queriers, 2);
    EXPECT_EQ(plan.hosts.size(), 8u) << "two of the switch, four of endpoints, two of queriers";
}

TEST(AddressPlan, mapsGroupsToMacAddresses) {
    // Worked example M-1: 239.192.0.1 is 01-00-5E-40-00-01 (RFC 1112 6.4).
    auto c = clean_design();
    c.b.change<model::Stream>(c.stream, [](auto& row) { row.group = base::parse_ipv4("239.192.0.1"); });
    const auto plan = plan_of(c.design());
    ASSERT_EQ(plan.groups.size(), 2u);
    EXPECT_EQ(base::print(plan.groups[0].mac), "01-00-5E-40-00-01");
    EXPECT_EQ(plan.groups[0].vlan, c.usual);
    EXPECT_EQ(plan.groups[1].vlan, c.second);
}

}  // namespace streamwright::test::address_plan_test
