// Frame rates as people write them; what is exact is from SMPTE ST 2110-20 (exactframerate).
#include "core/standards/frame_rate_text.h"

#include <gtest/gtest.h>

namespace streamwright::test::frame_rate_text {

using namespace standards;

std::optional<Hertz> whole_text(std::string_view text) {
    const auto rate = take_frame_rate(text);
    return text.empty() ? rate : std::nullopt;
}

TEST(FrameRateText, KinOfTwentyFourThirtyAndSixtyAreExact) {
    EXPECT_EQ(whole_text("59.94"), Hertz::ratio(60'000, 1001));
    EXPECT_EQ(whole_text("59.9401"), Hertz::ratio(60'000, 1001));
    EXPECT_EQ(whole_text("23.98"), Hertz::ratio(24'000, 1001));
    EXPECT_EQ(whole_text("47.95"), Hertz::ratio(48'000, 1001));
    EXPECT_EQ(whole_text("239.76"), Hertz::ratio(240'000, 1001));
    EXPECT_EQ(whole_text("59.9"), Hertz::ratio(599, 10)) << "one place is too few to mean it";
    EXPECT_EQ(whole_text("59.95"), Hertz::ratio(1199, 20));
    EXPECT_EQ(whole_text("60"), Hertz::whole(60));
    EXPECT_EQ(whole_text("30000/1001"), Hertz::ratio(30'000, 1001));
}

TEST(FrameRateText, WhatIsNoRateIsNotTaken) {
    for (const char* odd : {"", ".", "x", "-1", "1/0", "1/", "60/1234567", "1.2.3", "1234567890123"})
        EXPECT_FALSE(whole_text(odd)) << odd;
    std::string_view text = "60 RGB";
    EXPECT_EQ(take_frame_rate(text), Hertz::whole(60));
    EXPECT_EQ(text, " RGB");
}

TEST(FrameRateText, WhatIsWrittenReadsBack) {
    for (const std::int64_t under : {1, 2, 3, 7, 10, 50, 100, 1000, 1001, 4321})
        for (std::int64_t over = 1; over <= 300'000; over = over * 3 + 1) {
            const auto rate = Hertz::ratio(over, under);
            EXPECT_EQ(whole_text(standards::frame_rate_text(rate)), rate) << standards::frame_rate_text(rate);
        }
}

}  // namespace streamwright::test::frame_rate_text
