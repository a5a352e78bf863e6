#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::copper_cords_too_long_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// Two switches, panels at both ends, two leads of that gauge and length, fixed cable between.
model::Design channel(base::Length fixed, base::Length lead, std::optional<int> awg) {
    auto c = clean_design();
    auto cord = *types::cat6a_lead();
    cord.key = {"test.cord"};
    cord.made_length.reset();
    cord.awg = awg;
    const auto cord_ptr = std::make_shared<const catalogue::CableType>(cord);
    auto type = types::make_switch(4, 1_Gbps, 0);
    const auto left = c.b.device(type, "SW-X"), right = c.b.device(type, "SW-Y");
    c.b.change<model::Device>(left, [](auto& row) { row.bridging.priority = 4096; });
    const auto near = c.b.device(types::patch_panel(), "PP-X"), far = c.b.device(types::patch_panel(), "PP-Y");
    c.b.cable(cord_ptr, port_of(left, "1"), port_of(near, "f1"), lead);
    c.b.cable(types::cat6a(), port_of(near, "r1"), port_of(far, "r1"), fixed);
    c.b.cable(cord_ptr, port_of(far, "f1"), port_of(right, "1"), lead);
    return c.design();
}

TEST(CopperCordsTooLong, followFromFixedLengthAndGauge) {
    // COP-021, TIA-568 open-office clause: (102 - 80) / 1.2 = 18.333 m of 24 AWG together.
    EXPECT_THAT(rules_found(channel(80_m, 9_m, 24)), IsEmpty());
    EXPECT_THAT(rules_found(channel(80_m, 9200_mm, 24)), ElementsAre("copper-cords-too-long"));
    // COP-022: (102 - 80) / 1.5 = 14.667 m of 26 AWG.
    EXPECT_THAT(rules_found(channel(80_m, 7300_mm, 26)), IsEmpty());
    EXPECT_THAT(rules_found(channel(80_m, 7400_mm, 26)), ElementsAre("copper-cords-too-long"));
    const auto design = channel(80_m, 9_m, 26);
    const auto finding = finding_of(design, "copper-cords-too-long");
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_THAT(terms_of(design, finding), testing::Contains(testing::HasSubstr("(102 m - 80 m) / 1.5 = 14.667 m")));
}

TEST(CopperCordsTooLong, isSilentWhereTheGaugeIsNotKnown) {
    EXPECT_THAT(rules_found(channel(80_m, 9500_mm, {})), IsEmpty());
    EXPECT_THAT(rules_found(channel(80_m, 9500_mm, 22)), IsEmpty());
    EXPECT_THAT(rules_found(channel(90_m, 6_m, 26)), ElementsAre("copper-too-long")) << "over the whole reach";
}

}  // namespace streamwright::test::copper_cords_too_long_test
