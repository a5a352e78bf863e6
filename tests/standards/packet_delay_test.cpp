// Delays against tests/reference (rows LAT-, examples F1 to F3 of latency).
#include "core/standards/packet_delay.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::packet_delay {

using namespace standards;
using namespace base::literals;

TEST(PacketDelay, AFrameOnALineTakesItsBitsOverTheRate) {
    // Rows give microseconds with four decimals; one ten-thousandth of it is 100 ps.
    EXPECT_EQ(serialisation(1518, 1_Gbps), 100 * row_number("LAT-018", 4));
    EXPECT_EQ(serialisation(1538, 1_Gbps), 100 * row_number("LAT-019", 4));
    EXPECT_EQ(serialisation(1518, 100_Mbps), 100 * row_number("LAT-020", 4));
    EXPECT_EQ(serialisation(1518, 10_Gbps), 100 * row_number("LAT-021", 4));
    EXPECT_EQ(serialisation(64, 1_Gbps), 100 * row_number("LAT-022", 4));
    EXPECT_EQ(serialisation(9018, 10_Gbps), 100 * row_number("LAT-023", 4));
    EXPECT_EQ(serialisation(1518, 1_Gbps), 1000 * example_number("LT-1", "", 3));
    EXPECT_EQ(4 * serialisation(1518, 1_Gbps), 1000 * example_number("LT-2", "", 3));
    EXPECT_EQ(serialisation(1, base::BitRate::from_count(3'000'000'000'000)), 3) << "8 / 3 ps, rounded up";
}

TEST(PacketDelay, LengthsTakeWhatIsPublished) {
    EXPECT_EQ(fibre_delay_per_metre, 1000 * row_number("LAT-024", 1) / 10);  // us/km are ns/m
    EXPECT_EQ(fibre_delay_rule_per_metre, 1000 * row_number("LAT-025", 0));
    EXPECT_EQ(copper_delay_per_metre, 1000 * row_number("LAT-026", 2) / 100);
    EXPECT_EQ(was_read("LAT-026"), copper_delay_source.standing == Standing::read);
    EXPECT_EQ(serialisation(1518, 1_Gbps), signal_number("F1", 6));
    EXPECT_EQ(4 * serialisation(1518, 1_Gbps), signal_number("F2", 6));
    EXPECT_EQ(propagation(2000_m, fibre_delay_per_metre), signal_number("F3", 6));
    EXPECT_EQ(propagation(2000_m, fibre_delay_per_metre), 1'000'000 * example_number("LT-3", "", 1) / 10);
    EXPECT_EQ(propagation(100_m, copper_delay_per_metre), 545'000);
}

}  // namespace streamwright::test::packet_delay
