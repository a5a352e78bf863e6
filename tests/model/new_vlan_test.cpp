// Proposals for a new VLAN; expected subnets are worked out by hand from RFC 1918 and RFC 4632.
#include "core/model/new_vlan.h"

#include "core/model/edits/all_edits.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::model::new_vlan_test {

std::string subnet_of(const Vlan& row) { return row.subnet ? base::print(*row.subnet) : "none"; }

TEST(NewVlan, TheFirstIsNumberOneAsPortsThatSayNothingAreInIt) {
    const auto row = new_vlan(Design{}, VlanId(7));
    EXPECT_EQ(row.id, VlanId(7));
    EXPECT_EQ(row.vid, 1);  // IEEE 802.1Q: the default PVID
    EXPECT_EQ(subnet_of(row), "10.1.0.0/24");
}

TEST(NewVlan, TheFirstTakesTheSubnetThatAddressesStandIn) {
    test::DesignBuilder b;
    const auto one = b.device(test::types::encoder(), "E1"), two = b.device(test::types::encoder(), "E2");
    const auto set = [&](DeviceId id, const char* address) {
        b.change<Device>(id, [&](auto& row) { row.addresses = {HostAddress{{}, {}, base::parse_ipv4(address), {}}}; });
    };
    set(one, "192.168.5.20");
    EXPECT_EQ(subnet_of(new_vlan(b.design, VlanId(1))), "192.168.5.0/24");
    set(two, "192.168.7.20");  // 5 and 7 differ in the second bit from the right: /22 from 192.168.4.0
    EXPECT_EQ(subnet_of(new_vlan(b.design, VlanId(1))), "192.168.4.0/22");
    set(two, "10.0.0.1");  // no subnet holds both
    EXPECT_EQ(subnet_of(new_vlan(b.design, VlanId(1))), "none");
    set(one, "10.20.0.9");  // 0 and 20 differ in the fourth bit of the second number: 8 + 3 bits are alike
    EXPECT_EQ(subnet_of(new_vlan(b.design, VlanId(1))), "10.0.0.0/11");
}

TEST(NewVlan, HasRoomForTwiceTheDevices) {
    test::DesignBuilder b;
    for (int i = 0; i < 128; ++i) b.device(test::types::encoder(), "E" + std::to_string(i));
    EXPECT_EQ(subnet_of(new_vlan(b.design, VlanId(1))), "10.1.0.0/23");  // 256 wanted, a /24 has 254
}

TEST(NewVlan, NumbersAndSubnetsNeverRepeat) {
    Design design;
    std::set<int> numbers;
    for (std::uint64_t id = 1; id <= 450; ++id) {
        const auto row = new_vlan(design, VlanId(id));
        EXPECT_TRUE(numbers.insert(row.vid).second) << row.vid;
        const auto delta = make(design, SetUpVlan{row, false, {}, {}});  // refuses overlaps
        ASSERT_TRUE(delta.ok()) << delta.error().english();
        apply(design, *delta);
        EXPECT_EQ(row.subnet.has_value(), id <= 256) << id;  // one of 10.0.0.0 to 10.255.0.0 each
    }
    EXPECT_TRUE(numbers.contains(10) && numbers.contains(20) && numbers.contains(4090) && numbers.contains(2));
}

}  // namespace streamwright::model::new_vlan_test
