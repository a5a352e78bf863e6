// Integrity: each bond between rows broken once, and each number put just past its limit.
#include "core/model/integrity.h"

#include "tests/support/design_builder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::DesignBuilder;

/// A sound design with a row of every kind, each naming others.
struct Sound {
    DesignBuilder b;
    DeviceId sw = b.device(test::types::switch_24(), "SW-1");
    DeviceId enc = b.device(test::types::encoder(), "ENC-1");
    DeviceId dec = b.device(test::types::decoder(), "DEC-1");
    RoomId room = b.room("1.1", "Hall");
    RackId rack = b.rack("A");
    VlanId vlan = b.vlan(10, "AV", "10.1.0.0/16");
    CableId cable = b.cable(test::types::cat6a(), {enc, {"net"}}, {sw, {"1"}}, 20_m);
    StreamId stream = b.stream(enc, 800_Mbps, "239.1.1.1", vlan);
    PresetId preset = b.preset("Lecture");
    SubscriptionId shown = b.subscribe(preset, stream, dec);
    SheetId sheet = b.sheet();
    Sound() {
        b.place(sheet, enc, 10_mm, 10_mm);
        b.put(CableLine{{sheet, cable}, {}, false, {}});
        b.put(Note{NoteId(1), sheet, {}, "text", {}});
        b.put(RoomFrame{FrameId(1), sheet, room, {}, {}, 10_mm, 10_mm, {}});
        b.port({sw, {"1"}}, [&](PortOverride& row) { row.tagged = {vlan}; });
        b.querier(sw, vlan, "10.1.0.2");
        b.address(enc, "10.1.0.20", vlan);
        b.usual_vlan(vlan);
    }
    /// Two devices side by side, then changed.
    template <class Change>
    void wall(Change change) {
        auto row = Wall::blank(WallId(1));
        row.rows = 1;
        row.tiles = {enc, dec};
        change(row);
        b.put(row);
    }
};

TEST(Integrity, ASoundDesignHasNoBrokenBond) {
    Sound s;
    EXPECT_TRUE(broken_bonds(s.b.design).empty());
    EXPECT_TRUE(broken_bonds(Design{}).empty());
}

/// One fault each: what is done to the sound design, the table, and words of the sentence.
struct Fault {
    const char* table;
    const char* words;
    std::function<void(Sound&)> make;
};

const VlanId no_vlan(99);
const DeviceId no_device(99);
const RoomId no_room(99);
const SheetId no_sheet(99);

