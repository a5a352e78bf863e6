#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

struct Wired {
    test::DesignBuilder b;
    DeviceId enc = b.device(test::types::encoder(), "ENC-1");
    DeviceId sw = b.device(test::types::switch_24(), "SW-1");
    SheetId sheet = b.sheet();
    CableId cable = b.cable(test::types::cat6a(), {enc, {"net"}}, {sw, {"1"}}, 20_m);
};

TEST(Reconnect, MovesOneEndWithItsBends) {
    Wired w;
    const Reconnect edit{w.cable, WhichEnd::b, PortRef{w.sw, {"7"}}, w.sheet, {{9_mm, 9_mm}}};
    const auto design = done(w.b.design, edit);
    const auto& row = test::row_of<Cable>(design, w.cable);
    EXPECT_EQ(row.b->port, *edit.port);
    EXPECT_EQ(row.a->port.device, w.enc);
    EXPECT_EQ(row.length, 20_m);
    EXPECT_EQ(design.cable_lines.find({w.sheet, w.cable})->bends, edit.bends);
}

TEST(Reconnect, LeavesAnEndOpenButNotBoth) {
    Wired w;
    const auto design = done(w.b.design, Reconnect{w.cable, WhichEnd::a, {}, {}, {}});
    EXPECT_FALSE(test::row_of<Cable>(design, w.cable).a.has_value());
    EXPECT_SAYS(refused(design, Reconnect{w.cable, WhichEnd::b, {}, {}, {}}), "remove it instead");
}

TEST(Reconnect, Refuses) {
    Wired w;
    EXPECT_SAYS(refused(w.b.design, Reconnect{CableId(5), WhichEnd::a, {}, {}, {}}), "no cable");
    EXPECT_SAYS(refused(w.b.design, Reconnect{w.cable, WhichEnd::a, PortRef{w.sw, {"1"}}, {}, {}}), "one port");
    EXPECT_SAYS(refused(w.b.design, Reconnect{w.cable, WhichEnd::a, PortRef{w.sw, {"88"}}, {}, {}}),
                "SW-1 has no port 88");
    EXPECT_SAYS(refused(w.b.design, Reconnect{w.cable, WhichEnd::a, PortRef{DeviceId(3), {"1"}}, {}, {}}), "no device");
}

}  // namespace
