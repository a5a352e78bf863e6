#include "core/analysis/facts/format_space.h"

#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::format_space_test {

using analysis::FormatSpace;

int number_of(const FormatSpace& space, const std::string& text) { return space.number(picture_format(text)).value(); }

TEST(FormatSpace, numbersRiseWithWhatIsWantedFirst) {
    const FormatSpace space({picture_format("1080p60"), picture_format("2160p30"), picture_format("1080i30"),
                             picture_format("2160p60"), picture_format("1080p60")});
    EXPECT_EQ(space.rasters(), 4);
    const auto rises = [&](const std::vector<std::string>& texts) {
        for (std::size_t i = 1; i < texts.size(); ++i)
            EXPECT_LT(number_of(space, texts[i - 1]), number_of(space, texts[i])) << texts[i];
    };
    rises({"1080i30", "1080p60", "2160p30", "2160p60"});
    // HDR of 8 bits shows bands (ITU-R BT.2100: 10 or 12 bit), so SDR is better, and HDR of 10 bits better still.
    rises({"2160p60 RGB 8-bit PQ", "2160p60 4:2:0 8-bit", "2160p60 4:2:2 8-bit", "2160p60 4:4:4 8-bit",
           "2160p60 RGB 8-bit", "2160p60 RGB 12-bit", "2160p60 4:2:0 10-bit HLG", "2160p60 4:2:0 10-bit PQ",
           "2160p60 4:2:2 12-bit PQ"});
}

TEST(FormatSpace, everyNumberIsAFormatAndBack) {
    const FormatSpace space({picture_format("1080p59.94"), picture_format("1920x1200@60")});
    for (int n = 0; n < space.size(); ++n) EXPECT_EQ(space.number(space.format(n)), n);
    EXPECT_FALSE(space.number(picture_format("720p60")));
}

TEST(FormatSpace, nothingIsInventedOnTheWay) {
    const FormatSpace space({picture_format("1080p60")});
    const auto made = [&](const std::string& from, const std::string& to) {
        return ((analysis::made_of(FormatSpace::colour_of(number_of(space, from))) >>
                 FormatSpace::colour_of(number_of(space, to))) &
                1U) != 0;
    };
    EXPECT_TRUE(made("1080p60 4:4:4 10-bit PQ", "1080p60 4:2:0 8-bit"));
    EXPECT_TRUE(made("1080p60 4:4:4", "1080p60 RGB"));
    EXPECT_FALSE(made("1080p60 4:2:0", "1080p60 4:2:2"));
    EXPECT_FALSE(made("1080p60 RGB 8-bit", "1080p60 RGB 10-bit"));
    EXPECT_FALSE(made("1080p60 RGB 10-bit HLG", "1080p60 RGB 10-bit PQ"));
    EXPECT_FALSE(made("1080p60 RGB 10-bit", "1080p60 RGB 10-bit PQ"));
}

TEST(FormatSpace, oneCodeStandsForARateAndItsThousandth) {
    EXPECT_TRUE(analysis::same_raster(picture_format("1080p60"), picture_format("1080p59.94")));
    EXPECT_FALSE(analysis::same_raster(picture_format("1080p60"), picture_format("1080p50")));
    EXPECT_FALSE(analysis::same_raster(picture_format("1080p30"), picture_format("1080i30")));
}

}  // namespace streamwright::test::format_space_test
