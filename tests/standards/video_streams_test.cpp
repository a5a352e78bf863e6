// Uncompressed pictures in packets against tests/reference (rows COD-035 to COD-064, examples E1 to E6, E21, field
// case 16).
#include "core/standards/video_streams.h"

#include "core/standards/wire_overhead.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace streamwright::test::video_streams {

using namespace standards;

VideoFormat format_of(std::string_view written) { return parse_video_format(written).value(); }

PictureStream stream_of(std::string_view format, Packing packing = Packing::general) {
    return video_stream(format_of(format), packing).value();
}

/// Gbit/s in thousandths of a megabit, as the rows give them.
double kilobits(const base::Rate& rate) { return static_cast<double>(rate.ceil().count()) / 1000; }

TEST(VideoStreams, PixelGroupsAreAsPublished) {
    struct Kind {
        Sampling sampling;
        const char* name;
        std::vector<int> depths;
        int first;
    };
    const Kind kinds[] = {{Sampling::ycbcr_420, "4:2:0", {8, 10, 12}, 35},
                          {Sampling::ycbcr_422, "4:2:2", {8, 10, 12, 16}, 38},
                          {Sampling::rgb, "4:4:4/RGB", {8, 10, 12, 16}, 42}};
    for (const auto& kind : kinds)
        for (std::size_t i = 0; i < kind.depths.size(); ++i) {
            const auto& row = reference_row("COD-0" + std::to_string(kind.first + static_cast<int>(i)));
            ASSERT_EQ(row.condition, std::string(kind.name) + " " + std::to_string(kind.depths[i]) + "-bit");
            const auto group = pixel_group(kind.sampling, kind.depths[i]).value();
            EXPECT_EQ(std::to_string(group.octets) + " octets / " + std::to_string(group.pixels) + " pixels", row.value)
                << row.id;
            EXPECT_EQ(group.octets * 8, group.pixels * bits_per_pixel(kind.sampling, kind.depths[i])) << row.id;
            EXPECT_EQ(group.lines, kind.sampling == Sampling::ycbcr_420 ? 2 : 1);
        }
    EXPECT_EQ(pixel_group(Sampling::ycbcr_444, 10)->octets, pixel_group(Sampling::rgb, 10)->octets);
    EXPECT_FALSE(pixel_group(Sampling::ycbcr_420, 16));
}

TEST(VideoStreams, HeadersAndLimitsAreAsPublished) {
    EXPECT_EQ(rtp_octets, row_number("COD-046", 0));
    EXPECT_EQ(udp_octets, row_number("COD-047", 0));
    EXPECT_EQ(ipv4_octets, row_number("COD-048", 0));
    EXPECT_EQ(ipv6_octets, row_number("COD-049", 0));
    EXPECT_EQ(extended_sequence_octets + line_header_octets, row_number("COD-050", 0));
    EXPECT_EQ(mac_header_octets + fcs_octets, row_number("COD-051", 0));
    EXPECT_EQ(preamble_octets + gap_octets, row_number("COD-052", 0));
    EXPECT_EQ(wire_octets(frame_octets(1500)), row_number("COD-053", 0));
    EXPECT_EQ(standard_udp_octets, row_number("COD-054", 0));
    EXPECT_EQ(extended_udp_octets, row_number("COD-055", 0));
    EXPECT_EQ(full_mtu_udp_octets + ipv4_octets, usual_mtu_octets);
    // One pixel group to a line: the whole room is one candidate, so the largest divisor is the room itself.
    EXPECT_EQ(sample_octets({1, 1, 1}, 1432, Packing::general), row_number("COD-056", 0));
    EXPECT_EQ(block_octets, row_number("COD-057", 0));
    EXPECT_EQ(sample_octets({5, 2, 1}, 960, Packing::block), 7 * 180);
}

