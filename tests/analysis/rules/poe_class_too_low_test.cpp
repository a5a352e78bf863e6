#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::poe_class_too_low_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// The decoder asks for that class, with or without a supply of its own; switch ports give class 4.
model::Design asking(int poe_class, bool own_supply, bool port_gives = true) {
    auto c = clean_design();
    auto type = types::make_decoder();
    type.key = {"test.decoder.powered"};
    type.ports[1].poe = catalogue::PoePort{catalogue::PoeSide::takes, poe_class, 3_W};
    if (!own_supply) type.power.reset();
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(c.decoder, [&](auto& row) { row.type = type.key; });
    if (!port_gives) {
        auto bridge = types::make_switch(24, 1_Gbps, 4);
        bridge.key = {"test.switch.plain"};
        for (auto& port : bridge.ports) port.poe.reset();
        c.b.embed(std::make_shared<const catalogue::DeviceType>(bridge));
        c.b.change<model::Device>(c.switch_b, [&](auto& row) { row.type = bridge.key; });
    }
    return c.design();
}

TEST(PoeClassTooLow, firesAboveTheClassOfThePort) {
    EXPECT_THAT(rules_found(asking(4, false)), IsEmpty());
    EXPECT_THAT(rules_found(asking(5, false)), ElementsAre("poe-class-too-low"));
    const auto finding = finding_of(asking(5, false), "poe-class-too-low");
    EXPECT_EQ(finding.severity, Severity::error);
    // network-values.csv POE-025 and POE-023: class 5 takes 45 W at the port, class 4 gives 30 W.
    EXPECT_EQ(finding.measured, base::Value(45_W));
    EXPECT_EQ(finding.limit, base::Value(30_W));
    EXPECT_THAT(terms_of(asking(5, false), finding),
                ElementsAre("45 W for class 5 - 30 W of class 4 = 15 W too little"));
}

TEST(PoeClassTooLow, classZeroIsNoLessThanThree) {
    EXPECT_THAT(rules_found(asking(0, false)), IsEmpty());
    EXPECT_THAT(rules_found(asking(3, false)), IsEmpty());
}

TEST(PoeClassTooLow, warnsWhereTheDeviceHasASupply) {
    EXPECT_EQ(finding_of(asking(6, true), "poe-class-too-low").severity, Severity::warning);
    EXPECT_THAT(rules_found(asking(6, true, false)), IsEmpty()) << "on a plain port the supply is meant";
}

TEST(PoeClassTooLow, firesWhereThePortGivesNone) {
    EXPECT_THAT(rules_found(asking(3, false, false)), ElementsAre("poe-class-too-low"));
}

TEST(PoeClassTooLow, aLimitOrAPortThatIsOffCounts) {
    const auto set = [](base::Power limit, bool off) {
        DesignBuilder b;
        b.design = asking(4, false);
        for (const auto& device : model::Design(b.design).devices)
            if (b.design.type_of(device)->bridging)
                b.port(port_of(device.id, "1"), [&](auto& row) { row.poe.limit = limit, row.poe.off = off; });
        return b.design;
    };
    EXPECT_THAT(rules_found(set(30_W, false)), IsEmpty());
    // POE-023, POE-021: 29.9 W is below class 4 (30 W); class 3 is 15.4 W.
    EXPECT_THAT(rules_found(set(29'900_mW, false)), ElementsAre("poe-class-too-low"));
    EXPECT_EQ(finding_of(set(29'900_mW, false), "poe-class-too-low").limit, base::Value(15'400_mW));
    EXPECT_THAT(rules_found(set(30_W, true)), ElementsAre("poe-class-too-low"));
}

}  // namespace streamwright::test::poe_class_too_low_test
