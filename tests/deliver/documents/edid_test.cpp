// One row a picture input, and one a picture at a display.
#include "tests/deliver/small_venue.h"
#include "tests/support/picture_room.h"

#include <gtest/gtest.h>

namespace streamwright::test::edid {

/// A source on an encoder whose EDID is as said, a large screen and a small monitor on its stream.
struct Shown {
    PictureRoom room;
    model::DeviceId encoder{0}, screen{0};
    Shown() {
        auto large = picture_facts({"2160p60", "1080p60"});
        large.most_depth = 8;
        auto small = picture_facts({"1080p60"});
        small.most_depth = 8;
        const auto source = room.source("SRC-1", {large, "HDMI 2.0"});
        encoder = room.encoder("ENC-1", {large, "HDMI 2.0"});
        room.join(source, "out", encoder);
        const auto stream = room.stream(encoder);
        screen = room.member("DSP-1", stream, {large, "HDMI 2.0"}, false);
        room.member("MON-2", stream, {small, "HDMI 2.0"}, false);
    }
};

TEST(Edid, EachInputSaysWhatItAnnouncesAndByWhat) {
    Shown shown;
    shown.room.announce(shown.encoder, "in", merged_edid());
    const Delivered delivered(shown.room.b.design);
    const auto content = delivered.document("edid");
    const auto& inputs = table(content);
    EXPECT_EQ(column(inputs, "Device"), (std::vector<std::string>{"DSP-1", "ENC-1", "MON-2"}));
    const auto* encoder = row_with(inputs, "Device", "ENC-1");
    ASSERT_NE(encoder, nullptr);
    EXPECT_EQ(cell(inputs, *encoder, "EDID"), "merged from all behind");
    EXPECT_EQ(cell(inputs, *encoder, "Fed by"), "SRC-1 out");
    EXPECT_TRUE(cell(inputs, *encoder, "Announces").starts_with("1080p60 "));
    EXPECT_EQ(cell(inputs, *encoder, "Sound"), "not known");
    const auto* screen = row_with(inputs, "Device", "DSP-1");
    ASSERT_NE(screen, nullptr);
    EXPECT_EQ(cell(inputs, *screen, "EDID"), "own, as the type states");
    EXPECT_EQ(cell(inputs, *screen, "Other rasters"), "1080p60");
    EXPECT_TRUE(cell(inputs, *screen, "Comes").starts_with("1080p60 "));
}

TEST(Edid, ACopyNamesItsDisplayAndAFixedOneItsSound) {
    Shown shown;
    shown.room.announce(shown.encoder, "in", copied_edid(shown.screen));
    {
        const Delivered delivered(shown.room.b.design);
        const auto content = delivered.document("edid");
        const auto* row = row_with(table(content), "Device", "ENC-1");
        EXPECT_EQ(cell(table(content), *row, "Copied from"), "DSP-1 in");
    }
    auto fixed = fixed_edid("1080p60");
    fixed.audio = catalogue::AudioFormat::multichannel_pcm;
    shown.room.announce(shown.encoder, "in", fixed);
    const Delivered delivered(shown.room.b.design);
    const auto content = delivered.document("edid");
    const auto* row = row_with(table(content), "Device", "ENC-1");
    EXPECT_EQ(cell(table(content), *row, "EDID"), "fixed");
    EXPECT_EQ(cell(table(content), *row, "Sound"), "two channels, more channels");
}

TEST(Edid, EveryPictureSaysWhatIsLeftOfItAndWhyThereIsNone) {
    Shown shown;
    shown.room.announce(shown.encoder, "in", fixed_edid("2160p60"));
    const Delivered delivered(shown.room.b.design);
    const auto content = delivered.document("edid");
    const auto& pictures = table(content, 1);
    const auto* screen = row_with(pictures, "Display", "DSP-1 in");
    ASSERT_NE(screen, nullptr);
    EXPECT_TRUE(cell(pictures, *screen, "Left of it").starts_with("2160p60 "));
    const auto* monitor = row_with(pictures, "Display", "MON-2 in");
    ASSERT_NE(monitor, nullptr);
    EXPECT_EQ(cell(pictures, *monitor, "Left of it"), "no picture");
    EXPECT_TRUE(cell(pictures, *monitor, "Could be").starts_with("1080p60 "));
    EXPECT_NE(cell(pictures, *monitor, "Why not, or what is not known").find("MON-2"), std::string::npos);
}

}  // namespace streamwright::test::edid