TEST(VideoStreams, PacketsOfAFrameAreAsPublished) {
    EXPECT_EQ(packets_per_picture(stream_of("1080p59.94 4:2:2 10-bit")), row_number("COD-058", 0));
    EXPECT_EQ(packets_per_picture(stream_of("1080p59.94 4:2:2 10-bit", Packing::block)), row_number("COD-059", 0));
    EXPECT_EQ(packets_per_picture(stream_of("2160p59.94 4:2:2 10-bit")), row_number("COD-062", 0));
    EXPECT_EQ(sample_octets({5, 2, 1}, 960, Packing::general),
              number_after(reference_row("COD-058").condition, "10-bit, ", 0));
}

TEST(VideoStreams, RatesAreAsPublished) {
    const auto near = [](const base::Rate& have, const char* id) {
        EXPECT_NEAR(kilobits(have), static_cast<double>(row_number(id, 6)), 0.501) << id;
    };
    near(wire_rate(stream_of("1080p59.94 4:2:2 10-bit")), "COD-060");
    near(ip_rate(stream_of("1080p59.94 4:2:2 10-bit")), "COD-061");
    near(wire_rate(stream_of("2160p59.94 4:2:2 10-bit")), "COD-063");
    near(wire_rate(stream_of("1080p60 4:2:2 10-bit")), "COD-064");
}

TEST(VideoStreams, WorkedExamplesComeOut) {
    const auto stream = stream_of("1080p59.94 4:2:2 10-bit");
    EXPECT_EQ(pixel_group(Sampling::ycbcr_422, 10)->octets * 1920 / 2, signal_number("E1", 0));
    EXPECT_EQ(sample_octets({5, 2, 1}, 960, Packing::general), signal_number("E2", 0));
    EXPECT_EQ(packets_per_picture(stream), signal_number("E3", 0));
    EXPECT_EQ(packets_per_picture(stream_of("1080p59.94 4:2:2 10-bit", Packing::block)), signal_number("E4", 0));
    ASSERT_EQ(stream.runs.size(), 1U);
    EXPECT_EQ(packet_wire_octets(stream.runs[0].payload, true), signal_number("E5", 0));
    EXPECT_NEAR(kilobits(wire_rate(stream)), static_cast<double>(signal_number("E6", 6)), 10);
    EXPECT_NEAR(kilobits(wire_rate(stream) * 2), static_cast<double>(signal_number("E21", 6)), 10)
        << "both legs on one link by mistake";
    EXPECT_EQ(reference_row("COD-116").value, "2 x stream rate, one leg per network");
}

