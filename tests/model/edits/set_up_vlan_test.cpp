#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused, test::row_of;

base::Ipv4Prefix subnet(const char* text) { return *base::parse_ipv4_prefix(text); }

Vlan vlan(std::uint64_t id, int vid, const char* in) {
    Vlan row = Vlan::blank(VlanId(id));
    row.vid = vid, row.name = "AV", row.subnet = subnet(in);
    return row;
}

TEST(SetUpVlan, MakesTheVlanTheUsualOneAndItsQuerierInOneStep) {
    test::DesignBuilder b;
    const auto core = b.device(test::types::switch_24(), "SW-1");
    const auto from = *base::parse_ipv4("10.1.0.2");
    const auto design = done(b.design, SetUpVlan{vlan(1, 1, "10.1.0.0/24"), true, core, from});
    EXPECT_EQ(row_of<Vlan>(design, VlanId(1)).vid, 1);
    EXPECT_EQ(design.settings().usual_vlan, VlanId(1));
    EXPECT_EQ(row_of<Device>(design, core).bridging.queriers, (std::vector<Querier>{{VlanId(1), from}}));
}

TEST(SetUpVlan, ChangesOneThatIsThereAndKeepsOneQuerierASwitch) {
    test::DesignBuilder b;
    const auto core = b.device(test::types::switch_24(), "SW-1");
    auto design = done(b.design, SetUpVlan{vlan(1, 1, "10.1.0.0/24"), true, core, base::parse_ipv4("10.1.0.2")});
    design = done(design, SetUpVlan{vlan(1, 40, "10.4.0.0/24"), false, core, base::parse_ipv4("10.4.0.2")});
    EXPECT_EQ(row_of<Vlan>(design, VlanId(1)).vid, 40);
    EXPECT_FALSE(design.settings().usual_vlan);
    EXPECT_EQ(row_of<Device>(design, core).bridging.queriers,
              (std::vector<Querier>{{VlanId(1), base::parse_ipv4("10.4.0.2")}}));
}

TEST(SetUpVlan, LeavesTheUsualVlanOfAnotherAlone) {
    auto design = done(Design{}, SetUpVlan{vlan(1, 1, "10.1.0.0/24"), true, {}, {}});
    design = done(design, SetUpVlan{vlan(2, 20, "10.20.0.0/24"), false, {}, {}});
    EXPECT_EQ(design.settings().usual_vlan, VlanId(1));
}

TEST(SetUpVlan, SaysWhatClashes) {
    const auto design = done(Design{}, SetUpVlan{vlan(1, 10, "10.1.0.0/22"), true, {}, {}});
    EXPECT_SAYS(refused(design, SetUpVlan{vlan(2, 10, "10.9.0.0/24"), false, {}, {}}), "VLAN 10 is there already");
    EXPECT_SAYS(refused(design, SetUpVlan{vlan(2, 20, "10.1.3.0/24"), false, {}, {}}), "overlaps 10.1.0.0/22");
    EXPECT_SAYS(refused(design, SetUpVlan{vlan(2, 20, "10.0.0.0/8"), false, {}, {}}), "overlaps 10.1.0.0/22");
    EXPECT_SAYS(refused(design, SetUpVlan{vlan(2, 0, "10.9.0.0/24"), false, {}, {}}), "VLAN number");
    EXPECT_SAYS(refused(design, SetUpVlan{vlan(2, 4095, "10.9.0.0/24"), false, {}, {}}), "VLAN number");
}

TEST(SetUpVlan, RefusesAddressesOutsideTheSubnet) {
    auto row = vlan(1, 10, "10.1.0.0/24");
    row.gateway = base::parse_ipv4("10.2.0.1");
    EXPECT_SAYS(refused(Design{}, SetUpVlan{row, false, {}, {}}), "gateway 10.2.0.1 is not in the subnet");
    row.gateway.reset();
    row.lease_first = base::parse_ipv4("10.1.0.100"), row.lease_last = base::parse_ipv4("10.1.1.9");
    EXPECT_SAYS(refused(Design{}, SetUpVlan{row, false, {}, {}}), "lease 10.1.1.9 is not in the subnet");
}

TEST(SetUpVlan, RefusesAQuerierThatIsNoSwitchOrStandsOutside) {
    test::DesignBuilder b;
    const auto encoder = b.device(test::types::encoder(), "E1");
    const auto core = b.device(test::types::switch_24(), "SW-1");
    const auto row = vlan(1, 10, "10.1.0.0/24");
    EXPECT_SAYS(refused(b.design, SetUpVlan{row, false, encoder, {}}), "E1 is no switch");
    EXPECT_SAYS(refused(b.design, SetUpVlan{row, false, DeviceId(99), {}}), "has no device");
    EXPECT_SAYS(refused(b.design, SetUpVlan{row, false, core, base::parse_ipv4("10.2.0.9")}),
                "querier's address 10.2.0.9 is not in the subnet");
}

}  // namespace
