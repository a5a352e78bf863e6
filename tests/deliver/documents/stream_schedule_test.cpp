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
}

}  // namespace streamwright::test::stream_schedule
