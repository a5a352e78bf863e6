#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::subnet_too_small_test {

using testing::ElementsAre;
using testing::IsEmpty;

/// The clean design, in its usual VLAN of this subnet so many hosts in all: two switches, an encoder, a decoder, and
/// computers on switches of many ports.
CleanDesign with_hosts(int hosts, const std::string& subnet) {
    auto c = clean_design();
    auto bridge = *types::switch_24();
    const auto like = *bridge.find_port({"10"});
    for (int i = 0; i < hosts; ++i) {
        bridge.ports.push_back(like);
        bridge.ports.back().key = {"x" + std::to_string(i)};
    }
    c.b.embed(std::make_shared<const catalogue::DeviceType>(bridge));
    c.b.change<model::Vlan>(c.usual, [&](auto& row) {
        row.subnet = base::parse_ipv4_prefix(subnet);
        row.gateway.reset();
    });
    for (int i = 0; i + 4 < hosts; ++i) {
        const auto decoder = c.b.device(types::decoder(), "DEC-x" + std::to_string(i));
        c.b.cable(types::cat6a(), port_of(decoder, "net"), port_of(c.switch_a, "x" + std::to_string(i)),
                  base::Length::from_count(20'000'000));
    }
    return c;
}

std::ptrdiff_t told(const model::Design& design) { return std::ranges::count(rules_found(design), "subnet-too-small"); }

// Field case F24: 2^8 - 2 = 254 addresses (RFC 950): 254 hosts fit, 255 do not; 280 with a fifth more are 336, and a
// /23 has 2^9 - 2 = 510.
TEST(SubnetTooSmall, firesJustAboveTheAddresses) {
    EXPECT_EQ(told(with_hosts(254, "10.30.0.0/24").design()), 0);
    EXPECT_EQ(told(with_hosts(255, "10.30.0.0/24").design()), 1);
    const auto design = with_hosts(280, "10.30.0.0/24").design();
    const auto finding = finding_of(design, "subnet-too-small");
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{280}));
    EXPECT_EQ(finding.limit, base::Value(std::int64_t{254}));
    EXPECT_EQ(cured(design, finding).vlans.begin()->subnet, base::parse_ipv4_prefix("10.30.0.0/23"));
}

TEST(SubnetTooSmall, countsAGatewayOfItsOwn) {
    auto c = with_hosts(254, "10.30.0.0/24");
    c.b.change<model::Vlan>(c.usual, [](auto& row) { row.gateway = base::parse_ipv4("10.30.0.254"); });
    EXPECT_EQ(told(c.design()), 1);
}

TEST(SubnetTooSmall, isSilentWithoutASubnet) {
    auto c = with_hosts(280, "10.30.0.0/24");
    c.b.change<model::Vlan>(c.usual, [](auto& row) { row.subnet.reset(); });
    EXPECT_EQ(told(c.design()), 0);
}

TEST(SubnetTooSmall, widensOnlyWhereNoOtherSubnetIsInTheWay) {
    auto c = with_hosts(280, "10.30.0.0/24");
    c.b.change<model::Vlan>(c.second, [](auto& row) { row.subnet = base::parse_ipv4_prefix("10.30.1.0/24"); });
    EXPECT_TRUE(finding_of(c.design(), "subnet-too-small").remedies.empty());
}

}  // namespace streamwright::test::subnet_too_small_test
