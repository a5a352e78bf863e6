#include "tests/support/line_of.h"

#include <gmock/gmock.h>

namespace streamwright::test::line_too_long_test {

using analysis::Severity;
using catalogue::Connector;
using catalogue::Signal;
using testing::Contains;
using testing::Not;
using namespace base::literals;

std::optional<Severity> told(LineOf line, base::Length length) {
    line.length(length);
    const auto rules = rules_found(line.b.design);
    if (std::find(rules.begin(), rules.end(), "line-too-long") == rules.end()) return std::nullopt;
    return finding_of(line.b.design, "line-too-long").severity;
}

TEST(LineTooLong, habitsWarnAndAdvise) {
    // DST-002, trade practice from memory: 5 to 7 m.
    const LineOf line(Signal::video, Connector::hdmi, "HDMI 2.0", "HDMI 2.0");
    EXPECT_EQ(told(line, 5_m), std::nullopt);
    EXPECT_EQ(told(line, 5_m + 1_mm), Severity::advice);
    EXPECT_EQ(told(line, 7_m), Severity::advice);
    EXPECT_EQ(told(line, 7_m + 1_mm), Severity::warning);
    LineOf over(Signal::video, Connector::hdmi, "HDMI 2.0", "HDMI 2.0", 8_m);
    EXPECT_THAT(english_sentence(over.b.design, finding_of(over.b.design, "line-too-long")),
                testing::HasSubstr("common practice"));
}

TEST(LineTooLong, standardsAndSettingsAreErrors) {
    // DST-010: 5 m of USB 2.0.
    const LineOf usb(Signal::usb, Connector::usb_a, "USB 2.0", "USB 2.0");
    EXPECT_EQ(told(usb, 5_m), std::nullopt);
    EXPECT_EQ(told(usb, 5_m + 1_mm), Severity::error);
    LineOf hdmi(Signal::video, Connector::hdmi, "HDMI 2.0", "HDMI 2.0");
    hdmi.b.change<model::Settings>({}, [](auto& row) {
        row.cabling.lines = {{"HDMI 18 Gbit/s, passive copper", 9_m, {}}};
    });
    EXPECT_EQ(told(hdmi, 9_m), std::nullopt);
    EXPECT_EQ(told(hdmi, 9_m + 1_mm), Severity::error);
}

TEST(LineTooLong, isSilentWhereNothingIsStated) {
    EXPECT_EQ(told({Signal::video, Connector::hdmi, "", ""}, 50_m), std::nullopt);
    LineOf active(Signal::video, Connector::hdmi, "HDMI 2.0", "HDMI 2.0");
    active.type([](auto& type) { type.most_length = 20_m; });
    EXPECT_EQ(told(active, 20_m), std::nullopt);
}

}  // namespace streamwright::test::line_too_long_test
