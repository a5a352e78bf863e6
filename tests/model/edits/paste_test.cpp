#include "core/model/clipping.h"
#include "tests/model/edits/edit_expect.h"

#include <algorithm>
#include <set>

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

/// A source on an encoder, in a room and a VLAN, with all that belongs to one unit alone.
struct Pasted {
    test::DesignBuilder b;
    RoomId hall = b.room("1", "Hall");
    VlanId av = b.vlan(10, "AV");
    RackId rack = b.rack("A");
    SheetId sheet = b.sheet(), second_sheet = b.sheet(2);
    DeviceId src = b.device(test::types::source(), "Lectern");
    DeviceId enc = b.device(test::types::encoder(), "ENC-003");
    CableId lead = b.cable(test::types::hdmi(), {src, {"out"}}, {enc, {"in"}}, 3_m, "V-009");
    StreamId stream = b.stream(enc, 800_Mbps, "239.1.1.1", av);

    Pasted() {
        b.change<Device>(enc, [&](Device& row) {
            row.room = hall, row.rack = RackPlace{rack, 3}, row.standing = Standing{1_m, 2_m, 0_m};
            row.serial = "0042", row.host_name = "enc-003", row.note = "by the door";
        });
        b.change<Cable>(lead, [](Cable& row) { row.progress.pulled = true; });
        b.address(enc, "10.1.0.20", av);
        b.port({enc, {"net"}}, [&](PortOverride& row) { row.untagged = av, row.label = "AV 1"; });
        b.place(sheet, src, 10_mm, 20_mm), b.place(sheet, enc, 80_mm, 20_mm);
        b.put(CableLine{{sheet, lead}, {{70_mm, 25_mm}}, true, {}});
    }
    Paste edit(std::vector<DeviceId> devices, SheetId on) const {
        return {std::make_shared<const Design>(copied(b.design, devices, sheet)), on, {5_mm, 100_mm}, 7};
    }
    Paste edit() const { return edit({src, enc}, sheet); }
};

/// The row that bears the tag.
template <class Rows>
const auto& tagged(const Rows& rows, const std::string& tag) {
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.tag == tag; });
    if (found == rows.end()) throw std::runtime_error("nothing is called " + tag);
    return *found;
}

TEST(Paste, GivesFreshIdsAndTheNextFreeTags) {
    Pasted f;
    for (const char* tag : {"ENC-001", "ENC-002", "ENC-004"}) f.b.device(test::types::encoder(), tag);
    const auto design = done(f.b.design, f.edit());
    EXPECT_EQ(design.devices.size(), f.b.design.devices.size() + 2);
    EXPECT_EQ(tagged(design.devices, "ENC-005").type, test::types::encoder()->key);
    EXPECT_EQ(tagged(design.devices, "Lectern 2").type, test::types::source()->key) << "a tag without a number";
    EXPECT_EQ(tagged(design.devices, "ENC-005").note, "by the door");
    EXPECT_EQ(tagged(design.cables, "V-001").length, 3_m);
    EXPECT_TRUE(test::row_of<Device>(design, f.enc) == test::row_of<Device>(f.b.design, f.enc)) << "left alone";
}

TEST(Paste, JoinsTheCopiesToEachOther) {
    const Pasted f;
    const auto design = done(f.b.design, f.edit());
    const auto enc = tagged(design.devices, "ENC-001").id, src = tagged(design.devices, "Lectern 2").id;
    const auto& lead = tagged(design.cables, "V-001");
    EXPECT_EQ(lead.a->port, (PortRef{src, {"out"}}));
    EXPECT_EQ(lead.b->port, (PortRef{enc, {"in"}}));
    EXPECT_EQ(test::row_of<PortOverride>(design, {enc, {"net"}}).label, "AV 1");
    ASSERT_EQ(design.streams.size(), 2U);
    for (const auto& stream : design.streams) EXPECT_EQ(stream.encoder, stream.id == f.stream ? f.enc : enc);
}

TEST(Paste, TwinsStayTwinsOfEachOther) {
    Pasted p;
    const auto twin = p.b.stream(p.enc, 800_Mbps, "239.2.1.1", p.av);
    p.b.change<Stream>(p.stream, [&](Stream& row) { row.twin = twin; });
    const auto design = done(p.b.design, p.edit());
    ASSERT_EQ(design.streams.size(), 4u);
    int pairs = 0;
    for (const auto& row : design.streams) {
        if (!row.twin) continue;
        ++pairs;
        EXPECT_EQ(design.streams.find(*row.twin)->encoder, row.encoder);
    }
    EXPECT_EQ(pairs, 2);
}

