// Lengths of the trade against tests/reference (rows DST-001 to DST-009, DST-025 to DST-043).
#include "core/standards/trade_lengths.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::trade_lengths {

using namespace standards;

/// "5 to 7" or "300", in metres.
std::string metres(const TradeLength& length) {
    const auto from = std::to_string(length.from.count() / 1'000'000);
    return length.from == length.to ? from : from + " to " + std::to_string(length.to.count() / 1'000'000);
}

TEST(TradeLengths, EachIsThatOfItsRow) {
    const std::pair<const char*, const char*> rows[] = {
        {"DST-002", "HDMI 18 Gbit/s, passive copper"},
        {"DST-003", "HDMI 10.2 Gbit/s, passive copper"},
        {"DST-004", "HDMI 4.95 Gbit/s, passive copper"},
        {"DST-005", "HDMI 48 Gbit/s, passive copper"},
        {"DST-006", "HDMI, active optical"},
        {"DST-007", "DisplayPort HBR2 or HBR3, passive copper"},
        {"DST-008", "DisplayPort UHBR, passive copper"},
        {"DST-009", "DisplayPort, active optical"},
        {"DST-025", "infrared emitter"},
        {"DST-026", "contact closure"},
        {"DST-028", "analogue sound, balanced line"},
        {"DST-029", "analogue sound, unbalanced line"},
        {"DST-037", "3G-SDI, whole path"},
        {"DST-038", "pictures over twisted pairs"},
        {"DST-039", "pictures over twisted pairs, class A, 1080p60"},
        {"DST-040", "pictures over twisted pairs, class A, 4K"},
        {"DST-041", "pictures over twisted pairs, class B, 1080p60"},
        {"DST-042", "pictures over twisted pairs, class B, 4K30"},
    };
    for (const auto& [id, name] : rows) {
        const auto* length = trade_length(name);
        ASSERT_NE(length, nullptr) << name;
        EXPECT_EQ(metres(*length), reference_row(id).value) << id << " " << name;
        EXPECT_EQ(length->source.standing == Standing::read, was_read(id)) << id;
    }
    EXPECT_EQ(reference_row("DST-030").value, "a few hundred") << "planned with 100 m, from memory";
    EXPECT_EQ(metres(*trade_length("AES3, 110 ohm")), "100");
    EXPECT_EQ(standards::trade_lengths().size(), std::size(rows) + 1);
    EXPECT_EQ(trade_length("none"), nullptr);
}

TEST(TradeLengths, NoStandardGivesMetresForHdmi) {
    EXPECT_EQ(reference_row("DST-001").value, "none");
    for (const auto& length : standards::trade_lengths())
        if (length.name.starts_with("HDMI")) {
            EXPECT_EQ(length.source.body, "trade practice") << length.name;
        }
}

}  // namespace streamwright::test::trade_lengths
