// Picture formats as people write them. What a reading means is in the words of CTA-861 and SMPTE ST 2110-20; habits of
// writing are common practice.
#include "core/standards/video_format.h"

#include <gtest/gtest.h>

namespace streamwright::test::parsed_video_format {

using namespace standards;

VideoFormat read(std::string_view text) {
    const auto format = standards::parse_video_format(text);
    EXPECT_TRUE(format.ok()) << text << ": " << (format.ok() ? "" : format.error().english());
    return format.ok() ? *format : VideoFormat{};
}

std::string refusal(std::string_view text) {
    const auto format = standards::parse_video_format(text);
    return format.ok() ? "read as " + standards::text(*format) : format.error().english();
}

TEST(ParseVideoFormat, ReadsWhatPeopleWrite) {
    EXPECT_EQ(read("1080p60"), VideoFormat{});
    EXPECT_EQ(read("1920x1080@60"), VideoFormat{});
    EXPECT_EQ(read(" 1920 x 1080 @ 60 Hz RGB 8-bit SDR "), VideoFormat{});
    EXPECT_EQ(read("1920\u00d71080p60"), VideoFormat{});
    EXPECT_EQ(text(read("4K60 4:4:4")), "2160p60 4:4:4 8-bit");
    EXPECT_EQ(text(read("UHD 59.94 422 10bit hdr")), "2160p59.94 4:2:2 10-bit PQ");
    EXPECT_EQ(text(read("2160p59.94, YCbCr 4:2:2, 10 bit, HLG")), "2160p59.94 4:2:2 10-bit HLG");
    EXPECT_EQ(text(read("2160p60 RGB 4:4:4 12-bit")), "2160p60 RGB 12-bit");
    EXPECT_EQ(text(read("1920x1200@60 RB")), "1920x1200@60 RB RGB 8-bit");
    EXPECT_EQ(text(read("1080i50 4:2:2 10b")), "1080i50 4:2:2 10-bit");
    EXPECT_EQ(text(read("1024x768i87")), "1024x768i87 RGB 8-bit");
    EXPECT_EQ(raster_text(read("8k24")), "4320p24");
}

TEST(ParseVideoFormat, InterlacedPicturesCountFieldsInTheirName) {
    const auto format = read("1080i59.94");
    EXPECT_TRUE(format.interlaced);
    EXPECT_EQ(format.frame_rate, Hertz::ratio(30000, 1001));
    EXPECT_EQ(refresh_rate(format), Hertz::ratio(60000, 1001));
}

TEST(ParseVideoFormat, SlowRatesAreExact) {
    // n x 1000/1001: the frame rates of NTSC heritage as SMPTE ST 2110-20 writes them (exactframerate).
    EXPECT_EQ(read("2160p59.94").frame_rate, Hertz::ratio(60000, 1001));
    EXPECT_EQ(read("2160p60000/1001").frame_rate, Hertz::ratio(60000, 1001));
    EXPECT_EQ(read("1080p29.97").frame_rate, Hertz::ratio(30000, 1001));
    for (const char* written : {"1080p23.97", "1080p23.98", "1080p23.976", "1080p24000/1001"})
        EXPECT_EQ(read(written).frame_rate, Hertz::ratio(24000, 1001)) << written;
    EXPECT_EQ(read("1080p119.88").frame_rate, Hertz::ratio(120000, 1001));
    EXPECT_EQ(read("1280x800@59.81").frame_rate, Hertz::ratio(5981, 100)) << "no kin of 60";
}

TEST(ParseVideoFormat, RefusesAndNamesTheField) {
    EXPECT_EQ(refusal("1080p0"), "The frame rate of a picture is 1 to 600 Hz, not 0 Hz.");
    EXPECT_EQ(refusal("16K at 1000 Hz"), "The width of a picture is 64 to 10240 pixels, not 15360.");
    EXPECT_EQ(refusal("4K1000"), "The frame rate of a picture is 1 to 600 Hz, not 1000 Hz.");
    EXPECT_EQ(refusal("1920x20000@60"), "The height of a picture is 64 to 10240 pixels, not 20000.");
    EXPECT_EQ(refusal("1081x1081i50"), "The height of an interlaced picture is even, not 1081.");
    EXPECT_EQ(refusal("1367x768@60 4:2:2"), "Sampling 4:2:2 needs an even width, not 1367.");
    EXPECT_EQ(refusal("1366x769@60 4:2:0"), "Sampling 4:2:0 needs an even height, not 769.");
    EXPECT_EQ(refusal("1080p60 9-bit"), "The depth of a picture is 8, 10, 12 or 16 bits, not 9.");
    EXPECT_EQ(refusal("1080p60 4:1:1"), "\"4:1:1\" is no sampling, depth or dynamic range of a picture.");
    EXPECT_EQ(refusal("1000p60"), "The width that goes with 1000 lines is not known: write width x height.");
    EXPECT_EQ(refusal("1080p"), "The frame rate cannot be read from \"\".");
    EXPECT_EQ(refusal("1080p60/0"), "The frame rate cannot be read from \"60/0\".");
    EXPECT_EQ(refusal("3k60"), "The width of a picture cannot be read from \"3K\".");
    EXPECT_EQ(refusal("1920x"), "The height of the picture cannot be read from \"1920x\".");
    EXPECT_EQ(refusal(std::string(1000, '9')), "A picture format has at most 100 characters.");
}

TEST(ParseVideoFormat, ReaderIsTotal) {
    for (const char* odd : {"",
                            " ",
                            "p60",
                            "1080",
                            "1080x",
                            "x1080@60",
                            "-1080p60",
                            "1080p-60",
                            "1080p60.0.1",
                            "1080p.",
                            "99999999999999999999p60",
                            "1080p99999999999999999999",
                            "1080p1/99999999",
                            "1080p60 10",
                            "1080p60 bit",
                            "\xC3",
                            "1080p60\xC3\x97",
                            "4K",
                            "uhd",
                            "k60",
                            "0x0@0",
                            "1080p60 444 444 8",
                            "1920x1080@60x",
                            "1080p60Hz!",
                            "1080p1e3",
                            "1080p60 4:2:2:4"})
        EXPECT_FALSE(standards::parse_video_format(odd).ok()) << odd;
}

}  // namespace streamwright::test::parsed_video_format