TEST(Paste, LeavesBehindWhatBelongsToOneUnit) {
    const Pasted f;
    const auto design = done(f.b.design, f.edit());
    const auto& copy = tagged(design.devices, "ENC-001");
    EXPECT_FALSE(copy.rack || copy.standing);
    EXPECT_TRUE(copy.serial.empty() && copy.host_name.empty() && copy.addresses.empty());
    EXPECT_TRUE(tagged(design.cables, "V-001").progress == CableProgress{}) << "not pulled yet";
    for (const auto& stream : design.streams) EXPECT_EQ(stream.group.has_value(), stream.id == f.stream);
    EXPECT_EQ(copy.room, f.hall);
    EXPECT_EQ(test::row_of<PortOverride>(design, {copy.id, {"net"}}).untagged, f.av);
}

TEST(Paste, DrawsTheCopiesAtTheOffsetOnTheSheetAsked) {
    const Pasted f;
    const auto design = done(f.b.design, f.edit({f.src, f.enc}, f.second_sheet));
    const auto enc = tagged(design.devices, "ENC-001").id;
    EXPECT_EQ(test::row_of<Place>(design, {f.second_sheet, enc}).at, (SheetPoint{85_mm, 120_mm}));
    EXPECT_FALSE(design.places.contains({f.sheet, enc}));
    const auto& line = test::row_of<CableLine>(design, {f.second_sheet, tagged(design.cables, "V-001").id});
    EXPECT_EQ(line.bends, (std::vector<SheetPoint>{{75_mm, 125_mm}}));
    EXPECT_TRUE(line.pinned);
}

TEST(Paste, TwiceGivesTwoOfEach) {
    const Pasted f;
    const auto once = done(f.b.design, f.edit());
    const auto twice = done(once, f.edit());  // the same seed: ids that are taken are passed over
    EXPECT_EQ(twice.devices.size(), 6U);
    EXPECT_EQ(twice.cables.size(), 3U);
    std::set<std::string> tags;
    for (const auto& row : twice.devices) tags.insert(row.tag);
    EXPECT_EQ(tags, (std::set<std::string>{"Lectern", "Lectern 2", "Lectern 3", "ENC-001", "ENC-002", "ENC-003"}));
}

TEST(Paste, IntoAnotherDesignBringsTypesAndDropsLinks) {
    const Pasted f;
    test::DesignBuilder other(9);
    const auto sheet = other.sheet();
    const auto design = done(other.design, f.edit({f.src, f.enc}, sheet));
    const auto& copy = tagged(design.devices, "ENC-003");
    EXPECT_FALSE(copy.room.has_value()) << "no such room here";
    EXPECT_NE(copy.id, f.enc);
    EXPECT_FALSE(test::row_of<PortOverride>(design, {copy.id, {"net"}}).untagged.has_value());
    for (const auto& stream : design.streams) EXPECT_FALSE(stream.vlan.has_value());
    EXPECT_EQ(design.device_types.size(), 2U);
    EXPECT_EQ(design.cable_types.size(), 1U);
    EXPECT_TRUE(design.rooms.empty() && design.vlans.empty());
}

TEST(Paste, CutAndPastedKeepsItsTag) {
    const Pasted f;
    const auto edit = f.edit();
    auto cut = f.b.design;
    const auto gone = make(cut, Remove{{f.src, f.enc}, false});
    ASSERT_TRUE(gone.ok());
    apply(cut, *gone);
    const auto design = done(cut, edit);
    EXPECT_EQ(tagged(design.devices, "ENC-003").note, "by the door");
    EXPECT_EQ(tagged(design.devices, "Lectern").type, test::types::source()->key);
    EXPECT_EQ(design.cables.begin()->tag, "V-009");
}

TEST(Paste, CopiesOfASwitchAreABridgeOfTheirOwn) {
    test::DesignBuilder b;
    const auto sheet = b.sheet();
    const auto av = b.vlan(10, "AV"), gone = b.vlan(20, "Gone");
    const auto one = b.device(test::types::switch_24(), "SW-001"), two = b.device(test::types::switch_24(), "SW-002");
    for (const auto id : {one, two})
        b.change<Device>(id, [&](Device& row) {
            row.bridging.stack = "Core";
            row.bridging.priority = 4096;
            row.bridging.address = base::MacAddress{0x020000000001};
            row.bridging.queriers = {{av, base::Ipv4{0x0A010001}}, {gone, {}}};
            row.bridging.multicast_router_vlans = {gone};
        });
    const auto clipping = std::make_shared<const Design>(copied(b.design, {one, two}, sheet));
    b.design.vlans.erase(gone);
    for (const auto id : {one, two})
        b.change<Device>(id, [&](Device& row) {
            row.bridging.queriers.pop_back();
            row.bridging.multicast_router_vlans.clear();
        });
    const auto design = done(b.design, Paste{clipping, sheet, {}, 3});
    for (const char* tag : {"SW-003", "SW-004"}) {
        const auto& bridging = tagged(design.devices, tag).bridging;
        EXPECT_EQ(bridging.stack, "Core 2") << "one stack, and not the one they were copied from";
        EXPECT_EQ(bridging.priority, 4096);
        EXPECT_FALSE(bridging.address.has_value());
        ASSERT_EQ(bridging.queriers.size(), 1U);
        EXPECT_FALSE(bridging.queriers[0].address.has_value());
        EXPECT_TRUE(bridging.multicast_router_vlans.empty());
    }
}

