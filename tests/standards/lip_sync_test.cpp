// Windows of sound against picture, and sound in air, against tests/reference (rows LAT-001 to LAT-017, LAT-027,
// examples F4 and F6).
#include "core/standards/lip_sync.h"

#include "core/standards/video_timing.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::lip_sync {

using namespace standards;
using namespace base::literals;

TEST(LipSync, WindowsAreAsPublished) {
    const std::pair<const char*, int> windows[] = {{"BT.1359 detectability", 1},
                                                   {"BT.1359 acceptability", 3},
                                                   {"EBU R37 final output", 5},
                                                   {"ATSC IS-191", 7},
                                                   {"EBU R37 each stage", 9}};
    ASSERT_EQ(lip_sync_windows().size(), std::size(windows));
    const auto id = [](int number) { return (number < 10 ? "LAT-00" : "LAT-0") + std::to_string(number); };
    for (const auto& [name, first] : windows) {
        const auto* window = lip_sync_window(name);
        ASSERT_NE(window, nullptr) << name;
        EXPECT_NE(reference_row(id(first)).quantity.find("sound early"), std::string::npos);
        EXPECT_NE(reference_row(id(first + 1)).quantity.find("sound late"), std::string::npos);
        EXPECT_EQ(window->early.count(), row_number(id(first), 6)) << name;
        EXPECT_EQ(window->late.count(), row_number(id(first + 1), 6)) << name;
        EXPECT_EQ(window->early_source.standing == Standing::read, was_read(id(first))) << name;
        EXPECT_EQ(window->late_source.standing == Standing::read, was_read(id(first + 1))) << name;
    }
    EXPECT_EQ(lip_sync_window("none"), nullptr);
}

TEST(LipSync, AnOffsetIsJudgedByTheWindowThatIsNamed) {
    EXPECT_EQ(signal_example("F4").expected, "ok / limit / fail");
    EXPECT_EQ(standards::lip_sync(-60_ms, *lip_sync_window("BT.1359 detectability")), LipSync::inside);
    EXPECT_EQ(standards::lip_sync(-60_ms, *lip_sync_window("EBU R37 final output")), LipSync::at_limit);
    EXPECT_EQ(standards::lip_sync(-60_ms, *lip_sync_window("ATSC IS-191")), LipSync::late);
    EXPECT_EQ(standards::lip_sync(-60_ms - 1_ns, *lip_sync_window("EBU R37 final output")), LipSync::late);
    EXPECT_EQ(standards::lip_sync(16_ms, *lip_sync_window("ATSC IS-191")), LipSync::early);
    EXPECT_EQ(standards::lip_sync(15_ms, *lip_sync_window("ATSC IS-191")), LipSync::at_limit);
    EXPECT_EQ(standards::lip_sync(0_ns, *lip_sync_window("EBU R37 each stage")), LipSync::inside);
}

TEST(LipSync, FrameTimesAreAsPublished) {
    for (int i = 11; i <= 17; ++i) {
        const auto& row = reference_row("LAT-0" + std::to_string(i));
        auto rate = row.condition.substr(0, row.condition.find(' '));
        const auto format = parse_video_format("1080p" + rate).value();
        EXPECT_EQ(format.frame_rate.period().count(), row_number(row.id, 6)) << row.id << ": ms with six decimals";
    }
    // 2200 of 148.5 MHz (VID-017, VID-018), rounded to a nanosecond.
    EXPECT_EQ(line_time(parse_video_format("1080p60").value())->count(), 14'815);
    EXPECT_FALSE(line_time(parse_video_format("1366x768i50").value()));
}

TEST(LipSync, SoundInAirIsAsPublished) {
    EXPECT_EQ(sound_metres_a_second, number_after(reference_row("LAT-027").condition, "C, ", 0));
    EXPECT_EQ(sound_delay(1_m).count(), row_number("LAT-027", 6));
    EXPECT_EQ(sound_delay(15_m).count(), signal_number("F6", 6));
}

}  // namespace streamwright::test::lip_sync
