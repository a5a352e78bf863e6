#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

Waiver waiver() {
    Waiver row = Waiver::blank(WaiverId(1));
    row.rule = "link_overfull", row.subjects = {"cable:000000000001"}, row.reason = "agreed on site", row.by = "design";
    return row;
}

TEST(Waive, AddsAndChanges) {
    auto design = done(Design{}, Waive{waiver()});
    auto changed = waiver();
    changed.rule_revision = 2;
    design = done(design, Waive{changed});
    EXPECT_EQ(design.waivers.size(), 1U);
    EXPECT_EQ(*design.waivers.begin(), changed);
}

TEST(Waive, RefusesWithoutReasonOrRule) {
    auto row = waiver();
    row.reason = " \n ";
    EXPECT_SAYS(refused(Design{}, Waive{row}), "An accepted finding needs a reason: say why it may stand.");
    row = waiver();
    row.rule.clear();
    EXPECT_SAYS(refused(Design{}, Waive{row}), "An accepted finding must name its rule.");
    row = waiver();
    row.rule_revision = 0;
    EXPECT_SAYS(refused(Design{}, Waive{row}), "revision of the rule");
}

}  // namespace
