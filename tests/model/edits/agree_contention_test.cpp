#include "core/model/edits/agree_contention.h"

#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

struct Trunk {
    test::DesignBuilder b;
    CableId cable;
    Trunk() : cable(make()) {}
    CableId make() {
        const auto sw = b.device(test::types::switch_24(), "SW-1");
        return b.cable(test::types::cat6a(), {sw, {"1"}}, {sw, {"2"}});
    }
};

TEST(AgreeContention, SetsChangesAndClears) {
    Trunk t;
    const AgreedContention four{4, "IT", "2026-11-20"};
    const auto design = done(t.b.design, AgreeContention{t.cable, four});
    EXPECT_EQ(test::row_of<Cable>(design, t.cable).agreed, four);
    EXPECT_TRUE(done(design, AgreeContention{t.cable, {}}) == t.b.design);
    done(t.b.design, AgreeContention{t.cable, AgreedContention{0, "site", ""}});
}

TEST(AgreeContention, Refuses) {
    Trunk t;
    EXPECT_SAYS(refused(t.b.design, AgreeContention{t.cable, AgreedContention{-1, "IT", ""}}), "0 to 100000");
    EXPECT_SAYS(refused(t.b.design, AgreeContention{t.cable, AgreedContention{4, " ", ""}}), "who agreed");
    EXPECT_SAYS(refused(t.b.design, AgreeContention{t.cable, AgreedContention{4, "IT", "2026-02-30"}}),
                "a date such as");
    EXPECT_SAYS(refused(t.b.design, AgreeContention{CableId(4), AgreedContention{4, "IT", ""}}), "no cable");
}

}  // namespace
