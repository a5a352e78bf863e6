// Picture formats as people write them, and their rates without blanking, against tests/reference (rows VID-074 to
// VID-098, examples A7 to A9).
#include "core/standards/video_format.h"

#include "core/standards/frame_rate_text.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::video_format {

using namespace standards;

VideoFormat read(std::string_view text) {
    const auto format = parse_video_format(text);
    EXPECT_TRUE(format.ok()) << text << ": " << (format.ok() ? "" : format.error().english());
    return format.ok() ? *format : VideoFormat{};
}

TEST(VideoFormat, BitsOfAPixelAreAsPublished) {
    const std::pair<Sampling, int> first_rows[] = {
        {Sampling::rgb, 74}, {Sampling::ycbcr_422, 77}, {Sampling::ycbcr_420, 80}};
    for (const auto& [sampling, first] : first_rows)
        for (int i = 0; i < 3; ++i) {
            const auto id = "VID-0" + std::to_string(first + i);
            EXPECT_EQ(bits_per_pixel(sampling, 8 + 2 * i), row_number(id, 0)) << id;
        }
    EXPECT_EQ(bits_per_pixel(Sampling::ycbcr_444, 10), row_number("VID-075", 0));
    EXPECT_EQ(reference_row("VID-083").value, "W*H*fps*bpp");
}

TEST(VideoFormat, ActiveRatesAreAsPublished) {
    for (int i = 84; i <= 97; ++i) {
        const auto& row = reference_row("VID-0" + std::to_string(i));
        // The rows round to a kilobit a second.
        EXPECT_NEAR(static_cast<double>(active_rate(read(row.condition)).ceil().count()) / 1000,
                    static_cast<double>(row_number(row.id, 6)), 0.501)
            << row.id << " " << row.condition;
    }
    const std::pair<const char*, const char*> examples[] = {
        {"A7", "1080p59.94 4:2:2 10-bit"}, {"A8", "2160p60 4:4:4 8-bit"}, {"A9", "2160p60 4:2:0 10-bit"}};
    for (const auto& [id, format] : examples)
        EXPECT_NEAR(static_cast<double>(active_rate(read(format)).ceil().count()) / 1000,
                    static_cast<double>(signal_number(id, 6)), 0.501)
            << id;
    EXPECT_EQ(least_hdr_depth, row_number("VID-098", 0));
}

TEST(VideoFormat, WhatIsWrittenReadsBack) {
    for (const auto sampling : {Sampling::rgb, Sampling::ycbcr_444, Sampling::ycbcr_422, Sampling::ycbcr_420})
        for (const int depth : {8, 10, 12, 16})
            for (const auto range : {DynamicRange::sdr, DynamicRange::pq, DynamicRange::hlg})
                for (const auto& rate : {Hertz::whole(25), Hertz::ratio(60000, 1001), Hertz::ratio(2997, 50),
                                         Hertz::ratio(100, 3), Hertz::ratio(7497, 100)})
                    for (const bool interlaced : {false, true})
                        for (const bool reduced : {false, true})
                            for (const auto& [width, height] : {std::pair(1920, 1080), std::pair(1366, 768)}) {
                                const VideoFormat format{width,    height, interlaced, rate,
                                                         sampling, depth,  range,      reduced};
                                EXPECT_EQ(read(text(format)), format) << text(format);
                            }
}

}  // namespace streamwright::test::video_format
