// What copying takes along and what it leaves: by the words of its header, on a design with one of everything.
#include "core/model/clipping.h"

#include "core/model/integrity.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;

/// Two endpoints on a switch, all in room 1 and VLAN 10; the second room and VLAN belong to the switch alone.
struct Copying {
    test::DesignBuilder b;
    RoomId hall = b.room("1", "Hall"), foyer = b.room("2", "Foyer");
    VlanId av = b.vlan(10, "AV"), control = b.vlan(20, "Control");
    DeviceId sw = b.device(test::types::switch_24(), "SW-001");
    DeviceId enc = b.device(test::types::encoder(), "ENC-001");
    DeviceId src = b.device(test::types::source(), "SRC-001");
    SheetId sheet = b.sheet(), other_sheet = b.sheet(2);
    CableId lead = b.cable(test::types::hdmi(), {src, {"out"}}, {enc, {"in"}});
    CableId up = b.cable(test::types::cat6a(), {enc, {"net"}}, {sw, {"1"}}, 20_m);
    StreamId stream = b.stream(enc, 800_Mbps, "239.1.1.1", av);
    RackId rack = b.rack("A");

    Copying() {
        b.change<Device>(enc, [&](Device& row) { row.room = hall, row.rack = RackPlace{rack, 3}; });
        b.change<Device>(sw, [&](Device& row) { row.room = foyer; });
        b.querier(sw, control);
        b.port({sw, {"s1"}}, [&](PortOverride& row) {
            b.embed(test::types::module_sr());
            row.module = test::types::module_sr()->key;
            row.tagged = {av};
        });
        for (const auto on : {sheet, other_sheet}) b.place(on, enc, 10_mm, 10_mm);
        b.put(CableLine{{sheet, lead}, {{5_mm, 5_mm}}, false, {}});
        b.put(CableLine{{sheet, up}, {{6_mm, 6_mm}}, false, {}});
    }
};

TEST(Clipping, TakesWhatLiesBetweenTheDevicesAndWhatItNames) {
    const Copying c;
    const auto clipping = copied(c.b.design, {c.enc, c.src}, c.sheet);
    EXPECT_EQ(clipping.devices.size(), 2U);
    EXPECT_TRUE(clipping.cables.contains(c.lead));
    EXPECT_EQ(clipping.cables.size(), 1U) << "the cable to the switch has its far end elsewhere";
    EXPECT_TRUE(clipping.streams.contains(c.stream));
    EXPECT_TRUE(clipping.rooms.contains(c.hall) && clipping.vlans.contains(c.av));
    EXPECT_EQ(clipping.rooms.size(), 1U);
    EXPECT_EQ(clipping.vlans.size(), 1U);
    EXPECT_EQ(clipping.device_types.size(), 2U);
    EXPECT_EQ(clipping.cable_types.size(), 1U);
    EXPECT_TRUE(broken_bonds(clipping).empty()) << "sound by itself, so that it can be written and read";
}

TEST(Clipping, TakesTheDrawingOfTheOneSheet) {
    const Copying c;
    const auto clipping = copied(c.b.design, {c.enc, c.src}, c.sheet);
    EXPECT_EQ(clipping.sheets.size(), 1U);
    EXPECT_EQ(clipping.places.size(), 1U);
    EXPECT_EQ(clipping.cable_lines.size(), 1U);
    EXPECT_TRUE(copied(c.b.design, {c.src}, c.other_sheet).places.empty()) << "it is not drawn there";
}

TEST(Clipping, PortsBringTheirModulesAndVlans) {
    const Copying c;
    const auto clipping = copied(c.b.design, {c.sw}, c.sheet);
    EXPECT_EQ(clipping.port_overrides.size(), 1U);
    EXPECT_TRUE(clipping.device_types.contains(test::types::module_sr()->key));
    EXPECT_TRUE(clipping.vlans.contains(c.av) && clipping.vlans.contains(c.control));
    EXPECT_TRUE(broken_bonds(clipping).empty());
}

TEST(Clipping, RackPlacesAndSlotsOfOtherChassisStayBehind) {
    Copying c;
    catalogue::DeviceType chassis, card;
    chassis.key = {"test.chassis"}, chassis.chassis = catalogue::ChassisFacts{4, "slab"};
    card.key = {"test.card"}, card.card_form = "slab";
    const auto home = c.b.device(chassis, "CH-1");
    const auto held = c.b.device(card, "CRD-1");
    c.b.change<Device>(held, [&](Device& row) { row.chassis = ChassisPlace{home, 2}; });
    EXPECT_FALSE(copied(c.b.design, {c.enc}, c.sheet).devices.find(c.enc)->rack.has_value());
    EXPECT_FALSE(copied(c.b.design, {held}, c.sheet).devices.find(held)->chassis.has_value());
    EXPECT_TRUE(copied(c.b.design, {held, home}, c.sheet).devices.find(held)->chassis.has_value());
}

TEST(Clipping, DevicesThatAreNotThereAreNoTrouble) {
    const Copying c;
    EXPECT_EQ(copied(c.b.design, {c.enc, DeviceId(77), c.enc}, c.sheet).devices.size(), 1U);
    EXPECT_TRUE(copied(c.b.design, {}, SheetId(77)) == Design());
}

}  // namespace
