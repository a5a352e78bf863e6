#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

struct Routed {
    test::DesignBuilder b;
    DeviceId enc = b.device(test::types::encoder(), "ENC-1");
    DeviceId dec = b.device(test::types::decoder(), "DEC-1");
    StreamId one = b.stream(enc, 1_Mbps);
    StreamId two = b.stream(enc, 2_Mbps);
    PresetId preset = b.preset("Lecture");
    Subscribe edit(std::uint64_t id, std::optional<StreamId> stream) const {
        return {SubscriptionId(id), preset, dec, {"main"}, stream};
    }
};

TEST(Subscribe, AnInputShowsOneStreamInAPreset) {
    Routed r;
    auto design = done(r.b.design, r.edit(1, r.one));
    design = done(design, r.edit(2, r.two));
    ASSERT_EQ(design.subscriptions.size(), 1U);
    EXPECT_EQ(design.subscriptions.begin()->id, SubscriptionId(1)) << "the row of the input keeps its own";
    EXPECT_EQ(design.subscriptions.begin()->stream, r.two);
    EXPECT_TRUE(done(design, r.edit(3, {})) == r.b.design);
}

TEST(Subscribe, AnotherPresetIsAnotherRow) {
    Routed r;
    auto design = done(r.b.design, r.edit(1, r.one));
    design.presets.put(Preset::blank(PresetId(50)));
    auto edit = r.edit(2, r.two);
    edit.preset = PresetId(50);
    EXPECT_EQ(done(design, edit).subscriptions.size(), 2U);
    edit.id = SubscriptionId(1);
    EXPECT_SAYS(refused(design, edit), "already has a subscription");
}

TEST(Subscribe, Refuses) {
    Routed r;
    auto edit = r.edit(1, r.one);
    edit.input = {"pip"};
    EXPECT_SAYS(refused(r.b.design, edit), "DEC-1 has no decoder input pip");
    edit = r.edit(1, r.one);
    edit.decoder = r.enc;
    EXPECT_SAYS(refused(r.b.design, edit), "ENC-1 has no decoder input main");
    edit = r.edit(1, StreamId(9));
    EXPECT_SAYS(refused(r.b.design, edit), "names the stream");
    edit = r.edit(1, r.one);
    edit.preset = PresetId(9);
    EXPECT_SAYS(refused(r.b.design, edit), "no preset");
    edit = r.edit(1, {});
    edit.decoder = DeviceId(9);
    EXPECT_SAYS(refused(r.b.design, edit), "no device");
}

}  // namespace
