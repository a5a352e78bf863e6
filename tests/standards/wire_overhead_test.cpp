// Octets on the wire and frame rates against tests/reference (rows WIRE-, examples W-).
#include "core/standards/wire_overhead.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::wire_overhead {

using namespace standards;
using namespace base::literals;

TEST(WireOverhead, PartsAreAsPublished) {
    EXPECT_EQ(preamble_octets, row_number("WIRE-001", 0));
    EXPECT_EQ(gap_octets, row_number("WIRE-002", 0));
    EXPECT_EQ(mac_header_octets, row_number("WIRE-003", 0));
    EXPECT_EQ(fcs_octets, row_number("WIRE-004", 0));
    EXPECT_EQ(tag_octets, row_number("WIRE-005", 0));
    EXPECT_EQ(least_frame_octets, row_number("WIRE-006", 0));
    EXPECT_EQ(usual_mtu_octets, row_number("WIRE-007", 0));
    EXPECT_EQ(preamble_octets + gap_octets, row_number("WIRE-010", 0));
    EXPECT_EQ(ipv4_octets + udp_octets + rtp_octets, row_number("WIRE-026", 0));
}

TEST(WireOverhead, LargestFramesAreAsPublished) {
    EXPECT_EQ(reference_row("WIRE-008").value, "1518 / 1522");
    EXPECT_EQ(frame_octets(1500), 1518);
    EXPECT_EQ(frame_octets(1500, 1), 1522);
}

TEST(WireOverhead, FrameRatesAreAsPublished) {
    const auto whole = [](base::BitRate line, std::int64_t frame) {
        return frame_rate_thousandths(line, frame) / 1000;
    };
    EXPECT_EQ(whole(100_Mbps, 64), row_number("WIRE-011", 0));
    EXPECT_EQ(whole(1_Gbps, 64), row_number("WIRE-012", 0));
    EXPECT_EQ(whole(2500_Mbps, 64), row_number("WIRE-013", 0));
    EXPECT_EQ(whole(10_Gbps, 64), row_number("WIRE-014", 0));
    EXPECT_EQ(whole(25_Gbps, 64), row_number("WIRE-015", 0));
    EXPECT_EQ(whole(100_Gbps, 64), row_number("WIRE-016", 0));
    EXPECT_EQ(whole(1_Gbps, 1518), row_number("WIRE-017", 0));
    EXPECT_EQ(whole(1_Gbps, 1522), row_number("WIRE-018", 0));
    EXPECT_EQ(whole(1_Gbps, 9018), row_number("WIRE-019", 0));
}

TEST(WireOverhead, WorkedFrameRatesComeOut) {
    struct Case {
        const char* id;
        const char* label;
        base::BitRate line;
        std::int64_t frame;
    };
    const Case cases[] = {{"W-1", "wire octets,", 1_Gbps, 64},
                          {"W-2", "wire octets,", 1_Gbps, 1518},
                          {"W-3", "", 1_Gbps, 1522},
                          {"W-4", "", 1_Gbps, 9018},
                          {"W-5", "", 10_Gbps, 64},
                          {"W-6", "", 25_Gbps, 1518}};
    for (const auto& each : cases)  // half the last digit: the page rounds, the function cuts
        EXPECT_NEAR(static_cast<double>(frame_rate_thousandths(each.line, each.frame)),
                    static_cast<double>(example_number(each.id, each.label, 3)), 1)
            << each.id;
    EXPECT_EQ(wire_octets(64), example_number("W-1", "", 0));
    EXPECT_EQ(wire_octets(1518), example_number("W-2", "", 0));
}

/// Mb/s with four decimals, half of the last one allowed.
void expect_goodput(const char* id, const base::Rate& have) {
    const auto label = reference_example(id).expected.starts_with("UDP") ? "UDP goodput" : "";
    EXPECT_NEAR(static_cast<double>(have.ceil().count()), static_cast<double>(example_number(id, label, 6)), 51) << id;
}

TEST(WireOverhead, WorkedGoodputComesOut) {
    expect_goodput("W-7", payload_rate(1_Gbps, 1472, false));
    expect_goodput("W-8", payload_rate(1_Gbps, 1472, false, 1));
    expect_goodput("W-10", payload_rate(1_Gbps, 1460, true));
    expect_goodput("W-11", payload_rate(1_Gbps, 18, false));
    EXPECT_NEAR(static_cast<double>(payload_rate(1_Gbps, 8972, false).ceil().count()),
                static_cast<double>(row_number("WIRE-023", 6)), 501);
}

TEST(WireOverhead, ShortFramesArePaddedBeforeTheyAreTagged) {
    EXPECT_EQ(ip_packet_octets(10, false), example_number("W-13", "IP", 0));
    EXPECT_EQ(frame_octets(38), example_number("W-13", "padded to", 0));
    EXPECT_EQ(packet_wire_octets(10, false), example_number("W-13", "wire", 0));
    EXPECT_EQ(frame_octets(46), 64);  // the least payload of IEEE 802.3 clause 3
    EXPECT_EQ(frame_octets(47), 65);
    EXPECT_EQ(frame_octets(10, 1), 68);
}

TEST(WireOverhead, WireRateUndoesPayloadRate) {
    for (const std::int64_t octets : {1, 18, 188, 1316, 1400, 1460, 8960})
        for (const int tags : {0, 1}) {
            // line x p / w x w / p is the line again, exactly where the payload rate is whole.
            const auto wire = packet_wire_octets(octets, true, tags);
            const auto whole = base::BitRate::from_count(octets * 1'000'000);
            EXPECT_EQ(wire_rate(whole, octets, true, tags), base::Rate(base::BitRate::from_count(wire * 1'000'000)));
        }
}

}  // namespace streamwright::test::wire_overhead
