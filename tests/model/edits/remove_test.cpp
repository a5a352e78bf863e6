#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

/// One of everything, each naming others.
struct Full {
    test::DesignBuilder b;
    DeviceId sw = b.device(test::types::switch_24(), "SW-1");
    DeviceId enc = b.device(test::types::encoder(), "ENC-1");
    DeviceId dec = b.device(test::types::decoder(), "DEC-1");
    RoomId room = b.room("1", "Hall");
    RackId rack = b.rack("A");
    VlanId vlan = b.vlan(10, "AV");
    SheetId sheet = b.sheet();
    CableId up = b.cable(test::types::cat6a(), {enc, {"net"}}, {sw, {"1"}}, 20_m);
    CableId down = b.cable(test::types::cat6a(), {dec, {"net"}}, {sw, {"2"}}, 20_m);
    CableId usb = b.cable(test::types::usb_lead(), {dec, {"usb"}}, {enc, {"usb"}});
    StreamId stream = b.stream(enc, 800_Mbps, "239.1.1.1", vlan);
    PresetId preset = b.preset("Lecture");
    SubscriptionId shown = b.subscribe(preset, stream, dec);
    Full() {
        b.place(sheet, enc, 10_mm, 10_mm);
        b.put(CableLine{{sheet, up}, {}, false, {}});
        b.put(Note{NoteId(1), sheet, {}, "text", {}});
        b.put(RoomFrame{FrameId(1), sheet, room, {}, {}, 10_mm, 10_mm, {}});
        b.port({enc, {"net"}}, [&](PortOverride& row) { row.label = "x"; });
        b.port({sw, {"1"}}, [&](PortOverride& row) { row.tagged = {vlan}; });
        b.querier(sw, vlan);
        b.address(enc, "10.1.0.20", vlan);
        b.usual_vlan(vlan);
        b.change<Device>(sw, [&](Device& row) { row.room = room, row.rack = RackPlace{rack}; });
        b.change<Rack>(rack, [&](Rack& row) { row.room = room; });
    }
};

TEST(Remove, ADeviceTakesAllThatHangsOnIt) {
    Full f;
    const auto design = done(f.b.design, Remove{{f.enc}, false});
    EXPECT_FALSE(design.devices.contains(f.enc));
    EXPECT_EQ(design.cables.size(), 1U);
    EXPECT_TRUE(design.cables.contains(f.down));
    EXPECT_TRUE(design.streams.empty() && design.subscriptions.empty());
    EXPECT_TRUE(design.places.empty() && design.cable_lines.empty());
    EXPECT_EQ(design.port_overrides.size(), 1U);
}

TEST(Remove, KeepsCablesWithAnOpenEndIfAsked) {
    Full f;
    auto design = done(f.b.design, Remove{{f.enc}, true});
    EXPECT_EQ(design.cables.size(), 3U);
    EXPECT_FALSE(test::row_of<Cable>(design, f.up).a.has_value());
    EXPECT_TRUE(test::row_of<Cable>(design, f.up).b.has_value());
    design = done(f.b.design, Remove{{f.enc, f.dec}, true});
    EXPECT_FALSE(design.cables.contains(f.usb)) << "between two removed devices";
    EXPECT_EQ(design.cables.size(), 2U);
    design = done(design, Remove{{f.sw}, true});
    EXPECT_TRUE(design.cables.empty()) << "no end is left";
}

TEST(Remove, AVlanIsForgottenEverywhere) {
    Full f;
    const auto design = done(f.b.design, Remove{{f.vlan}, false});
    EXPECT_FALSE(design.settings().usual_vlan.has_value());
    EXPECT_FALSE(test::row_of<Stream>(design, f.stream).vlan.has_value());
    EXPECT_TRUE(test::row_of<Device>(design, f.sw).bridging.queriers.empty());
    EXPECT_EQ(test::row_of<Device>(design, f.enc).addresses.size(), 1U);
    EXPECT_FALSE(design.port_overrides.contains({f.sw, {"1"}})) << "nothing is set there any more";
    EXPECT_EQ(design.port_overrides.size(), 1U);
}

