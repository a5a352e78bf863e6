#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::tree_on_slow_link_test {

using analysis::Severity;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

constexpr std::string_view rule = "tree-on-slow-link";

/// 10 Gb/s cost 2,000 and 1 Gb/s 20,000 (IEEE 802.1Q, Table 13-4): a cost by hand above 20,000 turns to the slow link.
CleanDesign with_trunk_cost(int cost) {
    auto c = clean_design();
    add_copper_trunk(c, "24");
    c.b.port(port_of(c.switch_b, "s1"), [&](auto& row) { row.path_cost = cost; });
    return c;
}

TEST(TreeOnSlowLink, firesWhereACostByHandTurnsTheTreeAndIsCuredByTakingItAway) {
    const auto c = with_trunk_cost(20001);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_EQ(finding.measured, base::Value(1_Gbps));
    EXPECT_EQ(finding.limit, base::Value(10_Gbps));
    EXPECT_THAT(english_sentence(c.design(), finding), AllOf(HasSubstr("10 Gb/s) stands blocked"), HasSubstr("SW-B")));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(TreeOnSlowLink, isSilentWhileTheFastLinkIsStillTheCheaper) {
    EXPECT_THAT(rules_found(with_trunk_cost(19999).design()), IsEmpty());
}

TEST(TreeOnSlowLink, isSilentWhereBothAreOfOneSpeed) {
    auto c = clean_design();
    add_fibre_trunk(c);
    c.b.port(port_of(c.switch_b, "s1"), [&](auto& row) { row.path_cost = 9000; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

// IEEE 802.1D-1998 stops at 10 Gb/s; above it short costs are 1 (common practice). 2 x 10 Gb/s and 3 x 10 Gb/s tie, and
// the lower port identifier wins.
TEST(TreeOnSlowLink, firesWhereShortCostsTellNoSpeedsApart) {
    DesignBuilder b;
    auto type = types::make_switch(2, 1_Gbps, 5);
    type.bridging->long_path_costs = false;
    b.embed(types::module_sr());
    const auto near = b.device(type, "SW-A"), far = b.device(type, "SW-B");
    b.change<model::Device>(near, [](auto& row) { row.bridging.priority = 4096; });
    for (int i = 1; i <= 5; ++i) {
        const auto cage = 's' + std::to_string(i);
        for (const auto id : {near, far})
            b.port(port_of(id, cage), [&](auto& row) {
                row.module = types::module_sr()->key;
                row.aggregate = i <= 2 ? "two" : "three";
            });
        b.cable(types::om3(), port_of(near, cage), port_of(far, cage), 20_m);
    }
    EXPECT_THAT(rules_found(b.design), ElementsAre(rule));
    const auto finding = finding_of(b.design, rule);
    EXPECT_EQ(finding.measured, base::Value(20_Gbps));
    EXPECT_EQ(finding.limit, base::Value(30_Gbps));
    EXPECT_THAT(english_sentence(b.design, finding), HasSubstr("short path costs"));
    EXPECT_THAT(rules_found(cured(b.design, finding)), IsEmpty());
}

// The root on the slow switch: every cost follows its speed, and the trunk of 10 Gb/s is blocked all the same.
TEST(TreeOnSlowLink, firesWhereTheRootStandsBehindSlowLinks) {
    auto c = clean_design();
    const auto slow = c.b.device(types::switch_24(), "SW-L");
    c.b.change<model::Device>(slow, [](auto& row) { row.bridging.priority = 0; });
    for (const auto& [id, port] : {std::pair(c.switch_a, "1"), std::pair(c.switch_b, "2")})
        for (const auto& end : {port_of(id, "23"), port_of(slow, port)})
            c.b.port(end, [&](auto& row) { row.tagged = {c.second}; });
    c.b.cable(types::cat6a(), port_of(c.switch_a, "23"), port_of(slow, "1"), 20_m);
    c.b.cable(types::cat6a(), port_of(c.switch_b, "23"), port_of(slow, "2"), 20_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(finding_of(c.design(), rule).remedies, IsEmpty());
}

}  // namespace streamwright::test::tree_on_slow_link_test
