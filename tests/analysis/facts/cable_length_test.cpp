#include "core/analysis/facts/cable_length.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::test::cable_length_test {

using namespace base::literals;

/// Switch, lead, panel, fixed cable, decoder.
struct Channel {
    DesignBuilder b;
    model::CableId lead{0}, fixed{0};
    Channel() {
        const auto bridge = b.device(types::switch_24(), "SW-1"), panel = b.device(types::patch_panel(), "PP-1");
        const auto decoder = b.device(types::decoder(), "DEC-1");
        lead = b.cable(types::cat6a_lead(), port_of(bridge, "1"), port_of(panel, "f1"));
        fixed = b.cable(types::cat6a(), port_of(panel, "r1"), port_of(decoder, "net"), 80_m);
    }
    analysis::CableLengths lengths() const {
        const auto wiring = graph::wire(b.design);
        return analysis::find_cable_lengths(wiring, graph::find_runs(wiring));
    }
};

TEST(CableLength, addsLeadsAndInstalledPartToTheChannel) {
    const auto lengths = Channel().lengths();
    ASSERT_EQ(lengths.runs.size(), 1u);
    EXPECT_EQ(lengths.runs[0].permanent, 80_m);
    EXPECT_EQ(lengths.runs[0].leads, 2_m);
    EXPECT_EQ(lengths.runs[0].channel, 82_m);
}

TEST(CableLength, prefersTheTypedLengthToTheMadeOne) {
    Channel channel;
    channel.b.change<model::Cable>(channel.lead, [](auto& row) { row.length = 3_m; });
    const auto lengths = channel.lengths();
    EXPECT_EQ(lengths.runs[0].leads, 3_m);
    EXPECT_EQ(lengths.runs[0].channel, 83_m);
}

TEST(CableLength, saysNothingOfWhatHoldsAnUnknownPart) {
    Channel channel;
    channel.b.change<model::Cable>(channel.fixed, [](auto& row) { row.length.reset(); });
    const auto lengths = channel.lengths();
    EXPECT_FALSE(lengths.runs[0].permanent);
    EXPECT_FALSE(lengths.runs[0].channel);
    EXPECT_EQ(lengths.runs[0].leads, 2_m);
    EXPECT_EQ(lengths.cables[0].from == analysis::LengthFrom::unknown, !lengths.cables[0].length);
}

TEST(CableLength, hasNoPermanentLinkWithoutInstalledCable) {
    DesignBuilder b;
    const auto bridge = b.device(types::switch_24(), "SW-1"), decoder = b.device(types::decoder(), "DEC-1");
    b.cable(types::cat6a_lead(), port_of(bridge, "1"), port_of(decoder, "net"));
    const auto wiring = graph::wire(b.design);
    const auto lengths = analysis::find_cable_lengths(wiring, graph::find_runs(wiring));
    EXPECT_FALSE(lengths.runs[0].permanent);
    EXPECT_EQ(lengths.runs[0].channel, 2_m);
}

}  // namespace streamwright::test::cable_length_test
