#include "tests/support/line_of.h"

#include <gmock/gmock.h>

namespace streamwright::test::line_loses_too_much_test {

using analysis::Severity;
using catalogue::Connector;
using catalogue::Signal;
using namespace base::literals;

std::optional<Severity> told(const model::Design& design) {
    const auto rules = rules_found(design);
    if (std::find(rules.begin(), rules.end(), "line-loses-too-much") == rules.end()) return std::nullopt;
    return finding_of(design, "line-loses-too-much").severity;
}

TEST(LineLosesTooMuch, sdiAdvisesByTheTradeAndWarnsByTheStandard) {
    // DST-033: up to 30 dB typical, 20 dB in the trade; 25 dB per 100 m at half the clock.
    const auto of = [](base::Length length) {
        LineOf line(Signal::video, Connector::bnc, "3G-SDI", "3G-SDI", length);
        line.type([](auto& type) { type.coax_losses = {{1485, 25'000_mdB}}; });
        return told(line.b.design);
    };
    EXPECT_EQ(of(80_m), std::nullopt);
    EXPECT_EQ(of(81_m), Severity::advice);
    EXPECT_EQ(of(120_m), Severity::advice);
    EXPECT_EQ(of(121_m), Severity::warning);
}

TEST(LineLosesTooMuch, loudspeakersByHalfADecibelOrAsSet) {
    // DST-047: 0.5 dB to the end of the line, trade practice from memory.
    const auto of = [](base::Length length, std::optional<base::Loss> set) {
        LineOf line(Signal::audio, Connector::speaker, "", "loudspeaker 100 V 100 W", length);
        line.type([](auto& type) { type.conductor_mm2_tenths = 15; });
        if (set)
            line.b.change<model::Settings>({}, [&](auto& row) { row.cabling.lines = {{"loudspeaker line", {}, set}}; });
        return told(line.b.design);
    };
    // 100 ohm x (10^(0.5 / 20) - 1) = 5.925 ohm: 258.3 m of 1.5 mm2.
    EXPECT_EQ(of(258_m, {}), std::nullopt);
    EXPECT_EQ(of(259_m, {}), Severity::advice);
    EXPECT_EQ(of(259_m, 1'000_mdB), std::nullopt);
    EXPECT_EQ(of(259_m, 400_mdB), Severity::warning);
}

}  // namespace streamwright::test::line_loses_too_much_test
