#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

PlaceDevice place(std::uint64_t id, test::types::DevicePtr type) {
    return {DeviceId(id), std::move(type), {}, {}, {}, {}};
}

TEST(PlaceDevice, TagsEmbedsAndDraws) {
    test::DesignBuilder b;
    auto edit = place(1, test::types::encoder());
    edit.sheet = b.sheet();
    edit.room = b.room("1", "Hall");
    edit.at = {30_mm, 40_mm};
    auto design = done(b.design, edit);
    EXPECT_EQ(test::row_of<Device>(design, DeviceId(1)).tag, "ENC-001");
    EXPECT_EQ(test::row_of<Device>(design, DeviceId(1)).room, edit.room);
    EXPECT_TRUE(design.device_types.contains(edit.type->key));
    EXPECT_EQ(design.places.find({*edit.sheet, DeviceId(1)})->at, edit.at);
    design = done(design, place(2, test::types::encoder()));
    EXPECT_EQ(test::row_of<Device>(design, DeviceId(2)).tag, "ENC-002");
    EXPECT_EQ(design.places.size(), 1U);
}

TEST(PlaceDevice, TakesTheLowestFreeTag) {
    test::DesignBuilder b;
    for (const auto* tag : {"ENC-001", "ENC-003", "ENC-x", "ENCORE-002", "ENC-99999999999999999999"})
        b.device(test::types::encoder(), tag);
    EXPECT_EQ(next_tag(b.design, "ENC"), "ENC-002");
    EXPECT_EQ(next_tag(b.design, "DEC"), "DEC-001");
    EXPECT_EQ(next_tag(b.design, ""), "DEV-001");
}

TEST(PlaceDevice, Refuses) {
    test::DesignBuilder b;
    EXPECT_SAYS(refused(b.design, place(1, nullptr)), "needs a type");
    EXPECT_SAYS(refused(b.design, place(1, test::types::module_sr())), "is a transceiver");
    EXPECT_SAYS(
        refused(b.design, place(1, std::make_shared<const catalogue::DeviceType>(test::types::make_rack_type()))),
        "is a rack");
    const auto design = done(b.design, place(1, test::types::encoder()));
    EXPECT_SAYS(refused(design, place(1, test::types::encoder())), "already has a device");
    auto edit = place(2, test::types::encoder());
    edit.room = RoomId(9);
    EXPECT_SAYS(refused(design, edit), "names the room");
    edit = place(2, test::types::encoder());
    edit.sheet = SheetId(9);
    EXPECT_SAYS(refused(design, edit), "names the sheet");
}

}  // namespace
