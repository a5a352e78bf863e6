// Packets and rates that follow from what a stream carries. Expected values: worked examples D1, D3, E3, E4, E6, E14,
// E15, E18, E19, E21 and rows COD-060, COD-063, COD-105, COD-107, COD-118, COD-119 of tests/reference, and sums written
// out.
#include "core/model/stream_packets.h"

#include <gtest/gtest.h>

namespace streamwright::test::stream_packets {

using namespace model;
using namespace base::literals;
using standards::PictureCoding;

Stream picture(std::string_view format, PictureEssence essence = {}) {
    Stream row = Stream::blank(StreamId(1));
    essence.format = standards::parse_video_format(format).value();
    row.picture = essence;
    return row;
}

Stream sound(int channels, standards::PacketTime time, std::int64_t sampling_hz = 48'000) {
    Stream row = Stream::blank(StreamId(1));
    row.kind = catalogue::StreamKind::audio;
    row.sound = SoundEssence{{sampling_hz, standards::AudioCoding::l24, channels, time}};
    return row;
}

std::int64_t bits(const base::Rate& rate) { return rate.ceil().count(); }

std::int64_t packets(const Stream& row) { return standards::packets_per_picture(*packets_of(row)); }

TEST(StreamPackets, AnUncompressedPictureIsExact) {
    const auto hd = picture("1080p59.94 4:2:2 10-bit");
    EXPECT_EQ(packets(hd), 4320);                 // E3
    EXPECT_EQ(full_payload_octets(hd), 1208);     // E5: 1200 of samples and 8 of payload header
    EXPECT_EQ(full_frame_octets(hd), 1286 - 20);  // E5 less preamble and gap
    const auto exact = base::Rate::scaled(base::BitRate::from_count(1286LL * 8 * 4320), 60'000, 1001);  // E6
    EXPECT_EQ(stream_wire_rate(hd), exact);
    EXPECT_EQ(bits(stream_wire_rate(hd)), 2'663'985'615);      // COD-060: 2.663986 Gbit/s
    EXPECT_EQ(bits(stream_wire_rate(hd) * 2), 5'327'971'229);  // E21: 5.327971 Gbit/s
    EXPECT_EQ(bits(payload_rate_of(hd)), 2'485'834'166);       // COD-060: active payload 2.485834
    // COD-063: 10.655942 Gbit/s
    EXPECT_EQ(bits(stream_wire_rate(picture("2160p59.94 4:2:2 10-bit"))), 10'655'942'458);
    // Four octets of tag on each of 4320 x 59.94 packets.
    EXPECT_EQ(stream_wire_rate(hd, 1) - exact,
              base::Rate::scaled(base::BitRate::from_count(4LL * 8 * 4320), 60'000, 1001));
}

TEST(StreamPackets, BlocksAreCountedToTheLastPacket) {
    PictureEssence blocks;
    blocks.packing = standards::Packing::block;
    EXPECT_EQ(packets(picture("1080p59.94 4:2:2 10-bit", blocks)), 4115);  // E4
}

TEST(StreamPackets, JpegXsEndsEachPictureWithAShortPacket) {
    PictureEssence light{.coding = PictureCoding::jpeg_xs, .millibits_per_pixel = 4000};
    EXPECT_EQ(bits(stream_wire_rate(picture("2160p60 4:2:2 10-bit", light))) / 1000, 2'104'367);  // COD-119
    light.udp_limit_octets = 1480;                                                                // E18: 1500-byte MTU
    const auto row = picture("2160p60 4:2:2 10-bit", light);
    EXPECT_EQ(packets(row), 2849);
    EXPECT_EQ(bits(stream_wire_rate(row)), (2848LL * 1538 + 594) * 8 * 60);  // E19: 2.102793 Gbit/s
    EXPECT_EQ(bits(payload_rate_of(row)), 1'990'656'000);                    // COD-118: codestream
    EXPECT_EQ(full_payload_octets(row), 1460);                               // 1456 of codestream and 4 of header
}

TEST(StreamPackets, SoundIsOnePacketEachTime) {
    using standards::PacketTime;
    EXPECT_EQ(bits(stream_wire_rate(sound(2, PacketTime::ms_1))), 2'928'000);      // E14
    EXPECT_EQ(bits(stream_wire_rate(sound(8, PacketTime::ms_1))), 9'840'000);      // E15
    EXPECT_EQ(bits(stream_wire_rate(sound(2, PacketTime::us_125))), 7'296'000);    // COD-109
    EXPECT_EQ(bits(stream_wire_rate(sound(8, PacketTime::us_125))), 14'208'000);   // COD-105
    EXPECT_EQ(bits(stream_wire_rate(sound(64, PacketTime::us_125))), 78'720'000);  // COD-107
    EXPECT_EQ(full_payload_octets(sound(2, PacketTime::ms_1)), 288);               // E12
    EXPECT_EQ(bits(payload_rate_of(sound(8, PacketTime::ms_1))), 9'216'000);       // G1
    EXPECT_EQ(packets_of(sound(2, PacketTime::us_125))->pictures.floor(), 8000);   // COD-108
}

TEST(StreamPackets, ABitRateIsCutIntoMeanPictures) {
    const PictureEssence essence{.coding = PictureCoding::h264, .rate = 8_Mbps};
    const auto row = picture("1080p60 4:2:0 8-bit", essence);
    // 8,000,000 / (60 x 8) = 16,667 octets a picture; 1460 - 8 - 12 - 2 = 1438 in a packet: 11 full, 849 in the last.
    // On the wire 12 + 8 + 20 + 18 + 20 = 78 more than payload: 11 x 1518 + 929 = 17,627 octets.
    EXPECT_EQ(packets(row), 12);
    EXPECT_EQ(bits(stream_wire_rate(row)), 17'627LL * 8 * 60);
    EXPECT_EQ(payload_rate_of(row), base::Rate(8_Mbps));
}

TEST(StreamPackets, LevelsAreTheLeastThatHoldPictureAndRate) {
    const auto level = [](std::string_view format, PictureCoding coding, base::BitRate rate) {
        const auto row = picture(format, {.coding = coding, .rate = rate});
        const auto needed = needed_level(*row.picture);
        return std::string(needed->level->name) + (needed->high_tier ? " high" : "");
    };
    EXPECT_EQ(level("1080p60 4:2:0 8-bit", PictureCoding::h264, 8_Mbps), "4.2");    // D1
    EXPECT_EQ(level("2160p60 4:2:0 10-bit", PictureCoding::h265, 20_Mbps), "5.1");  // D3
    EXPECT_EQ(level("1080p60 4:2:0 8-bit", PictureCoding::h265, 300_Mbps),
              "6.1 high");  // above every main tier, Table A.9
    EXPECT_FALSE(needed_level({}));
}

TEST(StreamPackets, WhatIsTypedInStaysAsTyped) {
    auto row = Stream::blank(StreamId(1));
    row.payload_rate = 700_Mbps, row.rtp = false;
    EXPECT_FALSE(packs_essence(row));
    EXPECT_FALSE(packets_of(row));
    EXPECT_EQ(payload_rate_of(row), base::Rate(700_Mbps));
    EXPECT_EQ(full_payload_octets(row), 1400);
    EXPECT_FALSE(has_rtp(row));
    EXPECT_EQ(bits(stream_wire_rate(row)), 733'000'000);  // 1,400 + 8 + 20 + 18 + 20 = 1,466 octets each
}

}  // namespace streamwright::test::stream_packets
