// VLANs on ports and links. Expected values: IEEE 802.1Q membership, by hand from each drawing.
#include "core/analysis/facts/vlan_paths.h"

#include "tests/support/design_builder.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

namespace streamwright::analysis {
namespace {

using test::DesignBuilder;
using test::NetworkFacts;
using test::port_of;
namespace types = test::types;

struct TwoSwitches : testing::Test {
    DesignBuilder b;
    model::VlanId video = b.vlan(30, "Video");
    model::VlanId control = b.vlan(20, "Control");
    model::DeviceId left = b.device(types::switch_24(), "L");
    model::DeviceId right = b.device(types::switch_24(), "R");
    TwoSwitches() {
        b.usual_vlan(control);
        b.cable(types::cat6a(), port_of(left, "1"), port_of(right, "1"));
    }
    void tag(model::DeviceId device) {
        b.port(port_of(device, "1"), [&](auto& row) { row.tagged = {video}; });
    }
};

TEST_F(TwoSwitches, ALinkCarriesWhatBothEndsHave) {
    tag(left);
    const NetworkFacts half(b.design);
    EXPECT_EQ(half.paths.vlans, (std::vector<std::optional<model::VlanId>>{control, video}));  // by number
    EXPECT_EQ(half.paths.links.at(0).carried, std::vector<VlanIndex>{0});
    tag(right);
    const NetworkFacts whole(b.design);
    EXPECT_EQ(whole.paths.links.at(0).carried, (std::vector<VlanIndex>{0, 1}));
    EXPECT_TRUE(whole.paths.links.at(0).a.tags(1));
    EXPECT_FALSE(whole.paths.links.at(0).a.tags(0));
}

TEST_F(TwoSwitches, UntaggedMismatchAndTaggedAgainstUntaggedCarryNothing) {
    b.port(port_of(left, "1"), [&](auto& row) { row.untagged = video; });
    EXPECT_TRUE(NetworkFacts(b.design).paths.links.at(0).carried.empty());
    b.port(port_of(right, "1"), [&](auto& row) {
        row.no_untagged = true;
        row.tagged = {video};
    });
    EXPECT_TRUE(NetworkFacts(b.design).paths.links.at(0).carried.empty());
}

TEST_F(TwoSwitches, ADownLinkCarriesNothing) {
    b.port(port_of(left, "1"), [](auto& row) { row.disabled = true; });
    EXPECT_TRUE(NetworkFacts(b.design).paths.links.at(0).carried.empty());
}

TEST_F(TwoSwitches, BuiltInSwitchesTakeTheVlanOfThePortBeforeThem) {
    auto chained = types::make_encoder();
    chained.key = {"test.chained"};
    chained.ports.push_back(types::make_network_port("aux", chained.ports[2].rates));
    chained.bridging = catalogue::SwitchFacts{};
    const auto first = b.device(chained, "E1");
    const auto second = b.device(chained, "E2");
    const auto last = b.device(types::encoder(), "E3");
    b.port(port_of(right, "5"), [&](auto& row) { row.untagged = video; });
    b.cable(types::cat6a(), port_of(first, "net"), port_of(right, "5"));
    b.cable(types::cat6a(), port_of(first, "aux"), port_of(second, "net"));
    b.cable(types::cat6a(), port_of(second, "aux"), port_of(last, "net"));
    const NetworkFacts facts(b.design);
    EXPECT_TRUE(facts.paths.leaves.at(0).carries(1));
    EXPECT_FALSE(facts.paths.leaves.at(0).carries(0));
    for (std::size_t i = 0; i < facts.network.links.size(); ++i) {
        const auto& link = facts.network.links[i];
        const bool endpoints = facts.network.bridges[link.a].endpoint || facts.network.bridges[link.b].endpoint;
        EXPECT_EQ(facts.paths.links[i].carried, std::vector<VlanIndex>{endpoints ? 1 : 0});
    }
}

TEST(VlanPaths, WithoutVlansThereIsOneNamelessOneEverywhere) {
    DesignBuilder b;
    const auto a = b.device(types::switch_24(), "A");
    b.cable(types::cat6a(), port_of(a, "1"), port_of(b.device(types::switch_24(), "B"), "1"));
    const NetworkFacts facts(b.design);
    ASSERT_EQ(facts.paths.vlans.size(), 1U);
    EXPECT_EQ(facts.paths.links.at(0).carried, std::vector<VlanIndex>{0});
}

TEST(VlanPaths, WithoutAUsualVlanPortsAreInVlanOne) {
    // IEEE 802.1Q: default PVID 1.
    DesignBuilder b;
    b.vlan(40, "Forty");
    const auto one = b.vlan(1, "One");
    const auto a = b.device(types::switch_24(), "A");
    b.cable(types::cat6a(), port_of(a, "1"), port_of(b.device(types::switch_24(), "B"), "1"));
    const NetworkFacts facts(b.design);
    EXPECT_EQ(facts.paths.links.at(0).carried, std::vector<VlanIndex>{*facts.paths.index(one)});
}

}  // namespace
}  // namespace streamwright::analysis
