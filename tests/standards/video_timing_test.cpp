// Timings against tests/reference (rows VID-001 to VID-073, examples A1 to A6).
#include "core/standards/video_timing.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::video_timing {

using namespace standards;

/// "1080i50 (VIC 20), active 1920x1080" without what follows the raster and rate.
VideoFormat format_of(const ReferenceRow& row) {
    const auto written = row.condition.substr(0, row.condition.find_first_of("(,"));
    const auto format = parse_video_format(written);
    EXPECT_TRUE(format.ok()) << row.id << " " << written;
    return format.ok() ? *format : VideoFormat{};
}

std::string row_id(int number) {
    const auto digits = std::to_string(number);
    return "VID-" + std::string(3 - digits.size(), '0') + digits;
}

void expect_row(const ReferenceRow& row) {
    const auto timing = standards::video_timing(format_of(row));
    ASSERT_TRUE(timing) << row.id;
    if (row.unit == "MHz") {  // six decimals at most, so hertz
        EXPECT_EQ(timing->pixel_clock.floor(), row_number(row.id, 6)) << row.id << " " << row.condition;
    } else {
        EXPECT_EQ(std::to_string(timing->total_pixels) + "x" + std::to_string(timing->total_lines), row.value)
            << row.id << " " << row.condition;
    }
    EXPECT_EQ(timing->source.standing == Standing::read, was_read(row.id)) << row.id;
    if (row.condition.starts_with("1920x1080@60")) return;  // DMT 52h has the figures of VIC 16
    EXPECT_TRUE(row.source.find(timing->source.body) != std::string::npos) << row.id << " " << timing->source.text();
}

TEST(VideoTiming, EachRowIsAsPublished) {
    for (int i = 1; i <= 72; ++i) expect_row(reference_row(row_id(i)));
}

TEST(VideoTiming, RowsWithTheirClockAreAsPublished) {
    for (int i = 101; i <= 123; ++i) {
        const auto& row = reference_row(row_id(i));
        expect_row(row);
        EXPECT_EQ(standards::video_timing(format_of(row))->pixel_clock,
                  Hertz::whole(number_after(row.note, "clock ", 6)))
            << row.id;
    }
}

TEST(VideoTiming, CodesStandInTheCitation) {
    for (int i = 1; i <= 68; ++i) {
        const auto& row = reference_row(row_id(i));
        const auto comma = row.source.find(", ");
        const std::string_view code = std::string_view(row.source).substr(comma + 2);
        if (row.condition.starts_with("1920x1080@60")) continue;  // DMT 52h has the figures of VIC 16
        EXPECT_EQ(standards::video_timing(format_of(row))->source.clause, code) << row.id;
    }
}

TEST(VideoTiming, WorkedExamplesComeOut) {
    const auto clock = [](const char* written) {
        return standards::video_timing(*parse_video_format(written))->pixel_clock;
    };
    EXPECT_EQ(clock("1080p60"), Hertz::whole(signal_number("A1", 6)));
    EXPECT_EQ(clock("2160p60"), Hertz::whole(signal_number("A2", 6)));
    EXPECT_EQ(standards::video_timing(*parse_video_format("1080p24"))->total_pixels, signal_number("A3", 0));
    EXPECT_EQ(clock("2560x1440@60"), Hertz::whole(signal_number("A4", 6)));
    EXPECT_EQ(clock("2160p60 RB"), Hertz::whole(signal_number("A5", 6)));
    const auto a6 = reduced_blanking_timing(1920, 1200, Hertz::whole(60));
    EXPECT_EQ(print(a6.pixel_clock) + ", " + std::to_string(a6.total_pixels) + " x " + std::to_string(a6.total_lines),
              "154 MHz, 2080 x 1235");
    EXPECT_EQ(signal_example("A6").expected, "154.0 MHz, 2080 x 1235");
}

TEST(VideoTiming, TheFormulaGivesTheRowsThatVesaMadeWithIt) {
    for (const int clock_row : {52, 62, 66}) {  // 1280x800, 1920x1200, 2560x1600 with reduced blanking
        const auto format = format_of(reference_row(row_id(clock_row)));
        const auto computed = reduced_blanking_timing(format.width, format.height, format.frame_rate);
        EXPECT_EQ(computed.pixel_clock.floor(), row_number(row_id(clock_row), 6)) << clock_row;
    }
}

TEST(VideoTiming, ClockStepsAreAsPublished) {
    EXPECT_EQ(reference_row("VID-073").value, "0.25 / 0.001");
    EXPECT_EQ(cvt_clock_step_hz, 250'000);
    EXPECT_EQ(cvt_reduced_2_clock_step_hz, 1'000);
}

TEST(VideoTiming, EveryFormatThatCanBeReadHasAnAnswer) {
    EXPECT_FALSE(standards::video_timing(*parse_video_format("1366x768i50"))) << "interlaced and in no table";
    const auto most = standards::video_timing(*parse_video_format("10240x10240@600 RGB 16-bit"));
    ASSERT_TRUE(most);
    EXPECT_GT(most->pixel_clock, Hertz::whole(10240LL * 10240 * 600));
    const auto least = standards::video_timing(*parse_video_format("64x64@1"));
    ASSERT_TRUE(least);
    EXPECT_GT(least->total_lines, 64);
    EXPECT_EQ(standards::video_timing(*parse_video_format("1080p49.95"))->source.document, "CVT 1.2")
        << "25 and 50 Hz have no slow kin";
}

}  // namespace streamwright::test::video_timing
