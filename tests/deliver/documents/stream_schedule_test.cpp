// Streams with their groups and wire rates, and who shows what.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

namespace streamwright::test::stream_schedule {

TEST(StreamSchedule, TellsGroupAndMac) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("stream-schedule");
    const auto& streams = table(content);
    ASSERT_EQ(streams.rows.size(), 1u);
    const auto& row = streams.rows.front();
    EXPECT_EQ(cell(streams, row, "Encoder"), "ENC-001");
    EXPECT_EQ(cell(streams, row, "Group"), "239.1.1.1");
    EXPECT_EQ(cell(streams, row, "Group MAC"), "01-00-5E-01-01-01");  // RFC 1112 6.4: low 23 bits
    EXPECT_EQ(cell(streams, row, "Payload, Mb/s"), "800000000");
}

TEST(StreamSchedule, WireRateCountsAllOverhead) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("stream-schedule");
    const auto& streams = table(content);
    const auto& stream = *venue.b.design.streams.begin();
    // RFC 3550 12, RFC 768 8, RFC 791 20; IEEE 802.3: header and check 18, preamble 8, gap 12 octets.
    const std::int64_t payload = stream.payload_octets, wire = payload + (stream.rtp ? 12 : 0) + 8 + 20 + 18 + 8 + 12;
    const std::int64_t expected = (800'000'000 * wire + payload - 1) / payload;
    EXPECT_EQ(cell(streams, streams.rows.front(), "On the wire, Mb/s"), std::to_string(expected));
}

TEST(StreamSchedule, PresetsTellWhoShowsWhat) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("stream-schedule");
    const auto& presets = table(content, 1);
    ASSERT_EQ(presets.rows.size(), 1u);
    EXPECT_EQ(cell(presets, presets.rows.front(), "Preset"), "Lecture");
    EXPECT_EQ(cell(presets, presets.rows.front(), "Decoder"), "DEC-001");
    EXPECT_EQ(cell(presets, presets.rows.front(), "Latency at most"), "not known")
        << "nobody asks, so the stream does not arrive";
    EXPECT_EQ(cell(presets, presets.rows.front(), "Skew at most"), "") << "no other display shows it";
}

TEST(StreamSchedule, LatencyIsTheSumOfItsParts) {
    SmallVenue venue;
    const auto vlan = venue.b.vlan(1, "AV", "10.1.0.0/24");
    venue.b.usual_vlan(vlan);
    venue.b.querier(venue.sw, vlan, "10.1.0.2");
    for (auto type : {*types::encoder(), *types::decoder()}) {
        type.codec->encode_latency = type.codec->decode_latency = base::Duration::from_count(10'000'000);
        venue.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    }
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("stream-schedule");
    const auto& presets = table(content, 1);
    // 1400 octets in a frame of 1458 (RTP 12, UDP 8, IPv4 20, Ethernet 18): 11.664 us on each of two lines of 1 Gb/s;
    // 4 us in the switch; 38 m and 46.5 m at 5.45 ns: 460.525 ns; 10 ms each end. 20,027,788.525 ns, rounded up.
    EXPECT_EQ(cell(presets, presets.rows.front(), "Latency at most"), "20.028 ms");
}

TEST(StreamSchedule, TellsWhatIsCarriedAndInWhichPackets) {
    SmallVenue venue;
    const auto id = venue.b.design.streams.begin()->id;
    venue.b.change<model::Stream>(id, [](model::Stream& row) {
        row.payload_rate = {};
        row.picture = model::PictureEssence{.format = standards::parse_video_format("1080p59.94 4:2:2 10-bit").value()};
    });
    const auto flow = venue.b.stream(venue.b.design.streams.begin()->encoder, {}, "239.1.1.2");
    venue.b.change<model::Stream>(flow, [](model::Stream& row) {
        row.kind = catalogue::StreamKind::audio;
        row.sound.emplace();
    });
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("stream-schedule");
    const auto& packets = table(content, 2);
    ASSERT_EQ(packets.rows.size(), 2u);
    const auto& picture = packets.rows[0];
    EXPECT_EQ(cell(packets, picture, "Carries"), "1080p59.94 4:2:2 10-bit");
    EXPECT_EQ(cell(packets, picture, "Coding and packing"), "uncompressed, general packing");
    // Rows COD-058 and COD-060: 4320 packets x 60000 / 1001 a second, 1200 octets and 8 of header, 1286 on the wire.
    EXPECT_EQ(cell(packets, picture, "Packets a second"), "258941.059");
    EXPECT_EQ(cell(packets, picture, "Payload, octets"), "1208");
    EXPECT_EQ(cell(packets, picture, "Frame, octets"), "1266");
    EXPECT_EQ(cell(packets, picture, "On the wire, Mb/s"), "2663985615");
    const auto& sound = packets.rows[1];
    EXPECT_EQ(cell(packets, sound, "Carries"), "2 channels, 48 kHz");
    EXPECT_EQ(cell(packets, sound, "Coding and packing"), "L24, 1 ms");
    EXPECT_EQ(cell(packets, sound, "Level"), "A");
    EXPECT_EQ(cell(packets, sound, "Packets a second"), "1000");
    EXPECT_EQ(cell(packets, sound, "On the wire, Mb/s"), "2928000");  // E14
}

TEST(StreamSchedule, SaysWhereNothingIsStated) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("stream-schedule");
    const auto& packets = table(content, 2);
    EXPECT_EQ(cell(packets, packets.rows.front(), "Carries"), "not stated");
    // 800 Mb/s in packets of 1,400 octets.
    EXPECT_EQ(cell(packets, packets.rows.front(), "Packets a second"), "71428.571");
}

}  // namespace streamwright::test::stream_schedule
