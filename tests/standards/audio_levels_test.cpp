// Rates and levels of sound against tests/reference (rows AUD-001 to AUD-023, examples G1 to G6).
#include "core/standards/audio_levels.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <cmath>

namespace streamwright::test::audio_levels {

using namespace standards;
using namespace standards::literals;

TEST(AudioLevels, PcmRatesAreAsPublished) {
    struct Case {
        const char* id;
        std::int64_t sampling_hz;
        int bits, channels;
    };
    const Case cases[] = {{"AUD-001", 44'100, 16, 2}, {"AUD-002", 48'000, 16, 2},  {"AUD-003", 48'000, 24, 2},
                          {"AUD-004", 48'000, 24, 8}, {"AUD-005", 48'000, 24, 64}, {"AUD-006", 96'000, 24, 2},
                          {"AUD-007", 96'000, 24, 8}, {"AUD-008", 192'000, 24, 2}};
    for (const auto& each : cases)
        EXPECT_EQ(pcm_rate(each.sampling_hz, each.bits, each.channels).count(), row_number(each.id, 6)) << each.id;
    EXPECT_EQ(pcm_rate(48'000, 24, 8).count(), signal_number("G1", 6));
}

TEST(AudioLevels, VoltsOfLevelsAreAsPublished) {
    // The rows are computed from a reference that is rounded to a microvolt, so a millionth more or less.
    const auto near = [](Voltage have, std::int64_t published, const char* id) {
        const auto expected = static_cast<double>(published);
        EXPECT_NEAR(static_cast<double>(have.count()), expected, 1 + expected / 1e6) << id;
    };
    near(voltage_of_dbu(4_dB), row_number("AUD-015", 6), "AUD-015");
    near(voltage_of_dbu(0_dB), row_number("AUD-016", 6), "AUD-016");
    near(voltage_of_dbv(-10_dB), row_number("AUD-017", 6), "AUD-017");
    near(voltage_of_dbv(0_dB), row_number("AUD-018", 6), "AUD-018");
    near(voltage_of_dbu(24_dB), row_number("AUD-019", 6), "AUD-019");
    near(voltage_of_dbu(18_dB), row_number("AUD-020", 6), "AUD-020");
    near(voltage_of_dbu(professional_line_dbu), signal_number("G2", 6), "G2");
    near(voltage_of_dbv(consumer_line_dbv), signal_number("G3", 6), "G3");
}

TEST(AudioLevels, ProfessionalAndConsumerLinesDifferAsPublished) {
    const auto apart = static_cast<double>(
        level_between(voltage_of_dbu(professional_line_dbu), voltage_of_dbv(consumer_line_dbv)).count());
    EXPECT_NEAR(apart, static_cast<double>(row_number("AUD-021", 6)) / 1000, 0.501);
    EXPECT_NEAR(apart, static_cast<double>(signal_number("G4", 6)) / 1000, 1);
}

TEST(AudioLevels, FullScaleLiesWhereTheAlignmentPutsIt) {
    const std::pair<int, const char*> rows[] = {{0, "AUD-022"}, {1, "AUD-023"}};
    for (const auto& [at, id] : rows) {
        const auto& row = reference_row(id);
        const auto& alignment = alignment_levels()[static_cast<std::size_t>(at)];
        EXPECT_TRUE(row.condition.starts_with(alignment.name)) << id;
        EXPECT_EQ(alignment.dbfs.count(), number_after(row.condition, ": ", 3)) << id;
        EXPECT_EQ(alignment.dbu.count(), row_number(id, 3)) << id;
        EXPECT_EQ(full_scale_dbu(alignment).count(), number_after(row.note, "0 dBFS = +", 3)) << id;
        EXPECT_EQ(alignment.source.standing == Standing::read, was_read(id)) << id;
    }
}

TEST(AudioLevels, TheDownmixNeedsThePublishedHeadroom) {
    EXPECT_EQ(downmix_share, row_number("AUD-013", 4));
    EXPECT_NEAR(static_cast<double>(downmix_worst_gain().count()), static_cast<double>(row_number("AUD-014", 6)) / 1000,
                0.501);
    EXPECT_NEAR(static_cast<double>(downmix_worst_gain().count()), static_cast<double>(signal_number("G5", 6)) / 1000,
                1);
}

TEST(AudioLevels, CompressedSoundOnTwoChannelsIsAsPublished) {
    EXPECT_EQ(ac3_period_octets, row_number("AUD-009", 0));
    EXPECT_EQ(ac3_period_octets, signal_number("G6", 0));
    EXPECT_EQ(reference_row("AUD-010").value, "F872h, 4E1Fh");
    EXPECT_EQ(burst_preamble_a, 0xF872);
    EXPECT_EQ(burst_preamble_b, 0x4E1F);
    EXPECT_EQ(reference_row("AUD-011").value, "yes");
    EXPECT_EQ(burst_needs_decoder_source.standing == Standing::read, was_read("AUD-011"));
}

TEST(AudioLevels, LevelsAndVoltsUndoEachOther) {
    for (int level = -60'000; level <= 30'000; level += 777) {
        const auto dbu = Level::from_count(level);
        const auto back = level_between(voltage_of_dbu(dbu), voltage_of_dbu(0_dB));
        EXPECT_NEAR(static_cast<double>(back.count()), level, 6) << "a microvolt is 6 mdB at -60 dBu, less above";
    }
}

}  // namespace streamwright::test::audio_levels
