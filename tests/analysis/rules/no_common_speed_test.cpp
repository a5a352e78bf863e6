#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::no_common_speed_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// Two more switches, the copper ports of the second at those rates only.
model::Design joined(std::vector<base::BitRate> rates) {
    auto c = clean_design();
    auto type = types::make_switch(2, 1_Gbps, 0);
    type.key = {"test.switch.odd"};
    for (auto& port : type.ports) port.rates = rates;
    const auto id = c.b.device(type, "SW-C");
    c.b.port(port_of(c.switch_a, "9"), [](auto&) {});
    c.b.cable(types::cat6a(), port_of(c.switch_a, "9"), port_of(id, "1"), 20_m);
    return c.design();
}

TEST(NoCommonSpeed, firesWhereThePortsShareNone) {
    EXPECT_THAT(rules_found(joined({10_Gbps})), ElementsAre("no-common-speed"));
    EXPECT_THAT(rules_found(joined({1_Gbps, 10_Gbps})), IsEmpty());
}

TEST(NoCommonSpeed, firesWhereTheCableCarriesNeitherSpeed) {
    auto c = clean_design();  // a lead of two pairs carries 100 Mb/s at most (network-values.csv PHY-001, PHY-002)
    auto type = *types::cat6a();
    type.key = {"test.two-pairs"};
    type.pairs = 2;
    c.b.embed(std::make_shared<const catalogue::CableType>(type));
    auto gigabit = types::make_switch(2, 1_Gbps, 0);
    gigabit.key = {"test.switch.gigabit-only"};
    for (auto& port : gigabit.ports) port.rates = {1_Gbps};
    const auto id = c.b.device(gigabit, "SW-C");
    const auto cable = c.b.cable(types::cat6a(), port_of(c.switch_a, "9"), port_of(id, "1"), 20_m);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    c.b.change<model::Cable>(cable, [&](auto& row) { row.type = type.key; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("no-common-speed"));
}

}  // namespace streamwright::test::no_common_speed_test
