// Text widths against sums that fontTools 4.38 read from the bundled font files (2000 units to the em).
#include "core/layout/text_width.h"

#include <gtest/gtest.h>

namespace streamwright::layout {
namespace {

using base::Length;
using namespace base::literals;

constexpr Length em = 2_mm;  // one font unit is one micrometre

struct Expected {
    const char* text;
    std::int64_t units;  // fontTools: sum of hmtx advances over getBestCmap
};
constexpr Expected read_from_font[] = {
    {"ENC-201", 8700}, {"S-21 865 Mb/s", 14900}, {"Fußgänger Ærø", 14600}, {"0123456789", 13000}, {"…", 1500}, {"", 0}};

TEST(TextWidth, EqualsTheSumOfTheFontsAdvances) {
    for (const auto& [text, units] : read_from_font) {
        EXPECT_EQ(text_width(text, em, Weight::normal).count(), units) << text;
        EXPECT_EQ(text_width(text, em, Weight::bold).count(), units) << text;  // the faces share their widths
    }
}

TEST(TextWidth, GrowsWithTheEm) {
    EXPECT_EQ(text_width("0", 3_mm, Weight::normal), 1950_um);  // digits are 0.65 em
}

TEST(TextWidth, BrokenOctetsCountAsMissingGlyphs) {
    const auto missing = text_width("\U0010FFFD", em, Weight::normal);
    EXPECT_GT(missing, Length{});
    EXPECT_EQ(text_width("\xFF", em, Weight::normal), missing);
    EXPECT_EQ(text_width("\xE2\x82", em, Weight::normal), 2 * missing);  // cut short: each octet alone
}

TEST(TextWidth, ScriptsThatNeedShapingAreAskedFor) {
    int asked = 0;
    const ShapedWidth shaped = [&](std::string_view, Length, Weight) {
        ++asked;
        return 7_mm;
    };
    EXPECT_EQ(text_width("שלום", em, Weight::normal, shaped), 7_mm);
    EXPECT_NE(text_width("Quay", em, Weight::normal, shaped), 7_mm);
    EXPECT_EQ(asked, 1);
}

TEST(Elided, KeepsWhatFits) {
    EXPECT_EQ(elided("ENC-201", 8700_um, em, Weight::bold), "ENC-201");
    EXPECT_EQ(elided("ENC-201", 8699_um, em, Weight::bold), "ENC-2…");
}

TEST(Elided, NeverCutsACharacter) {
    for (int room = 0; room < 16000; room += 50) {
        const auto cut = elided("Fußgänger Ærø", Length::from_count(room), em, Weight::normal);
        EXPECT_EQ(cut.find("\xC3\xE2"), std::string::npos);
        if (room >= 1500) {
            EXPECT_LE(text_width(cut, em, Weight::normal).count(), room);
        }
    }
}

}  // namespace
}  // namespace streamwright::layout
