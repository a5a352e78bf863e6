#include "core/analysis/line_reach.h"

#include "tests/support/line_of.h"

#include <gtest/gtest.h>

namespace streamwright::test::line_reach_test {

using catalogue::Connector;
using catalogue::Signal;
using catalogue::Way;
using namespace base::literals;

std::optional<analysis::LineReach> reach(const LineOf& line) {
    const auto wiring = graph::wire(line.b.design);
    return analysis::line_reach(wiring, graph::find_runs(wiring).list.at(0));
}

TEST(LineReach, picturesGoByTheLesserGeneration) {
    // signal-values.csv DST-002 to DST-005, trade practice from memory: 5 to 7 m at 18 Gbit/s, 7 to 10 m at 10.2.
    const auto two = reach({Signal::video, Connector::hdmi, "HDMI 2.0", "HDMI 2.0"});
    ASSERT_TRUE(two);
    EXPECT_EQ(two->careful, 5_m);
    EXPECT_EQ(two->most, 7_m);
    EXPECT_FALSE(two->binding);
    EXPECT_EQ(reach({Signal::video, Connector::hdmi, "HDMI 2.0", "HDMI 1.4"})->most, 10_m);
    EXPECT_EQ(reach({Signal::video, Connector::hdmi, "HDMI 2.1", "HDMI 2.1"})->most, 5_m);
    EXPECT_FALSE(reach({Signal::video, Connector::hdmi, "", ""})) << "no generation, no figure";
}

TEST(LineReach, usbSerialAndInfrared) {
    // DST-010: 5 m (USB 2.0 7.1.14, read); DST-016: 3 m practical; DST-021: 15 m; DST-025: 60 to 90 m.
    EXPECT_EQ(reach({Signal::usb, Connector::usb_a, "USB 2.0", "USB 2.0"})->most, 5_m);
    EXPECT_TRUE(reach({Signal::usb, Connector::usb_a, "USB 2.0", "USB 2.0"})->binding);
    EXPECT_EQ(reach({Signal::usb, Connector::usb_a, "USB 3.2", "USB 3.2"})->most, 3_m);
    EXPECT_FALSE(reach({Signal::usb, Connector::usb_a, "USB 3.2", "USB 3.2"})->binding);
    EXPECT_EQ(reach({Signal::control, Connector::de9, "RS-232", "RS-232"})->most, 15_m);
    EXPECT_EQ(reach({Signal::control, Connector::ir_jack, "IR", "IR"})->careful, 60_m);
    // DST-020: 2500 pF at 100 pF/m are 25 m.
    LineOf serial(Signal::control, Connector::de9, "RS-232", "RS-232");
    serial.type([](auto& type) { type.picofarad_per_m = 100; });
    EXPECT_EQ(reach(serial)->most, 25_m);
    EXPECT_TRUE(reach(serial)->binding);
}

TEST(LineReach, theTypeAndTheDesignComeFirst) {
    LineOf line(Signal::video, Connector::hdmi, "HDMI 2.0", "HDMI 2.0");
    line.b.change<model::Settings>({}, [](auto& row) {
        row.cabling.lines = {{"HDMI 18 Gbit/s, passive copper", 9_m, {}}};
    });
    EXPECT_EQ(reach(line)->most, 9_m);
    EXPECT_TRUE(reach(line)->set);
    line.type([](auto& type) { type.most_length = 20_m; });
    EXPECT_FALSE(reach(line)) << "its own limit is judged elsewhere";
}

}  // namespace streamwright::test::line_reach_test
