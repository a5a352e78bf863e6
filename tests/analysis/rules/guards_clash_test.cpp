#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::guards_clash_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "guards-clash";

CleanDesign marked(const std::string& port, bool loop, bool guard, bool edge) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_a, port), [&](auto& row) {
        row.loop_guard = loop;
        row.bpdu_guard = guard;
        row.edge = edge;
    });
    return c;
}

// Field case F13: loop guard and edge exclude each other; BPDU guard belongs to edge ports, loop guard to trunks.
TEST(GuardsClash, firesTowardAnEndpointAndTakesLoopGuardAway) {
    for (const bool guard : {true, false}) {
        const auto c = marked("1", true, guard, !guard);
        EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
        const auto after = cured(c.design(), finding_of(c.design(), rule));
        EXPECT_THAT(rules_found(after), IsEmpty());
        EXPECT_FALSE(after.port_overrides.find(port_of(c.switch_a, "1"))->loop_guard);
    }
}

TEST(GuardsClash, keepsLoopGuardOnATrunk) {
    const auto c = marked("s1", true, true, false);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("edge-port-to-bridge", rule));
    const auto after = cured(c.design(), finding_of(c.design(), rule));
    EXPECT_THAT(rules_found(after), IsEmpty());
    EXPECT_TRUE(after.port_overrides.find(port_of(c.switch_a, "s1"))->loop_guard);
}

TEST(GuardsClash, isSilentForEachGuardAlone) {
    EXPECT_THAT(rules_found(marked("s1", true, false, false).design()), IsEmpty());
    EXPECT_THAT(rules_found(marked("1", false, true, true).design()), IsEmpty());
}

}  // namespace streamwright::test::guards_clash_test
