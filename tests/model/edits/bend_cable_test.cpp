#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

TEST(BendCable, StoresBendsAndPin) {
    test::DesignBuilder b;
    const auto cable = b.open_cable(test::types::hdmi(), {b.device(test::types::source(), "SRC-1"), {"out"}});
    const auto sheet = b.sheet();
    const CableLine line{{sheet, cable}, {{10_mm, 20_mm}, {10_mm, 30_mm}}, true, {}};
    const auto design = done(b.design, BendCable{line});
    EXPECT_EQ(*design.cable_lines.find({sheet, cable}), line);
}

TEST(BendCable, RefusesUnknownCablesAndPlacesFarAway) {
    test::DesignBuilder b;
    const auto cable = b.open_cable(test::types::hdmi(), {b.device(test::types::source(), "SRC-1"), {"out"}});
    const auto sheet = b.sheet();
    EXPECT_SAYS(refused(b.design, BendCable{{{sheet, CableId(7)}, {}, false, {}}}), "names the cable");
    EXPECT_SAYS(refused(b.design, BendCable{{{SheetId(7), cable}, {}, false, {}}}), "names the sheet");
    EXPECT_SAYS(refused(b.design, BendCable{{{sheet, cable}, {{11_km, 0_mm}}, false, {}}}), "within 10 km");
    EXPECT_SAYS(refused(b.design, BendCable{{{sheet, cable}, std::vector<SheetPoint>(1001), false, {}}}), "1000 bends");
}

}  // namespace
