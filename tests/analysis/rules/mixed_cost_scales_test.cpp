#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::mixed_cost_scales_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

CleanDesign with_scale(std::optional<bool> counts_long) {
    auto c = clean_design();
    change_type(c, c.switch_b, [&](auto& type) { type.bridging->long_path_costs = counts_long; });
    return c;
}

TEST(MixedCostScales, firesAndIsCuredByACostByHand) {
    const auto c = with_scale(false);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("mixed-cost-scales"));
    const auto finding = finding_of(c.design(), "mixed-cost-scales");
    EXPECT_EQ(finding.severity, Severity::advice);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("SW-B by short path costs"));
    const auto after = cured(c.design(), finding);
    EXPECT_THAT(rules_found(after), IsEmpty());
    const auto* port = after.port_overrides.find(port_of(c.switch_b, "s1"));
    EXPECT_EQ(port->path_cost, 2000);  // 10 Gb/s on the long scale, IEEE 802.1Q, Table 13-4
}

TEST(MixedCostScales, isAWarningInALoopAndOffersNothingForSeveralPorts) {
    auto c = with_scale(false);
    add_fibre_trunk(c);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("mixed-cost-scales"));
    const auto finding = finding_of(c.design(), "mixed-cost-scales");
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_THAT(finding.remedies, IsEmpty());
}

TEST(MixedCostScales, isSilentWhereTheScaleIsNotKnownOrPlaysNoPart) {
    EXPECT_THAT(rules_found(with_scale(std::nullopt).design()), IsEmpty());
    auto c = with_scale(false);
    c.b.change<model::Device>(c.switch_b, [](auto& row) { row.bridging.tree_off = true; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

// 200,000 for 100 Mb/s does not fit into 16 bits; the switch that counts long has one port, so it is set there: 19.
TEST(MixedCostScales, setsAShortCostWhereALongOneDoesNotFit) {
    auto c = with_scale(false);
    for (const auto id : {c.switch_a, c.switch_b}) c.b.design.port_overrides.erase(port_of(id, "s1"));
    c.b.design.cables.erase(c.trunk);
    add_copper_trunk(c, "24");
    c.b.port(port_of(c.switch_a, "24"), [](auto& row) { row.rate_limit = 100_Mbps; });
    const auto finding = finding_of(c.design(), "mixed-cost-scales");
    const auto& edit = std::get<model::ConfigurePort>(finding.remedies.at(0).edit);
    EXPECT_EQ(edit.row.port, port_of(c.switch_a, "24"));
    EXPECT_EQ(edit.row.path_cost, 19);  // IEEE 802.1D-1998, Table 8-5
}

}  // namespace streamwright::test::mixed_cost_scales_test
