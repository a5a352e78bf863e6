#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::edge_port_to_bridge_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "edge-port-to-bridge";

CleanDesign marked(const std::string& port, bool edge, bool guard) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_a, port), [&](auto& row) {
        row.edge = edge;
        row.bpdu_guard = guard;
    });
    return c;
}

TEST(EdgePortToBridge, isAnErrorWithTheGuardAndAWarningWithoutIt) {
    const auto guarded = marked("s1", true, true), edge = marked("s1", true, false);
    for (const auto* c : {&guarded, &edge}) {
        EXPECT_THAT(rules_found(c->design()), ElementsAre(rule));
        EXPECT_THAT(rules_found(cured(c->design(), finding_of(c->design(), rule))), IsEmpty());
    }
    EXPECT_EQ(finding_of(guarded.design(), rule).severity, Severity::error);
    EXPECT_EQ(finding_of(edge.design(), rule).severity, Severity::warning);
}

TEST(EdgePortToBridge, isSilentTowardEndpointsAndTowardASwitchWithoutATree) {
    EXPECT_THAT(rules_found(marked("1", true, true).design()), IsEmpty());
    for (const bool own : {true, false}) {
        auto c = marked("s1", true, true);
        c.b.change<model::Device>(own ? c.switch_a : c.switch_b, [](auto& row) { row.bridging.tree_off = true; });
        EXPECT_THAT(rules_found(c.design()), IsEmpty());
    }
}

// A switch that hands BPDUs on is heard through as a cable is: A - C - B, C without a tree.
TEST(EdgePortToBridge, hearsASwitchBeyondOneThatHandsBpdusOn) {
    auto c = marked("20", false, true);
    const auto between = c.b.device(types::switch_24(), "SW-C");
    c.b.change<model::Device>(between, [](auto& row) { row.bridging.tree_off = true; });
    c.b.cable(types::cat6a(), port_of(c.switch_a, "20"), port_of(between, "1"), analysis_test::short_run);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    c.b.cable(types::cat6a(), port_of(between, "2"), port_of(c.switch_b, "20"), analysis_test::short_run);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), rule)), HasSubstr("leads to SW-B"));
}

}  // namespace streamwright::test::edge_port_to_bridge_test
