#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::poe_too_little_arrives_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// A decoder of class 4 on a cable of that gauge and length; switch ports give class 4.
model::Design fed(base::Power draw, base::Length length, std::optional<int> awg, base::Temperature warmth = 20_degC) {
    auto c = clean_design();
    auto type = types::make_decoder();
    type.key = {"test.decoder.powered"};
    type.ports[1].poe = catalogue::PoePort{catalogue::PoeSide::takes, 4, draw};
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(c.decoder, [&](auto& row) { row.type = type.key; });
    auto cable = *types::cat6a();
    cable.key = {"test.gauged"};
    cable.use = catalogue::CableUse::lead;  // no permanent link is judged
    cable.awg = awg;
    c.b.embed(std::make_shared<const catalogue::CableType>(cable));
    c.b.change<model::Cable>(c.decoder_cable, [&](auto& row) { row.type = cable.key, row.length = length; });
    c.b.change<model::Settings>({}, [&](auto& row) { row.cable_temperature = warmth; });
    return c.design();
}

TEST(PoeTooLittleArrives, theStandardCableCarriesItsClass) {
    // POE-023, POE-024: 30 W at 50 V less 0.6 A squared x 12.5 ohm are 25.5 W.
    EXPECT_THAT(rules_found(fed(25'500_mW, 100_m, {})), IsEmpty());
    EXPECT_THAT(rules_found(fed(25'500_mW, 100_m, 24)), IsEmpty());  // 8.42 ohm (COP-037)
}

TEST(PoeTooLittleArrives, thinCableKeepsMore) {
    // 28 AWG: 21.29 ohm per 100 m and conductor (COP-039), loop of two pairs the same: 0.36 x 21.3 = 7.67 W lost.
    const auto design = fed(25'500_mW, 100_m, 28);
    EXPECT_THAT(rules_found(design), ElementsAre("poe-too-little-arrives"));
    const auto finding = finding_of(design, "poe-too-little-arrives");
    EXPECT_NEAR(static_cast<double>(std::get<base::Power>(*finding.limit).count()), 22'330, 20);
    EXPECT_THAT(terms_of(design, finding), testing::Contains(testing::HasSubstr("loop of 100 m at 20 °C: 21.3 ohm")));
    EXPECT_THAT(rules_found(fed(22_W, 100_m, 28)), IsEmpty());
    EXPECT_THAT(rules_found(fed(25'500_mW, 50_m, 28)), IsEmpty());
}

TEST(PoeTooLittleArrives, heatCounts) {
    // 90 m of 26 AWG: 12.05 ohm (COP-038) take 4.34 W; at 60 degrees C 15.7 % more (COP-040): 13.95 ohm take 5.02 W.
    EXPECT_THAT(rules_found(fed(25'300_mW, 90_m, 26)), IsEmpty());
    EXPECT_THAT(rules_found(fed(25'300_mW, 90_m, 26, 60_degC)), testing::Contains("poe-too-little-arrives"));
}

}  // namespace streamwright::test::poe_too_little_arrives_test
