#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

TEST(SetCableType, GivesAnotherTypeAndDropsTheLengthOfAMadeLead) {
    test::DesignBuilder b;
    const auto sw = b.device(test::types::switch_24(), "SW-1");
    const auto one = b.cable(test::types::cat6a(), {sw, {"1"}}, {sw, {"2"}}, 20_m);
    const auto two = b.cable(test::types::cat6a(), {sw, {"3"}}, {sw, {"4"}}, 20_m);
    auto design = done(b.design, SetCableType{{one, two}, test::types::cat6a_lead()});
    for (const auto id : {one, two}) {
        EXPECT_EQ(test::row_of<Cable>(design, id).type, test::types::cat6a_lead()->key);
        EXPECT_FALSE(test::row_of<Cable>(design, id).length.has_value());
    }
    design = done(b.design, SetCableType{{one}, test::types::om3()});
    EXPECT_EQ(test::row_of<Cable>(design, one).length, 20_m);
}

TEST(SetCableType, Refuses) {
    EXPECT_SAYS(refused(Design{}, SetCableType{{CableId(1)}, test::types::om3()}), "no cable");
    EXPECT_SAYS(refused(Design{}, SetCableType{{}, nullptr}), "needs a type");
}

TEST(SetCableType, OfNoCableEmbedsNothing) {
    const auto delta = make(Design{}, SetCableType{{}, test::types::om3()});
    ASSERT_TRUE(delta.ok());
    EXPECT_TRUE(delta->empty());
}

}  // namespace