TEST(VideoStreams, TheFieldCaseComesOutPacketByPacket) {
    // Frames without FCS, as a capture shows them.
    const auto captured = [](std::int64_t payload) {
        return frame_octets(ip_packet_octets(payload, true)) - fcs_octets;
    };
    const auto stream = stream_of("1080p59.94 4:2:2 10-bit", Packing::block);
    std::vector<std::pair<std::int64_t, std::int64_t>> seen;
    std::int64_t octets = 0;
    for (const auto& run : stream.runs) {
        seen.emplace_back(run.packets, captured(run.payload));
        octets += run.packets * captured(run.payload);
    }
    EXPECT_EQ(signal_example("FC16-3").expected, "3086 of one line, 1028 of two, last of 422 octets");
    EXPECT_EQ(seen, (std::vector<std::pair<std::int64_t, std::int64_t>>{{3086, 1322}, {1028, 1328}, {1, 422}}));
    const auto rate = stream.pictures.bits(octets * 8);
    EXPECT_NEAR(kilobits(rate), static_cast<double>(signal_number("FC16-1", 6)), 1000);
    // A picture of four times the size in the same packing: within a per mille of four times the rate.
    EXPECT_NEAR(kilobits(wire_rate(stream_of("2160p59.94 4:2:2 10-bit", Packing::block))),
                kilobits(wire_rate(stream) * 4), kilobits(wire_rate(stream) * 4) / 500);
    EXPECT_NEAR(kilobits(rate * 4), static_cast<double>(signal_number("FC16-2", 6)), 10'000);
}

TEST(VideoStreams, EveryOctetOfThePictureIsInSomePacket) {
    for (const char* format : {"1080p60 4:2:2 10-bit", "1366x768@60 RGB 10-bit", "2160p60 4:2:0 8-bit",
                               "2160p60 4:2:0 10-bit", "1080i50 4:2:2 12-bit", "64x64@60 4:2:2 8-bit",
                               "1373x769@60 RGB 8-bit", "4320p60 RGB 12-bit", "1080p60 4:2:2 16-bit"}) {
        const auto raster = format_of(format);
        const auto group = pixel_group(raster.sampling, raster.depth).value();
        const auto groups = (std::int64_t{raster.width} * group.lines + group.pixels - 1) / group.pixels;
        const auto lines = raster.height / group.lines / (raster.interlaced ? 2 : 1);
        for (const auto packing : {Packing::general, Packing::block})
            for (const auto limit : {standard_udp_octets, extended_udp_octets}) {
                const auto stream = video_stream(raster, packing, limit).value();
                const auto each = sample_octets(group, groups, packing, limit);
                std::int64_t octets = 0;
                for (const auto& run : stream.runs) {
                    EXPECT_LE(run.payload, limit - udp_octets - rtp_octets) << format;
                    octets += run.packets * (run.payload - extended_sequence_octets);
                }
                EXPECT_EQ(each % group.octets, 0) << format;
                EXPECT_GE(octets, groups * group.octets * lines) << format;
                // What is over is headers of lines, a whole number of them, one a packet at least.
                const auto over = octets - groups * group.octets * lines;
                EXPECT_EQ(over % line_header_octets, 0) << format;
                EXPECT_GE(over / line_header_octets, packets_per_picture(stream)) << format;
                EXPECT_LE(over / line_header_octets, packets_per_picture(stream) + lines) << format;
            }
    }
}

/// Packet by packet: where each begins and ends tells how many lines it touches.
std::vector<PacketRun> counted_one_by_one(std::int64_t line, std::int64_t lines, std::int64_t each) {
    std::vector<PacketRun> runs;
    for (std::int64_t at = 0; at < line * lines; at += each) {
        const auto end = std::min(at + each, line * lines);
        std::int64_t touched = 0;
        for (std::int64_t y = at / line; y * line < end; ++y) ++touched;
        const auto payload = end - at + extended_sequence_octets + touched * line_header_octets;
        const auto alike =
            std::find_if(runs.begin(), runs.end(), [&](const auto& run) { return run.payload == payload; });
        if (alike == runs.end())
            runs.push_back({1, payload});
        else
            ++alike->packets;
    }
    std::sort(runs.begin(), runs.end(), [](const auto& a, const auto& b) { return a.payload < b.payload; });
    return runs;
}

TEST(VideoStreams, BlocksOfEveryRasterAreThoseCountedOneByOne) {
    for (const auto limit : {standard_udp_octets, extended_udp_octets})
        for (int width = 64; width <= 4096; width += width < 800 ? 2 : 37)
            for (const int height : {64, 65, 270}) {
                VideoFormat raster{.width = width, .height = height, .sampling = Sampling::ycbcr_422, .depth = 10};
                auto runs = video_stream(raster, Packing::block, limit).value().runs;
                std::sort(runs.begin(), runs.end(), [](const auto& a, const auto& b) { return a.payload < b.payload; });
                const std::int64_t line = (width + 1) / 2 * 5;
                const auto each = sample_octets({5, 2, 1}, line / 5, Packing::block, limit);
                ASSERT_EQ(runs, counted_one_by_one(line, height, each)) << width << 'x' << height << ' ' << limit;
            }
}

}  // namespace streamwright::test::video_streams