TEST(Remove, RoomsRacksSheetsPresetsStreams) {
    Full f;
    auto design = done(f.b.design, Remove{{f.room}, false});
    EXPECT_FALSE(test::row_of<Device>(design, f.sw).room.has_value());
    EXPECT_FALSE(test::row_of<Rack>(design, f.rack).room.has_value());
    EXPECT_TRUE(design.room_frames.empty());
    design = done(f.b.design, Remove{{f.rack}, false});
    EXPECT_FALSE(test::row_of<Device>(design, f.sw).rack.has_value());
    design = done(f.b.design, Remove{{f.sheet}, false});
    EXPECT_TRUE(design.places.empty() && design.cable_lines.empty() && design.notes.empty() &&
                design.room_frames.empty());
    EXPECT_EQ(design.devices.size(), 3U);
    EXPECT_TRUE(done(f.b.design, Remove{{f.preset}, false}).subscriptions.empty());
    EXPECT_TRUE(done(f.b.design, Remove{{f.stream}, false}).subscriptions.empty());
    design = done(f.b.design, Remove{{f.shown, NoteId(1), FrameId(1), f.up}, false});
    EXPECT_TRUE(design.subscriptions.empty() && design.notes.empty() && design.room_frames.empty());
    EXPECT_TRUE(design.cable_lines.empty());
}

TEST(Remove, ATwinAndAPresetAskedForAreForgotten) {
    Full f;
    const auto twin = f.b.stream(f.enc, 800_Mbps, "239.1.1.2", f.vlan);
    f.b.change<Stream>(f.stream, [&](Stream& row) { row.twin = twin; });
    f.b.change<Settings>({}, [&](Settings& row) { row.survive_presets = {f.preset}; });
    const auto without = done(f.b.design, Remove{{twin, f.preset}});
    EXPECT_FALSE(without.streams.find(f.stream)->twin);
    EXPECT_TRUE(without.settings().survive_presets.empty());
}

TEST(Remove, CardsOfARemovedChassisStayUnhoused) {
    test::DesignBuilder b;
    catalogue::DeviceType chassis, card;
    chassis.key = {"test.chassis"}, chassis.chassis = catalogue::ChassisFacts{4, "slab"};
    card.key = {"test.card"}, card.card_form = "slab";
    const auto home = b.device(chassis, "CH-1");
    const auto held = b.device(card, "CRD-1");
    b.change<Device>(held, [&](Device& row) { row.chassis = ChassisPlace{home, 2}; });
    const auto design = done(b.design, Remove{{home}, false});
    EXPECT_FALSE(test::row_of<Device>(design, held).chassis.has_value());
}

TEST(Remove, WaiversOutliveTheirSubject) {
    Full f;
    auto waiver = Waiver::blank(WaiverId(1));
    waiver.rule = "r", waiver.reason = "agreed", waiver.subjects = {"device:" + f.enc.text()};
    f.b.put(waiver);
    EXPECT_EQ(done(f.b.design, Remove{{f.enc}, false}).waivers.size(), 1U);
    EXPECT_TRUE(done(f.b.design, Remove{{WaiverId(1)}, false}).waivers.empty());
}

TEST(Remove, RefusesWhatIsNotThere) {
    Full f;
    EXPECT_SAYS(refused(f.b.design, Remove{{f.enc, DeviceId(77)}, false}), "no device");
    EXPECT_SAYS(refused(f.b.design, Remove{{RevisionId(77)}, false}), "no revision");
}

TEST(Remove, ACopiedEdidGoesWithTheDeviceItWasCopiedFrom) {
    Full f;
    const auto display = f.b.device(test::types::display(), "DSP-1");
    f.b.port({f.enc, {"in"}}, [&](PortOverride& row) {
        row.edid = EdidPolicy{EdidWay::copied, {}, PortRef{display, {"in"}}, {}};
    });
    const auto design = done(f.b.design, Remove{{display}, false});
    EXPECT_FALSE(design.port_overrides.contains({f.enc, {"in"}}));
    EXPECT_TRUE(design.port_overrides.contains({f.enc, {"net"}}));
}

}  // namespace