std::vector<Fault> dangling() {
    return {
        {"settings", "VLAN", [](Sound& s) { s.b.usual_vlan(no_vlan); }},
        {"racks", "room", [](Sound& s) { s.b.change<Rack>(s.rack, [](Rack& r) { r.room = no_room; }); }},
        {"racks", "device type", [](Sound& s) { s.b.change<Rack>(s.rack, [](Rack& r) { r.type = {"gone"}; }); }},
        {"devices", "device type", [](Sound& s) { s.b.change<Device>(s.enc, [](Device& r) { r.type = {"gone"}; }); }},
        {"devices", "room", [](Sound& s) { s.b.change<Device>(s.enc, [](Device& r) { r.room = no_room; }); }},
        {"devices", "rack",
         [](Sound& s) { s.b.change<Device>(s.enc, [](Device& r) { r.rack = RackPlace{RackId(99)}; }); }},
        {"devices", "chassis",
         [](Sound& s) { s.b.change<Device>(s.enc, [](Device& r) { r.chassis = ChassisPlace{no_device}; }); }},
        {"devices", "VLAN", [](Sound& s) { s.b.querier(s.sw, no_vlan); }},
        {"devices", "VLAN", [](Sound& s) { s.b.address(s.dec, "10.1.0.9", no_vlan); }},
        {"port_overrides", "device",
         [](Sound& s) {
             s.b.put(PortOverride::blank({no_device, {"1"}}));
         }},
        {"port_overrides", "transceiver",
         [](Sound& s) {
             s.b.port({s.sw, {"s1"}}, [](PortOverride& r) { r.module = TypeKey{"gone"}; });
         }},
        {"port_overrides", "VLAN",
         [](Sound& s) {
             s.b.port({s.sw, {"1"}}, [](PortOverride& r) { r.tagged = {no_vlan}; });
         }},
        {"cables", "device",
         [](Sound& s) { s.b.change<Cable>(s.cable, [](Cable& r) {
                            r.b = CableEnd{{no_device, {"1"}}};
                        }); }},
        {"cables", "cable type", [](Sound& s) { s.b.change<Cable>(s.cable, [](Cable& r) { r.type = {"gone"}; }); }},
        {"streams", "device", [](Sound& s) { s.b.change<Stream>(s.stream, [](Stream& r) { r.encoder = no_device; }); }},
        {"streams", "VLAN", [](Sound& s) { s.b.change<Stream>(s.stream, [](Stream& r) { r.vlan = no_vlan; }); }},
        {"subscriptions", "preset",
         [](Sound& s) { s.b.change<Subscription>(s.shown, [](Subscription& r) { r.preset = PresetId(99); }); }},
        {"subscriptions", "stream",
         [](Sound& s) { s.b.change<Subscription>(s.shown, [](Subscription& r) { r.stream = StreamId(99); }); }},
        {"subscriptions", "device",
         [](Sound& s) { s.b.change<Subscription>(s.shown, [](Subscription& r) { r.decoder = no_device; }); }},
        {"streams", "the stream",
         [](Sound& s) { s.b.change<Stream>(s.stream, [](Stream& r) { r.twin = StreamId(99); }); }},
        {"streams", "own twin", [](Sound& s) { s.b.change<Stream>(s.stream, [](Stream& r) { r.twin = r.id; }); }},
        {"settings", "the preset",
         [](Sound& s) { s.b.change<Settings>({}, [](Settings& r) { r.survive_presets = {PresetId(99)}; }); }},
        {"subscriptions", "twice", [](Sound& s) { s.b.subscribe(s.preset, s.stream, s.dec); }},
        {"walls", "the device", [](Sound& s) { s.wall([](Wall& r) { r.tiles[1] = no_device; }); }},
        {"walls", "the room", [](Sound& s) { s.wall([](Wall& r) { r.room = no_room; }); }},
        {"walls", "tile of wall Left already",
         [](Sound& s) {
             s.wall([](Wall& r) { r.name = "Left"; });
             s.wall([](Wall& r) { r.id = WallId(2); });
         }},
        {"places", "sheet", [](Sound& s) { s.b.place(no_sheet, s.enc, 1_mm, 1_mm); }},
        {"places", "device", [](Sound& s) { s.b.place(s.sheet, no_device, 1_mm, 1_mm); }},
        {"cable_lines", "cable",
         [](Sound& s) {
             s.b.put(CableLine{{s.sheet, CableId(99)}, {}, false, {}});
         }},
        {"room_frames", "room",
         [](Sound& s) { s.b.change<RoomFrame>(FrameId(1), [](RoomFrame& r) { r.room = no_room; }); }},
        {"notes", "sheet", [](Sound& s) { s.b.change<Note>(NoteId(1), [](Note& r) { r.sheet = no_sheet; }); }},
    };
}

TEST(Integrity, EveryBondIsWatched) {
    for (const auto& fault : dangling()) {
        Sound s;
        fault.make(s);
        const auto broken = broken_bonds_with_places(s.b.design);
        ASSERT_EQ(broken.size(), 1U) << fault.table << ' ' << fault.words;
        EXPECT_EQ(broken[0].table, fault.table);
        EXPECT_THAT(broken[0].error.english(), testing::HasSubstr(fault.words));
        EXPECT_FALSE(broken[0].row.empty() && broken[0].table != "settings");
    }
}

