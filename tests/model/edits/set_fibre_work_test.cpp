#include "core/model/edits/set_fibre_work.h"

#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

struct TwoSwitches {
    test::DesignBuilder b;
    DeviceId one = b.device(test::types::switch_24(), "SW-1"), other = b.device(test::types::switch_24(), "SW-2");
    CableId fibre = b.cable(test::types::om3(), {one, {"s1"}}, {other, {"s1"}});
    CableId copper = b.cable(test::types::cat6a(), {one, {"1"}}, {other, {"1"}});
};

TEST(SetFibreWork, SetsChangesAndClears) {
    TwoSwitches t;
    const FibreWork work{1, 2, 3};
    const auto design = done(t.b.design, SetFibreWork{t.fibre, work});
    EXPECT_EQ(test::row_of<Cable>(design, t.fibre).fibre, work);
    EXPECT_TRUE(done(design, SetFibreWork{t.fibre, {}}) == t.b.design);
}

TEST(SetFibreWork, Refuses) {
    TwoSwitches t;
    EXPECT_SAYS(refused(t.b.design, SetFibreWork{t.fibre, {-1, 0, 0}}), "pair swaps");
    EXPECT_SAYS(refused(t.b.design, SetFibreWork{t.fibre, {{}, 101, 0}}), "splices");
    EXPECT_SAYS(refused(t.b.design, SetFibreWork{t.fibre, {{}, 0, -1}}), "connector pairs");
    EXPECT_SAYS(refused(t.b.design, SetFibreWork{t.copper, {{}, 1, 0}}), "no fibre");
    EXPECT_SAYS(refused(t.b.design, SetFibreWork{CableId(4), {}}), "no cable");
}

}  // namespace
