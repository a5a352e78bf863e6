// Codec levels against tests/reference (rows COD-001 to COD-020, examples D1 to D4).
#include "core/standards/codec_levels.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace streamwright::test::codec_levels {

using namespace standards;

VideoFormat format_of(std::string_view written) { return parse_video_format(written).value(); }

const CodecLevel& level_of(std::span<const CodecLevel> levels, std::string_view name) {
    const auto found = std::find_if(levels.begin(), levels.end(), [&](const auto& each) { return each.name == name; });
    if (found == levels.end()) throw std::runtime_error("no level " + std::string(name));
    return *found;
}

TEST(CodecLevels, H264LevelsAreAsPublished) {
    for (int i = 1; i <= 10; i += 2) {
        const auto number = std::to_string(i);
        const auto& rate = reference_row((i < 10 ? "COD-00" : "COD-0") + number);
        const auto& blocks = reference_row((i + 1 < 10 ? "COD-00" : "COD-0") + std::to_string(i + 1));
        const auto& level = level_of(h264_levels(), rate.condition.substr(rate.condition.rfind(' ') + 1));
        EXPECT_EQ(rate.condition, blocks.condition);
        EXPECT_EQ(level.rate.count(), row_number(rate.id, 6)) << rate.id;
        EXPECT_EQ(level.units_per_second, row_number(blocks.id, 0)) << blocks.id;
        EXPECT_EQ(level.units_per_frame, number_after(blocks.note, "MaxFS ", 0)) << blocks.id;
        EXPECT_EQ(level.source.standing, Standing::read);
    }
    EXPECT_EQ(level_of(h264_levels(), "4.0").rate.count(), signal_number("D4", 6));
}

TEST(CodecLevels, H264PicturesNeedWhatIsPublished) {
    const std::pair<const char*, const char*> rows[] = {
        {"COD-011", "4.0"}, {"COD-012", "4.2"}, {"COD-013", "5.1"}, {"COD-014", "5.2"}};
    for (const auto& [id, level] : rows) {
        const auto& row = reference_row(id);
        EXPECT_EQ(macroblock_rate(format_of(row.condition)), row_number(id, 0)) << id;
        EXPECT_EQ(h264_level(format_of(row.condition))->name, level) << row.note;
        EXPECT_NE(row.note.find(level), std::string::npos) << row.note;
    }
    EXPECT_EQ(signal_example("D1").expected, "level " + std::string(h264_level(format_of("1080p60"))->name));
}

TEST(CodecLevels, H265LevelsAreAsPublished) {
    for (int i = 15; i <= 18; ++i) {
        const auto& row = reference_row("COD-0" + std::to_string(i));
        const auto& level = level_of(h265_levels(), row.condition.substr(11, 3));
        const auto megabits = [](base::BitRate rate) { return std::to_string(rate.count() / 1'000'000); };
        EXPECT_EQ(megabits(level.rate) + " / " + megabits(level.high_rate), row.value) << row.id;
        EXPECT_EQ(level.units_per_second, number_after(row.note, "MaxLumaSr ", 0)) << row.id;
        EXPECT_EQ(level.units_per_frame, number_after(row.note, "MaxLumaPs ", 0)) << row.id;
        EXPECT_EQ(level.source.standing, Standing::read);
    }
}

TEST(CodecLevels, H265PicturesNeedWhatIsPublished) {
    for (const auto& [id, level] : {std::pair("COD-019", "5.1"), std::pair("COD-020", "5.0")}) {
        const auto& row = reference_row(id);
        EXPECT_EQ(luma_sample_rate(format_of(row.condition)), row_number(id, 0)) << id;
        EXPECT_EQ(h265_level(format_of(row.condition))->name, level) << row.note;
    }
    EXPECT_EQ(signal_example("D3").expected, "level " + std::string(h265_level(format_of("2160p60"))->name));
}

TEST(CodecLevels, TheRateCanAskForMoreThanThePicture) {
    using namespace base::literals;
    EXPECT_EQ(h264_level(format_of("1080p30"), 25_Mbps)->name, "4.0") << "D4: 25 Mbit/s just goes";
    EXPECT_EQ(h264_level(format_of("1080p30"), 26_Mbps)->name, "4.1");
    EXPECT_EQ(h265_level(format_of("2160p60"), 41_Mbps)->name, "5.2");
    EXPECT_EQ(h265_level(format_of("2160p60"), 41_Mbps, true)->name, "5.1");
    EXPECT_EQ(h265_level(format_of("720p30"), {}, true)->name, "4.0") << "no high tier below level 4";
    EXPECT_EQ(h264_level(format_of("1080p60"), 2000_Mbps), nullptr);
}

TEST(CodecLevels, EachLevelHoldsMoreThanTheOneBefore) {
    for (const auto levels : {h264_levels(), h265_levels()})
        for (std::size_t i = 1; i < levels.size(); ++i) {
            EXPECT_GE(levels[i].units_per_second, levels[i - 1].units_per_second);
            EXPECT_GE(levels[i].units_per_frame, levels[i - 1].units_per_frame);
            EXPECT_GE(levels[i].rate, levels[i - 1].rate);
        }
}

}  // namespace streamwright::test::codec_levels