/// Limits as the standards state them; the value just past each.
std::vector<Fault> past_the_limit() {
    const auto port = [](auto change) { return [=](Sound& s) { s.b.port({s.sw, {"1"}}, change); }; };
    const auto stream = [](auto change) { return [=](Sound& s) { s.b.change<Stream>(s.stream, change); }; };
    const auto device = [](auto change) { return [=](Sound& s) { s.b.change<Device>(s.sw, change); }; };
    const auto settings = [](auto change) { return [=](Sound& s) { s.b.change<Settings>({}, change); }; };
    const auto vlan = [](auto change) { return [=](Sound& s) { s.b.change<Vlan>(s.vlan, change); }; };
    const auto wall = [](auto change) { return [=](Sound& s) { s.wall(change); }; };
    const auto room = [](auto change) { return [=](Sound& s) { s.b.change<Room>(s.room, change); }; };
    const auto cable = [](auto change) { return [=](Sound& s) { s.b.change<Cable>(s.cable, change); }; };
    return {
        {"vlans", "1 to 4094", vlan([](Vlan& r) { r.vid = 0; })},  // IEEE 802.1Q table 9-2: 0 and 4095 reserved
        {"vlans", "1 to 4094", vlan([](Vlan& r) { r.vid = 4095; })},
        {"vlans", "lease range", vlan([](Vlan& r) { r.lease_first = base::Ipv4{9}, r.lease_last = base::Ipv4{8}; })},
        {"vlans", "last address", vlan([](Vlan& r) { r.lease_first = base::Ipv4{9}; })},
        {"devices", "steps of 4096", device([](Device& r) { r.bridging.priority = 100; })},  // IEEE 802.1Q 13.26.2
        {"devices", "steps of 4096", device([](Device& r) { r.bridging.priority = 65536; })},
        // IEEE 802.1Q 13.25 (from memory): 4 to 30 s, 6 to 40 s, 2 x (delay - 1) at least the age of 20 s.
        {"devices", "go together", device([](Device& r) { r.bridging.forward_delay_s = 31; })},
        {"devices", "go together", device([](Device& r) { r.bridging.forward_delay_s = 10; })},
        {"devices", "go together", device([](Device& r) { r.bridging.max_age_s = 41; })},
        {"devices", "go together", device([](Device& r) { r.bridging.hello_s = 10; })},
        {"devices", "group address", device([](Device& r) { r.bridging.address = base::MacAddress{0x010000000001}; })},
        {"devices", "card of itself", device([](Device& r) { r.chassis = ChassisPlace{r.id}; })},
        {"devices", "below 224", device([](Device& r) {
             r.addresses.push_back({{}, {}, base::Ipv4{0xE0000000}, {}});
         })},
        {"port_overrides", "200000000", port([](PortOverride& r) { r.path_cost = 0; })},  // IEEE 802.1Q 13.27.25
        {"port_overrides", "200000000", port([](PortOverride& r) { r.path_cost = 200000001; })},
        {"port_overrides", "steps of 16", port([](PortOverride& r) { r.port_priority = 8; })},  // IEEE 802.1Q 13.27.47
        {"port_overrides", "steps of 16", port([](PortOverride& r) { r.port_priority = 256; })},
        {"port_overrides", "1.6 Tb/s", port([](PortOverride& r) { r.rate_limit = 0_bps; })},
        {"port_overrides", "both tagged and untagged", port([](PortOverride& r) { r.untagged = r.tagged.front(); })},
        {"streams", "1 to 65535", stream([](Stream& r) { r.udp_port = 0; })},  // RFC 768: 16 bits, 0 is none
        {"streams", "1 to 65535", stream([](Stream& r) { r.udp_port = 65536; })},
        {"streams", "1 to 65000", stream([](Stream& r) { r.payload_octets = 0; })},
        {"streams", "1.6 Tb/s", stream([](Stream& r) { r.payload_rate = base::BitRate::from_count(1600000000001); })},
        {"streams", "multicast", stream([](Stream& r) { r.group = base::Ipv4{0xDFFFFFFF}; })},  // RFC 5771: 224/4
        {"streams", "multicast", stream([](Stream& r) { r.group = base::Ipv4{0xF0000000}; })},
        {"cables", "1,000 km", cable([](Cable& r) { r.length = base::Length::from_count(-1); })},
        {"cables", "1,000 km", cable([](Cable& r) { r.length = 1000_km + 1_um; })},
        {"cables", "one port", cable([](Cable& r) { r.b = r.a; })},
        {"port_overrides", "PoE limit", port([](PortOverride& r) { r.poe.limit = 100'001_mW; })},
        {"cables", "pair swaps", cable([](Cable& r) { r.fibre.pair_swaps = 11; })},
        {"cables", "splices", cable([](Cable& r) { r.fibre.splices = -1; })},
        {"cables", "not drawn", cable([](Cable& r) { r.fibre.joints = 101; })},
        {"walls", "columns of the wall must be from 1 to 64", wall([](Wall& r) { r.columns = 0; })},
        {"walls", "rows of the wall must be from 1 to 64", wall([](Wall& r) { r.rows = 65; })},
        {"walls", "2 x 2 has 4 tiles; 2 were listed", wall([](Wall& r) { r.rows = 2; })},
        {"walls", "twice in one wall", wall([](Wall& r) { r.tiles[1] = r.tiles[0]; })},
        {"walls", "gap across", wall([](Wall& r) { r.gap_across = 1'000'001_um; })},
        {"walls", "gap down", wall([](Wall& r) { r.gap_down = -(1_um); })},
        {"rooms", "farthest viewer", room([](Room& r) { r.farthest_viewer = 0_m; })},
        {"rooms", "farthest viewer", room([](Room& r) { r.farthest_viewer = 1_km + 1_um; })},
        {"rooms", "element height", room([](Room& r) { r.element_height = standards::ElementHeight::from_count(99); })},
        {"rooms", "element height",
         room([](Room& r) { r.element_height = standards::ElementHeight::from_count(100'001); })},
        {"settings", "bundle", settings([](Settings& r) { r.cabling.bundle_rise = -(1_degC); })},
        {"settings", "1,000 km", settings([](Settings& r) { r.cabling.cat6_10g = -(1_m); })},
        {"settings", "mated pair", settings([](Settings& r) { r.cabling.joint_loss = 100'001_mdB; })},
        {"settings", "splice", settings([](Settings& r) { r.cabling.splice_loss = -(1_mdB); })},
        {"settings", "name its line", settings([](Settings& r) { r.cabling.lines = {{}}; })},
        {"settings", "limited twice", settings([](Settings& r) {
             r.cabling.lines = {{"RS-232", 20_m, {}}, {"RS-232", 15_m, {}}};
         })},
        {"settings", "loss of the line", settings([](Settings& r) {
             r.cabling.lines = {{"3G-SDI", {}, -(1_mdB)}};
         })},
        {"settings", "1 to 31744", settings([](Settings& r) { r.query_interval_s = 31745; })},  // RFC 3376 4.1.7
        {"settings", "shorter than", settings([](Settings& r) { r.query_response_s = 125; })},  // RFC 3376 8.3
        {"settings", "1 to 7", settings([](Settings& r) { r.robustness = 0; })},                // RFC 3376 8.1
        {"settings", "1 to 100", settings([](Settings& r) { r.headroom_percent = 101; })},
    };
}

TEST(Integrity, EveryNumberHasItsLimit) {
    for (const auto& fault : past_the_limit()) {
        Sound s;
        fault.make(s);
        const auto broken = broken_bonds_with_places(s.b.design);
        ASSERT_EQ(broken.size(), 1U) << fault.table << ' ' << fault.words;
        EXPECT_EQ(broken[0].table, fault.table);
        EXPECT_THAT(broken[0].error.english(), testing::HasSubstr(fault.words));
    }
}

TEST(Integrity, TheLimitsThemselvesAreAllowed) {
    Sound s;
    s.b.change<Vlan>(s.vlan, [](Vlan& r) { r.vid = 4094; });
    s.b.change<Device>(s.sw, [](Device& r) { r.bridging.priority = 61440, r.bridging.forward_delay_s = 11; });
    s.b.port({s.sw, {"1"}}, [](PortOverride& r) { r.path_cost = 200000000, r.port_priority = 240; });
    s.b.change<Stream>(s.stream, [](Stream& r) {
        r.udp_port = 65535, r.payload_octets = 65000, r.payload_rate = 1600_Gbps, r.group = base::Ipv4{0xEFFFFFFF};
    });
    s.b.change<Cable>(s.cable, [](Cable& r) { r.length = 1000_km; });
    EXPECT_TRUE(broken_bonds(s.b.design).empty());
}

TEST(Integrity, APortThatTheTypeDoesNotHaveIsSound) {
    Sound s;
    s.b.change<Cable>(s.cable, [](Cable& r) { r.b->port.port = {"none"}; });
    EXPECT_TRUE(broken_bonds(s.b.design).empty());
}

}  // namespace