TEST(Paste, ACardStandsInTheCopyOfItsChassis) {
    test::DesignBuilder b;
    catalogue::DeviceType chassis, card;
    chassis.key = {"test.chassis"}, chassis.chassis = catalogue::ChassisFacts{4, "slab"};
    card.key = {"test.card"}, card.card_form = "slab";
    const auto sheet = b.sheet();
    const auto held = b.device(card, "CRD-1");  // before its chassis, by id or not
    const auto home = b.device(chassis, "CH-1");
    b.change<Device>(held, [&](Device& row) { row.chassis = ChassisPlace{home, 2}; });
    const auto paste = [&](std::vector<DeviceId> devices) {
        return Paste{std::make_shared<const Design>(copied(b.design, devices, sheet)), sheet, {}, 5};
    };
    auto design = done(b.design, paste({held, home}));
    ASSERT_TRUE(tagged(design.devices, "CRD-2").chassis.has_value());
    EXPECT_EQ(tagged(design.devices, "CRD-2").chassis->chassis, tagged(design.devices, "CH-2").id);
    EXPECT_EQ(tagged(design.devices, "CRD-2").chassis->slot, 2);
    design = done(b.design, paste({held}));
    EXPECT_FALSE(tagged(design.devices, "CRD-2").chassis.has_value()) << "its slot is taken";
}

TEST(Paste, AWholeDesignIsPastedOntoOneSheet) {
    Pasted f;
    f.b.place(f.second_sheet, f.enc, 1_mm, 1_mm);
    f.b.open_cable(test::types::cat6a(), {f.enc, {"net"}});
    const auto whole = std::make_shared<const Design>(f.b.design);
    test::DesignBuilder other(9);
    const auto sheet = other.sheet();
    const auto design = done(other.design, Paste{whole, sheet, {}, 1});
    EXPECT_EQ(design.places.size(), 2U) << "each device once";
    EXPECT_EQ(design.cables.size(), 2U);
    EXPECT_TRUE(design.racks.empty());
    EXPECT_FALSE(tagged(design.devices, "ENC-003").rack.has_value());
}

TEST(Paste, LongNumbersKeepTheirStem) {
    test::DesignBuilder b;
    const auto sheet = b.sheet();
    const auto device = b.device(test::types::source(), "1234567890123");
    const Paste edit{std::make_shared<const Design>(copied(b.design, {device}, sheet)), sheet, {}, 1};
    EXPECT_EQ(tagged(done(b.design, edit).devices, "1234000000001").type, test::types::source()->key);
}

TEST(Paste, RefusesNothingAndNowhere) {
    const Pasted f;
    EXPECT_SAYS(refused(f.b.design, Paste{nullptr, f.sheet, {}, 1}), "nothing to paste");
    EXPECT_SAYS(refused(f.b.design, f.edit({}, f.sheet)), "nothing to paste");
    EXPECT_SAYS(refused(f.b.design, f.edit({f.enc}, SheetId(77))), "no sheet");
    auto far = f.edit();
    far.shift.x = 11_km;
    EXPECT_SAYS(refused(f.b.design, far), "within 10 km");
}

TEST(Paste, ACopiedEdidPointsToTheCopyOfItsDisplayOrGoes) {
    Pasted f;
    const auto from = PortRef{f.src, {"out"}};
    f.b.port({f.enc, {"in"}}, [&](PortOverride& row) { row.edid = EdidPolicy{EdidWay::copied, {}, from, {}}; });
    const auto both = done(f.b.design, f.edit());
    const auto& copy = tagged(both.devices, "ENC-004");
    EXPECT_EQ(both.port_overrides.find({copy.id, {"in"}})->edid->from->device, tagged(both.devices, "Lectern 2").id);
    const auto alone = done(f.b.design, f.edit({f.enc}, f.sheet));
    EXPECT_FALSE(alone.port_overrides.contains({tagged(alone.devices, "ENC-004").id, {"in"}}));
}

}  // namespace
