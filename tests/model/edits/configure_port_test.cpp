#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

struct WithSwitch {
    test::DesignBuilder b;
    DeviceId sw = b.device(test::types::switch_24(), "SW-1");
    PortOverride port(const char* key) const { return PortOverride::blank({sw, {key}}); }
};

TEST(ConfigurePort, SetsAModuleAndEmbedsItsType) {
    WithSwitch s;
    ConfigurePort edit{s.port("s1"), test::types::module_sr()};
    edit.row.module = edit.module->key;
    const auto design = done(s.b.design, edit);
    EXPECT_EQ(design.port_overrides.find({s.sw, {"s1"}})->module, edit.module->key);
    EXPECT_TRUE(design.device_types.contains(edit.module->key));
}

TEST(ConfigurePort, ABlankRowGoes) {
    WithSwitch s;
    ConfigurePort edit{s.port("3"), nullptr};
    edit.row.disabled = true;
    const auto design = done(s.b.design, edit);
    EXPECT_EQ(design.port_overrides.size(), 1U);
    EXPECT_TRUE(done(design, ConfigurePort{s.port("3"), nullptr}) == s.b.design);
}

TEST(ConfigurePort, ABlankRowWithUnknownKeysStays) {
    WithSwitch s;
    s.b.port({s.sw, {"3"}}, [](PortOverride& row) { row.unknown["colour"] = "1"; });
    const auto design = done(s.b.design, ConfigurePort{s.port("3"), nullptr});
    EXPECT_EQ(design.port_overrides.size(), 1U);
}

TEST(ConfigurePort, APictureHasItsFormatAndAnEdidWhatItsWayAsksFor) {
    test::DesignBuilder b;
    const auto display = b.device(test::types::display(), "DSP-1");
    const auto port = PortOverride::blank({display, {"in"}});
    const auto format = standards::parse_video_format("2160p60 4:2:2 10-bit").value();
    ConfigurePort edit{port, nullptr};
    edit.row.edid = EdidPolicy{EdidWay::fixed, format, {}, catalogue::AudioFormat::stereo_pcm};
    EXPECT_EQ(done(b.design, edit).port_overrides.find(port.port)->edid, edit.row.edid);
    edit.row.edid = EdidPolicy{EdidWay::fixed, {}, {}, {}};
    EXPECT_SAYS(refused(b.design, edit), "names a format where it is fixed");
    edit.row.edid = EdidPolicy{EdidWay::merged, {}, PortRef{display, {"in"}}, {}};
    EXPECT_SAYS(refused(b.design, edit), "names a port where it is copied");
    edit.row.edid = EdidPolicy{EdidWay::merged, {}, {}, catalogue::AudioFormat::stereo_pcm};
    EXPECT_SAYS(refused(b.design, edit), "names its sound where it is fixed");
    edit.row.edid = EdidPolicy{EdidWay::copied, {}, PortRef{DeviceId(9), {"in"}}, {}};
    EXPECT_SAYS(refused(b.design, edit), "names the device");
    edit.row.edid.reset();
    edit.row.picture = format;
    edit.row.picture->width = 0;
    EXPECT_SAYS(refused(b.design, edit), "width");
}

TEST(ConfigurePort, RefusesWhatCannotBe) {
    WithSwitch s;
    ConfigurePort edit{s.port("1"), test::types::module_sr()};
    edit.row.module = edit.module->key;
    EXPECT_SAYS(refused(s.b.design, edit), "SW-1 1 is not a cage");
    edit = {s.port("s1"), test::types::encoder()};
    edit.row.module = edit.module->key;
    EXPECT_SAYS(refused(s.b.design, edit), "is not a transceiver");
    edit = {s.port("s1"), nullptr};
    edit.row.module = TypeKey{"gone"};
    EXPECT_SAYS(refused(s.b.design, edit), "names the transceiver type");
    edit = {s.port("25"), nullptr};
    EXPECT_SAYS(refused(s.b.design, edit), "SW-1 has no port 25");
    edit = {s.port("1"), nullptr};
    edit.row.path_cost = 0;
    EXPECT_SAYS(refused(s.b.design, edit), "path cost must be from 1 to 200000000; 0 was given");
    edit = {s.port("1"), nullptr};
    edit.row.port_priority = 17;
    EXPECT_SAYS(refused(s.b.design, edit), "steps of 16");
    EXPECT_SAYS(refused(s.b.design, ConfigurePort{PortOverride::blank({DeviceId(9), {"1"}}), nullptr}), "no device");
}

}  // namespace
