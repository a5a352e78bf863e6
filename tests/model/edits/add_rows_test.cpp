#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

TEST(AddRows, AddsEveryPlainKindWhateverTheirOrder) {
    const Sheet sheet = Sheet::blank(SheetId(1));
    const Room room = Room::blank(RoomId(2));
    RoomFrame frame = RoomFrame::blank(FrameId(3));
    frame.sheet = sheet.id, frame.room = room.id;
    Note note = Note::blank(NoteId(4));
    note.sheet = sheet.id, note.text = "two\nlines";
    Rack rack = Rack::blank(RackId(5));
    rack.room = room.id;
    const AddRows edit{{frame, note, rack, sheet, room, Vlan::blank(VlanId(6)), Preset::blank(PresetId(7)),
                        Revision::blank(RevisionId(8))}};
    const auto design = done(Design{}, edit);
    EXPECT_EQ(design.room_frames.size() + design.notes.size() + design.racks.size() + design.sheets.size() +
                  design.rooms.size() + design.vlans.size() + design.presets.size() + design.revisions.size(),
              8U);
}

TEST(AddRows, AddsAPresetWithWhatItShows) {
    Design design;
    const auto shown = Subscription::blank(SubscriptionId(9));
    auto row = shown;
    row.preset = PresetId(7);
    EXPECT_SAYS(refused(design, AddRows{{shown}}), "preset");
    EXPECT_SAYS(refused(design, AddRows{{row, Preset::blank(PresetId(7))}}), "stream");
}

TEST(AddRows, ReplacesARowAndKeepsItsUnknownKeys) {
    Design design;
    Vlan old = Vlan::blank(VlanId(1));
    old.unknown["colour"] = "\"red\"";
    design.vlans.put(old);
    Vlan fresh = Vlan::blank(VlanId(1));
    fresh.vid = 30;
    design = done(design, AddRows{{fresh}});
    EXPECT_EQ(test::row_of<Vlan>(design, VlanId(1)).vid, 30);
    EXPECT_EQ(test::row_of<Vlan>(design, VlanId(1)).unknown.at("colour"), "\"red\"");
}

TEST(AddRows, RefusesBadNumbersAndMissingRows) {
    Vlan vlan = Vlan::blank(VlanId(1));
    vlan.vid = 4095;
    EXPECT_SAYS(refused(Design{}, AddRows{{vlan}}), "VLAN number must be from 1 to 4094; 4095 was given");
    Note note = Note::blank(NoteId(1));
    note.sheet = SheetId(9);
    EXPECT_SAYS(refused(Design{}, AddRows{{note}}), "names the sheet");
    Room room = Room::blank(RoomId(1));
    room.name = "a\x1b[31m";
    EXPECT_SAYS(refused(Design{}, AddRows{{room}}), "control character");
    room.name = "\xff";
    EXPECT_SAYS(refused(Design{}, AddRows{{room}}), "not UTF-8");
}

}  // namespace
