#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::address_twice_test {

using testing::ElementsAre;
using testing::IsEmpty;

void set_address(CleanDesign& c, model::DeviceId device, const std::string& address) {
    c.b.change<model::Device>(device, [&](auto& row) { row.addresses.front().address = base::parse_ipv4(address); });
}

TEST(AddressTwice, firesAndIsCuredByTheNextFreeAddress) {
    auto c = clean_design();
    set_address(c, c.decoder, "10.30.0.11");
    EXPECT_THAT(rules_found(c.design()), ElementsAre("address-twice"));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), "address-twice"))), IsEmpty());
}

TEST(AddressTwice, namesEachPairOfThreeOnce) {
    auto c = clean_design();
    set_address(c, c.decoder, "10.30.0.1");
    set_address(c, c.encoder, "10.30.0.1");
    EXPECT_THAT(rules_found(c.design()), ElementsAre("address-twice", "address-twice"));
}

TEST(AddressTwice, isSilentInTwoVlans) {
    auto c = clean_design();
    c.b.change<model::Vlan>(c.second, [](auto& row) { row.subnet.reset(); });
    set_address(c, c.decoder2, "10.30.0.11");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(AddressTwice, isSilentWithinAStack) {
    auto c = clean_design();
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.change<model::Device>(id, [](auto& row) { row.bridging.stack = "main"; });
    c.b.address(c.switch_b, "10.30.0.1", c.usual);
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "address-twice"), 0);
}

TEST(AddressTwice, firesOnTheGateway) {
    auto c = clean_design();
    c.b.change<model::Vlan>(c.usual, [](auto& row) { row.gateway = base::parse_ipv4("10.30.0.21"); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("address-twice"));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), "address-twice"))), IsEmpty());
}

}  // namespace streamwright::test::address_twice_test
