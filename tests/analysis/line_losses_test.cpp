#include "core/analysis/line_losses.h"

#include "tests/support/line_of.h"

#include <gtest/gtest.h>

namespace streamwright::test::line_losses_test {

using catalogue::Connector;
using catalogue::Signal;
using namespace base::literals;

std::optional<analysis::LineLosses> losses(const LineOf& line) {
    const auto wiring = graph::wire(line.b.design);
    return analysis::line_losses(wiring, graph::find_runs(wiring).list.at(0));
}

TEST(LineLosses, sdiIsReckonedAtHalfTheClock) {
    // DST-033: 3G-SDI up to 30 dB typical at 1.485 GHz, the trade sizes by 20 dB. 27 dB per 100 m there: 80 m
    // lose 21.6.
    LineOf line(Signal::video, Connector::bnc, "3G-SDI", "3G-SDI", 80_m);
    EXPECT_FALSE(losses(line)) << "the cable states no loss";
    line.type([](auto& type) { type.coax_losses = {{1485, 27'000_mdB}}; });
    EXPECT_EQ(losses(line)->loss, 21'600_mdB);
    EXPECT_EQ(losses(line)->careful, 20'000_mdB);
    EXPECT_EQ(losses(line)->most, 30'000_mdB);
    // DST-036: loss rises with the root of the frequency: four times the frequency, twice the loss.
    LineOf fast(Signal::video, Connector::bnc, "12G-SDI", "12G-SDI", 80_m);
    fast.type([](auto& type) { type.coax_losses = {{1485, 27'000_mdB}}; });
    EXPECT_EQ(losses(fast)->loss, 43'200_mdB);
    EXPECT_EQ(losses(fast)->most, 40'000_mdB);  // DST-034
}

TEST(LineLosses, loudspeakersByCopperAndLoad) {
    // DST-046: 100 W at 100 V, 100 m of 1.5 mm2: 0.197 dB. DST-045: at 70.7 V 0.390 dB.
    const auto at = [](const char* standard) {
        LineOf line(Signal::audio, Connector::speaker, "", standard, 100_m);
        line.type([](auto& type) { type.conductor_mm2_tenths = 15; });
        return losses(line)->loss;
    };
    EXPECT_EQ(at("loudspeaker 100 V 100 W"), 197_mdB);
    EXPECT_EQ(at("loudspeaker 70.7 V 100 W"), 390_mdB);
    // 8 ohm: loop 2 x 0.0172 x 100 / 1.5 = 2.2933 ohm, rounded up to 2.294: 20 x log10(10.294 / 8) = 2.190 dB.
    EXPECT_EQ(at("loudspeaker 8 ohm"), 2'190_mdB);
}

TEST(LineLosses, areSilentWhereAFigureIsMissing) {
    EXPECT_FALSE(losses({Signal::audio, Connector::speaker, "", "loudspeaker 8 ohm", 100_m}));
    for (const char* nonsense : {"", "loudspeaker", "loudspeaker 0 ohm", "loudspeaker -8 ohm", "loudspeaker 100 V",
                                 "loudspeaker 100 V 0 W", "balanced line", "loudspeaker 1e9 ohm"}) {
        LineOf line(Signal::audio, Connector::speaker, "", nonsense, 100_m);
        line.type([](auto& type) { type.conductor_mm2_tenths = 15; });
        EXPECT_FALSE(losses(line)) << nonsense;
    }
}

}  // namespace streamwright::test::line_losses_test
