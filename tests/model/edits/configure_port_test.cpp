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
