#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::address_outside_subnet_test {

using testing::ElementsAre;
using testing::IsEmpty;

model::Design with_address(const std::string& address) {
    auto c = clean_design();
    c.b.change<model::Device>(c.decoder, [&](auto& row) { row.addresses.front().address = base::parse_ipv4(address); });
    return c.design();
}

TEST(AddressOutsideSubnet, firesOutsideAndOnTheReservedEnds) {
    // Field case F24: addresses outside the prefix, network and broadcast address are errors (RFC 950).
    for (const auto* bad : {"10.31.0.21", "10.30.0.0", "10.30.0.255"}) {
        const auto design = with_address(bad);
        EXPECT_THAT(rules_found(design), ElementsAre("address-outside-subnet")) << bad;
        EXPECT_THAT(rules_found(cured(design, finding_of(design, "address-outside-subnet"))), IsEmpty()) << bad;
    }
}

TEST(AddressOutsideSubnet, isSilentOnTheFirstAndLastHost) {
    EXPECT_THAT(rules_found(with_address("10.30.0.2")), IsEmpty());
    EXPECT_THAT(rules_found(with_address("10.30.0.254")), IsEmpty());
}

TEST(AddressOutsideSubnet, bothAddressesOfATwoHostSubnetAreHosts) {
    auto c = clean_design();  // RFC 3021: a /31 has no network and no broadcast address
    c.b.change<model::Vlan>(c.second, [](auto& row) { row.subnet = base::parse_ipv4_prefix("10.50.0.20/31"); });
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.addresses.erase(row.addresses.begin() + 1); });
    c.b.change<model::Device>(c.switch_a,
                              [](auto& row) { row.bridging.queriers[1].address = base::parse_ipv4("10.50.0.20"); });
    c.b.change<model::Device>(c.encoder2, [](auto& row) { row.addresses.clear(); });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(AddressOutsideSubnet, warnsInsideTheLeases) {
    auto c = clean_design();
    c.b.change<model::Vlan>(c.usual, [](auto& row) {
        row.lease_first = base::parse_ipv4("10.30.0.21");
        row.lease_last = base::parse_ipv4("10.30.0.99");
    });
    const auto finding = finding_of(c.design(), "address-outside-subnet");
    EXPECT_EQ(finding.severity, analysis::Severity::warning);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("address-outside-subnet"));
}

TEST(AddressOutsideSubnet, isSilentWithoutASubnet) {
    auto c = clean_design();
    c.b.change<model::Vlan>(c.usual, [](auto& row) { row.subnet.reset(); });
    c.b.change<model::Device>(c.decoder,
                              [](auto& row) { row.addresses.front().address = base::parse_ipv4("192.0.2.9"); });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::address_outside_subnet_test
