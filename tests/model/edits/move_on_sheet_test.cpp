#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

TEST(MoveOnSheet, MovesPlatesFramesNotesAndBends) {
    test::DesignBuilder b;
    const auto device = b.device(test::types::source(), "SRC-1");
    const auto cable = b.open_cable(test::types::hdmi(), {device, {"out"}});
    const auto sheet = b.sheet();
    b.place(sheet, device, 10_mm, 10_mm);
    Note note{NoteId(1), sheet, {}, "hello", {}};
    RoomFrame frame{FrameId(1), sheet, b.room("1", "Hall"), {}, {}, 50_mm, 50_mm, {}};
    b.put(note), b.put(frame);
    Place place = *b.design.places.begin();
    place.at = note.at = frame.at = {30_mm, 40_mm};
    const CableLine line{{sheet, cable}, {{5_mm, 5_mm}}, false, {}};
    const auto design = done(b.design, MoveOnSheet{{place}, {frame}, {note}, {line}});
    EXPECT_EQ(design.places.begin()->at.y, 40_mm);
    EXPECT_EQ(design.notes.begin()->at.x, 30_mm);
    EXPECT_EQ(design.room_frames.begin()->at.x, 30_mm);
    EXPECT_EQ(design.cable_lines.begin()->bends, line.bends);
}

TEST(MoveOnSheet, RefusesRowsThatAreNotThere) {
    test::DesignBuilder b;
    const auto sheet = b.sheet();
    EXPECT_SAYS(refused(b.design, MoveOnSheet{{Place::blank({sheet, DeviceId(9)})}, {}, {}, {}}), "names the device");
    EXPECT_SAYS(refused(b.design, MoveOnSheet{{}, {}, {Note{NoteId(1), sheet, {}, {}, {}}}, {}}), "no note");
    EXPECT_SAYS(refused(b.design, MoveOnSheet{{}, {RoomFrame::blank(FrameId(1))}, {}, {}}), "no room frame");
    const auto device = b.device(test::types::source(), "SRC-1");
    Place place = Place::blank({sheet, device});
    place.at.x = 11_km;
    EXPECT_SAYS(refused(b.design, MoveOnSheet{{place}, {}, {}, {}}), "within 10 km");
}

}  // namespace
