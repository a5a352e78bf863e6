// Compressed pictures in packets against tests/reference (rows COD-021 to COD-034, COD-117 to COD-120, examples D5,
// E18, E19).
#include "core/standards/compressed_streams.h"

#include "core/standards/wire_overhead.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::compressed_streams {

using namespace standards;

VideoFormat format_of(std::string_view written) { return parse_video_format(written).value(); }

double kilobits(const base::Rate& rate) { return static_cast<double>(rate.ceil().count()) / 1000; }

const VideoFormat uhd = format_of("2160p60 4:2:2 10-bit");
constexpr MilliBitsPerPixel four_bits = 4000;

TEST(CompressedStreams, TheCodestreamOfTheFlowExampleComesOut) {
    const auto rate = codestream_rate(format_of("1280x720p59.94"), 2000);
    EXPECT_EQ(bandwidth_line_kbit(rate), row_number("COD-030", 0));
    EXPECT_EQ(bandwidth_line_kbit(rate), signal_number("D5", 0));
    // The sender's own figure has room to spare over the packets that the standards need.
    const auto packets = bandwidth_line_kbit(ip_rate(jpeg_xs_stream(format_of("1280x720p59.94"), 2000)));
    EXPECT_GT(packets, row_number("COD-030", 0));
    EXPECT_LE(packets, row_number("COD-031", 0));
}

TEST(CompressedStreams, PacketsInTheWholeMtuAreAsPublished) {
    const auto stream = jpeg_xs_stream(uhd, four_bits, full_mtu_udp_octets);
    EXPECT_EQ(codestream_octets(uhd, four_bits), number_after(reference_row("COD-117").note, "frame ", 0));
    EXPECT_EQ(packets_per_picture(stream), row_number("COD-117", 0));
    EXPECT_EQ(packets_per_picture(stream), signal_number("E18", 0));
    EXPECT_EQ(stream.runs.back().payload - jpeg_xs_header_octets,
              number_after(reference_row("COD-117").note, "last packet ", 0));
    EXPECT_EQ(ip_packet_octets(stream.runs.front().payload, true), usual_mtu_octets);
    EXPECT_NEAR(kilobits(wire_rate(stream)), static_cast<double>(row_number("COD-118", 6)), 0.501);
    EXPECT_NEAR(kilobits(wire_rate(stream)), static_cast<double>(signal_number("E19", 6)), 1);
    EXPECT_NEAR(kilobits(codestream_rate(uhd, four_bits)),
                static_cast<double>(number_after(reference_row("COD-118").note, "codestream ", 6)), 0.501);
}

TEST(CompressedStreams, PacketsInTheStandardLimitAreAsPublished) {
    const auto stream = jpeg_xs_stream(uhd, four_bits);
    EXPECT_EQ(packets_per_picture(stream), number_after(reference_row("COD-119").note, "", 0));
    EXPECT_NEAR(kilobits(wire_rate(stream)), static_cast<double>(row_number("COD-119", 6)), 0.501);
    EXPECT_NEAR(kilobits(ip_rate(stream)),
                static_cast<double>(number_after(reference_row("COD-119").note, "IP rate ", 6)), 0.501);
    EXPECT_EQ(bandwidth_line_kbit(ip_rate(stream)), row_number("COD-120", 0));
}

TEST(CompressedStreams, TheWholePictureIsInThePackets) {
    for (const MilliBitsPerPixel rate : {1, 999, 2000, 4001, 8000})
        for (const char* format : {"2160p60", "1080i50", "64x64@60", "1366x768@60"})
            for (const auto limit : {standard_udp_octets, full_mtu_udp_octets, extended_udp_octets}) {
                std::int64_t octets = 0;
                for (const auto& run : jpeg_xs_stream(format_of(format), rate, limit).runs) {
                    EXPECT_LE(run.payload, limit - udp_octets - rtp_octets);
                    octets += run.packets * (run.payload - jpeg_xs_header_octets);
                }
                EXPECT_EQ(octets, codestream_octets(format_of(format), rate)) << format << " " << rate;
            }
}

TEST(CompressedStreams, FactsOfJpegXsAreAsPublished) {
    EXPECT_EQ(jpeg_xs_most_ratio, number_after(reference_row("COD-026").value, "up to ", 0));
    EXPECT_EQ(std::to_string(jpeg_xs_least_lines) + " to " + std::to_string(jpeg_xs_most_lines),
              reference_row("COD-027").value);
    EXPECT_EQ(jpeg_xs_header_octets, row_number("COD-028", 0));
    EXPECT_EQ(jpeg_xs_header_source.standing == Standing::memory, !was_read("COD-028"));
}

TEST(CompressedStreams, PlanningRatesAreThoseOfTheRows) {
    const char* ids[] = {"COD-021", "COD-022", "COD-023", "COD-024", "COD-025", "COD-034"};
    ASSERT_EQ(planning_rates().size(), std::size(ids));
    for (std::size_t i = 0; i < std::size(ids); ++i) {
        const auto& rate = planning_rates()[i];
        EXPECT_EQ(std::to_string(rate.from.count() / 1'000'000) + " to " + std::to_string(rate.to.count() / 1'000'000),
                  reference_row(ids[i]).value)
            << rate.what;
        EXPECT_FALSE(was_read(ids[i]));
        if (i + 1 < std::size(ids)) {
            EXPECT_EQ(rate.what, reference_row(ids[i]).condition);
        }
    }
    EXPECT_EQ(planning_source.standing, Standing::memory);
}

// 8 Mb/s at 60 pictures a second: 8,000,000 / 480 = 16,666.7 octets each. Of 1480 octets UDP 8, RTP 12 and the
// fragment's own header leave 1458 (H.264, RFC 6184) and 1457 (H.265, RFC 7798): 11 full packets, 629 and 640 over.
TEST(CompressedStreams, FragmentsHoldTheMeanPicture) {
    const auto hd = format_of("1080p60 4:2:0 8-bit");
    const auto rate = base::BitRate::from_count(8'000'000);
    EXPECT_EQ(mean_picture_octets(hd, rate), 16'667);
    EXPECT_EQ(fragmented_stream(hd, rate, PictureCoding::h264).runs, (std::vector<PacketRun>{{11, 1460}, {1, 631}}));
    EXPECT_EQ(fragmented_stream(hd, rate, PictureCoding::h265).runs, (std::vector<PacketRun>{{11, 1460}, {1, 643}}));
    // 59.94: 8,000,000 x 1001 / 480,000 = 16,683.3
    EXPECT_EQ(mean_picture_octets(format_of("1080p59.94 4:2:0 8-bit"), rate), 16'684);
}

}  // namespace streamwright::test::compressed_streams
