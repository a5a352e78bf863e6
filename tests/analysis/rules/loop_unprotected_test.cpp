#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::loop_unprotected_test {

using analysis::Severity;
using catalogue::Bpdus;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using namespace base::literals;

constexpr std::string_view rule = "loop-unprotected";

CleanDesign looped(bool a_off, bool b_off) {
    auto c = clean_design();
    add_fibre_trunk(c);
    for (const auto& [id, off] : {std::pair(c.switch_a, a_off), std::pair(c.switch_b, b_off)})
        c.b.change<model::Device>(id, [&, off = off](auto& row) { row.bridging.tree_off = off; });
    return c;
}

TEST(LoopUnprotected, firesWhereNobodyRunsATreeAndIsCuredByOneThatDoes) {
    const auto c = looped(true, true);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

// IEEE 802.1Q: a switch hears its own BPDUs through one that hands them on, and blocks one of its ports.
TEST(LoopUnprotected, isSilentWhereOneSwitchOfTheLoopRunsTheTree) {
    for (const bool a_off : {true, false}) EXPECT_THAT(rules_found(looped(a_off, !a_off).design()), IsEmpty());
}

/// A decoder with a built-in switch, both of its network ports on switch A.
CleanDesign joined_twice(Bpdus bpdus) {
    auto c = clean_design();
    auto type = types::make_chained_decoder();
    type.bridging->bpdus = bpdus;
    const auto decoder = c.b.device(type, "DEC-3"), display = c.b.device(types::display(), "DSP-3");
    c.b.cable(types::hdmi(), port_of(decoder, "out"), port_of(display, "in"), 2_m);
    c.b.cable(types::cat6a(), port_of(decoder, "net"), port_of(c.switch_a, "11"), 20_m);
    c.b.cable(types::cat6a(), port_of(decoder, "aux"), port_of(c.switch_a, "12"), 20_m);
    return c;
}

TEST(LoopUnprotected, firesForAnEndpointThatSwallowsBpdus) {
    const auto c = joined_twice(Bpdus::dropped);
    EXPECT_THAT(rules_found(c.design()), Contains(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_THAT(english_sentence(c.design(), finding), AllOf(HasSubstr("DEC-3 lets no BPDUs through")));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), Not(Contains(rule)));
    EXPECT_THAT(rules_found(joined_twice(Bpdus::passed).design()), Not(Contains(rule)));
}

TEST(LoopUnprotected, firesForAPatchLeadBackIntoTheSameSwitch) {
    auto c = clean_design();
    c.b.cable(types::cat6a(), port_of(c.switch_a, "20"), port_of(c.switch_a, "21"), 20_m);
    EXPECT_THAT(rules_found(c.design()), Not(Contains(rule)));  // the tree blocks one of the two
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.bridging.tree_off = true; });
    EXPECT_THAT(rules_found(c.design()), Contains(rule));
}

TEST(LoopUnprotected, countsALoopOnlyWhereOneVlanGoesAllTheWayRound) {
    auto c = looped(true, true);
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.port(port_of(id, "s2"), [&](auto& row) {
            row.tagged.clear();
            row.no_untagged = true;
        });
    EXPECT_THAT(rules_found(c.design()), Not(Contains(rule)));
}

}  // namespace streamwright::test::loop_unprotected_test
