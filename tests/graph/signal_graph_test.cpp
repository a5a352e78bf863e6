// Which source feeds an encoder, which decoder feeds a display. Expected values: by hand from each drawing.
#include "core/graph/signal_graph.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::graph {
namespace {

using test::DesignBuilder;
using test::port_of;
namespace types = test::types;
namespace cat = streamwright::catalogue;

catalogue::DeviceType extender(const std::string& key, cat::DeviceKind kind, cat::Signal in, cat::Signal out) {
    catalogue::DeviceType type;
    type.key = {key};
    type.kind = kind;
    type.ports = {types::make_port("in", in, cat::Way::in, cat::Connector::hdmi),
                  types::make_port("out", out, cat::Way::out, cat::Connector::hdmi)};
    return type;
}

struct Chain : testing::Test {
    DesignBuilder b;
    model::DeviceId sender =
        b.device(extender("x.tx", cat::DeviceKind::extender_sender, cat::Signal::video, cat::Signal::extender), "TX");
    model::DeviceId receiver =
        b.device(extender("x.rx", cat::DeviceKind::extender_receiver, cat::Signal::extender, cat::Signal::video), "RX");
    model::DeviceId encoder = b.device(types::encoder(), "ENC");

    bool fed() {
        const auto wiring = wire(b.design);
        return fed_by_source(wiring, build_signals(wiring, find_runs(wiring)), *wiring.device_index(encoder));
    }
};

TEST_F(Chain, AnEncoderIsFedThroughAnExtender) {
    b.cable(types::hdmi(), port_of(receiver, "out"), port_of(encoder, "in"));
    b.cable(types::cat6a(), port_of(receiver, "in"), port_of(sender, "out"));
    EXPECT_FALSE(fed());
    b.cable(types::hdmi(), port_of(b.device(types::source(), "PC"), "out"), port_of(sender, "in"));
    EXPECT_TRUE(fed());
}

TEST_F(Chain, ARingOfExtendersIsNoSource) {
    b.cable(types::hdmi(), port_of(receiver, "out"), port_of(sender, "in"));
    b.cable(types::cat6a(), port_of(receiver, "in"), port_of(sender, "out"));
    EXPECT_FALSE(fed());
}

TEST(Signals, ADecoderFeedsTheDisplayBehindIt) {
    DesignBuilder b;
    const auto decoder = b.device(types::decoder(), "DEC");
    const auto display = b.device(types::display(), "DSP");
    const auto reaches = [&] {
        const auto wiring = wire(b.design);
        return reaches_display(wiring, build_signals(wiring, find_runs(wiring)), *wiring.device_index(decoder));
    };
    EXPECT_FALSE(reaches());
    b.cable(types::hdmi(), port_of(display, "in"), port_of(decoder, "out"));
    EXPECT_TRUE(reaches());
    const auto wiring = wire(b.design);
    const auto signals = build_signals(wiring, find_runs(wiring));
    ASSERT_EQ(signals.hops.size(), 1U);
    EXPECT_EQ(signals.hops[0].from, wiring.port_at(port_of(decoder, "out")));
}

TEST(Signals, AnOutputCabledToAnOutputCarriesNothing) {
    DesignBuilder b;
    b.cable(types::hdmi(), port_of(b.device(types::source(), "A"), "out"),
            port_of(b.device(types::source(), "B"), "out"));
    const auto wiring = wire(b.design);
    EXPECT_TRUE(build_signals(wiring, find_runs(wiring)).hops.empty());
}

}  // namespace
}  // namespace streamwright::graph
