// Rates of runs of packets, by hand from the octets of IEEE 802.3, RFC 791, RFC 768 and RFC 3550.
#include "core/standards/picture_stream.h"

#include <gtest/gtest.h>

namespace streamwright::test::picture_stream {

using namespace standards;

const PictureStream two_sizes{{{2, 1000}, {1, 10}}, Hertz::whole(50)};

TEST(PictureStream, EveryPacketCountsWithItsHeaders) {
    EXPECT_EQ(packets_per_picture(two_sizes), 3);
    // IP: 2 x (1000 + 12 + 8 + 20) + (10 + 40) = 2130 octets.
    EXPECT_EQ(ip_rate(two_sizes).ceil().count(), 2130 * 8 * 50);
    // Wire: 2 x (1040 + 18 + 20) + (50 + 18 + 20) = 2244; with a tag each, 3 x 4 more.
    EXPECT_EQ(wire_rate(two_sizes).ceil().count(), 2244 * 8 * 50);
    EXPECT_EQ(wire_rate(two_sizes, 1).ceil().count(), 2256 * 8 * 50);
}

TEST(PictureStream, BandwidthLinesAreRoundedUp) {
    EXPECT_EQ(bandwidth_line_kbit(base::BitRate::from_count(1'000)), 1);
    EXPECT_EQ(bandwidth_line_kbit(base::BitRate::from_count(1'001)), 2);
    EXPECT_EQ(bandwidth_line_kbit(base::Rate::scaled(base::BitRate::from_count(1'000'000), 1001, 1000)), 1'001);
}

TEST(PictureStream, NothingTakesNothing) {
    EXPECT_EQ(packets_per_picture({}), 0);
    EXPECT_TRUE(wire_rate({}).is_zero());
}

}  // namespace streamwright::test::picture_stream
