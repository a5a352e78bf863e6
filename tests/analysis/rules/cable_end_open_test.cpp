#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::cable_end_open_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(CableEndOpen, advisesOnAnOpenEndAndRemovesTheCable) {
    auto c = clean_design();
    c.b.open_cable(types::cat6a(), port_of(c.switch_a, "9"));
    EXPECT_THAT(rules_found(c.design()), ElementsAre("cable-end-open"));
    const auto finding = finding_of(c.design(), "cable-end-open");
    EXPECT_EQ(finding.severity, analysis::Severity::advice);
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(CableEndOpen, advisesWherePluggedInNowhere) {
    auto c = clean_design();
    const auto id = c.b.open_cable(types::cat6a(), port_of(c.switch_a, "9"));
    c.b.change<model::Cable>(id, [](auto& row) { row.a.reset(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("cable-end-open"));
}

}  // namespace streamwright::test::cable_end_open_test
