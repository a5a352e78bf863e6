// Lines outside structured cabling against tests/reference (rows DST-019 to DST-048, examples C3 to C9).
#include "core/standards/line_lengths.h"

#include "core/standards/copper_reach.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::line_lengths {

using namespace standards;
using namespace standards::literals;
using namespace base::literals;

/// Micrometres of a figure in metres.
void expect_length(base::Length have, std::int64_t published, const char* id) {
    EXPECT_NEAR(static_cast<double>(have.count()), static_cast<double>(published), 1) << id;
}

TEST(LineLengths, Rs232IsAsPublished) {
    EXPECT_EQ(rs232_load.count(), row_number("DST-019", 0));
    expect_length(rs232_length(100_pF), row_number("DST-020", 6), "DST-020");
    expect_length(rs232_length(55_pF), row_number("DST-022", 6), "DST-022");
    expect_length(rs232_length(100_pF), signal_number("C3", 6), "C3");
    expect_length(rs232_length(55_pF), signal_number("C4", 6), "C4");
    expect_length(rs232_usual_length, row_number("DST-021", 6), "DST-021");
}

TEST(LineLengths, BalancedSerialIsAsPublished) {
    expect_length(balanced_serial_length, row_number("DST-023", 6), "DST-023");
    expect_length(balanced_serial_length, row_number("DST-024", 6), "DST-024");
    EXPECT_EQ(rs485_source.standing == Standing::read, was_read("DST-023"));
    EXPECT_EQ(rs422_source.standing == Standing::read, was_read("DST-024"));
    EXPECT_EQ(balanced_serial_length_at(100'000_bps), 1200_m);
    EXPECT_EQ(balanced_serial_length_at(9'600_bps), 1200_m);
    EXPECT_EQ(balanced_serial_length_at(1_Mbps), 100_m) << "10^8 bit m/s, from memory";
    EXPECT_EQ(rs485_faster_source.standing, Standing::memory);
}

TEST(LineLengths, AnalogueLinesLoseTrebleAsPublished) {
    const auto have = half_power_frequency(150_ohm, 100_pF, 100_m);
    EXPECT_NEAR(static_cast<double>(have.floor()), static_cast<double>(row_number("DST-027", 6)) / 1000, 1);
    EXPECT_NEAR(static_cast<double>(have.floor()), static_cast<double>(signal_number("C9", 3)), 10);
}

TEST(LineLengths, SdiReceiversAreAsPublished) {
    const std::pair<const char*, const char*> rows[] = {{"DST-032", "SD-SDI"},
                                                        {"DST-031", "HD-SDI"},
                                                        {"DST-033", "3G-SDI"},
                                                        {"DST-035", "6G-SDI"},
                                                        {"DST-034", "12G-SDI"}};
    for (const auto& [id, name] : rows) {
        const auto& row = reference_row(id);
        const auto loss = sdi_receiver_loss(*picture_link(name)).value();
        const auto decibels = [](base::Loss of) { return std::to_string(of.count() / 1000); };
        EXPECT_EQ(
            loss.from.count() == 0 ? "up to " + decibels(loss.to) : decibels(loss.from) + " to " + decibels(loss.to),
            row.value)
            << id;
        const int decimals_of_unit = row.condition.find("GHz") != std::string::npos ? 9 : 6;
        EXPECT_EQ(loss.half_clock, Hertz::whole(number_after(row.condition, "(", decimals_of_unit))) << id;
        EXPECT_EQ(loss.source.standing == Standing::read, was_read(id)) << id;
    }
    EXPECT_FALSE(sdi_receiver_loss(*picture_link("HDMI 2.0")));
    EXPECT_EQ(sdi_trade_loss, 20'000_mdB) << "what the trade sizes cable by, from memory";
}

TEST(LineLengths, SdiLengthsAreAsPublished) {
    EXPECT_EQ(reference_row("DST-036").value, "100*B/a");
    expect_length(sdi_length(20'000_mdB, 25'000_mdB), signal_number("C5", 6), "C5");
    expect_length(sdi_length(40'000_mdB, 55'000_mdB), signal_number("C6", 6), "C6");
    // With the root of the frequency (the note of that row): four times the frequency, twice the loss.
    EXPECT_EQ(loss_at(Hertz::whole(2'970'000'000), 10'000_mdB, Hertz::ratio(1'485'000'000, 2)), 20'000_mdB);
    EXPECT_EQ(loss_at(Hertz::whole(100), 7_mdB, Hertz::whole(100)), 7_mdB);
}

TEST(LineLengths, LoudspeakerLinesAreAsPublished) {
    const auto loop = loop_resistance(100_m, CrossSection::from_count(1500));
    const std::pair<const char*, Voltage> lines[] = {{"DST-045", line_70_v}, {"DST-046", line_100_v}};
    for (const auto& [id, volts] : lines) {
        const auto& row = reference_row(id);
        const auto load = load_on_line(volts, 100_W);
        EXPECT_NEAR(static_cast<double>(load.count()), static_cast<double>(number_after(row.note, "Z = ", 3)), 0.501);
        EXPECT_NEAR(static_cast<double>(loop.count()), static_cast<double>(number_after(row.note, "loop ", 4)) / 10, 1);
        // The rows give gain, below nothing; a loss is its opposite. Thousandths, and the loop is rounded up.
        EXPECT_NEAR(static_cast<double>(line_loss(load, loop).count()), static_cast<double>(-row_number(id, 6)) / 1000,
                    0.6)
            << id;
    }
    EXPECT_NEAR(static_cast<double>(line_loss(load_on_line(line_100_v, 100_W), loop).count()),
                static_cast<double>(-signal_number("C8", 6)) / 1000, 1);
    EXPECT_EQ(line_loss_target.count(), row_number("DST-047", 3));
    EXPECT_EQ(line_loss_target_source.standing == Standing::read, was_read("DST-047"));
    EXPECT_EQ(copper_resistivity, row_number("DST-048", 4));
    EXPECT_EQ(copper_resistivity_source.standing == Standing::read, was_read("DST-048"));
}

TEST(LineLengths, TheLongestLineLosesWhatItMay) {
    for (const std::int64_t watts : {10, 100, 500})
        for (const std::int64_t area : {750, 1500, 4000}) {
            const auto load = load_on_line(line_100_v, watts * 1_W);
            const auto conductor = CrossSection::from_count(area);
            const auto length = longest_line(load, conductor, line_loss_target);
            EXPECT_NEAR(static_cast<double>(line_loss(load, loop_resistance(length, conductor)).count()), 500, 2);
        }
}

TEST(LineLengths, TheChannelOfTwistedPairsIsWhereItIs) {
    expect_length(channel_limit, row_number("DST-044", 6), "DST-044: core/standards/copper_reach.h");
}

}  // namespace streamwright::test::line_lengths
