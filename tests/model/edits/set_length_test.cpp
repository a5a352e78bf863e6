#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

TEST(SetLength, SetsAndClears) {
    test::DesignBuilder b;
    const auto sw = b.device(test::types::switch_24(), "SW-1");
    const auto cable = b.cable(test::types::cat6a(), {sw, {"1"}}, {sw, {"2"}});
    const auto design = done(b.design, SetLength{{cable}, 0_m});
    EXPECT_EQ(test::row_of<Cable>(design, cable).length, 0_m);
    EXPECT_TRUE(done(design, SetLength{{cable}, {}}) == b.design);
    done(b.design, SetLength{{cable}, 1000_km});
}

TEST(SetLength, Refuses) {
    test::DesignBuilder b;
    const auto sw = b.device(test::types::switch_24(), "SW-1");
    const auto cable = b.cable(test::types::cat6a(), {sw, {"1"}}, {sw, {"2"}});
    EXPECT_SAYS(refused(b.design, SetLength{{cable}, base::Length::from_count(-1)}), "from 0 to 1,000 km");
    EXPECT_SAYS(refused(b.design, SetLength{{cable}, 1000_km + 1_um}), "from 0 to 1,000 km");
    EXPECT_SAYS(refused(b.design, SetLength{{CableId(4)}, 1_m}), "no cable");
}

}  // namespace
