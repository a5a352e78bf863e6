// Exact rates: arithmetic by hand.
#include "core/standards/hertz.h"

#include <gtest/gtest.h>

#include <limits>

namespace streamwright::test::hertz {

using namespace standards;

TEST(Hertz, RatiosAreReducedAndOrdered) {
    EXPECT_EQ(Hertz::ratio(120'000, 2002), Hertz::ratio(60'000, 1001));
    EXPECT_LT(Hertz::ratio(60'000, 1001), Hertz::whole(60));
    EXPECT_GT(Hertz::ratio(60'000, 1001), Hertz::ratio(5994, 100)) << "59.94006 is over 59.94";
    EXPECT_EQ(Hertz::ratio(60'000, 1001).times(1001, 1000), Hertz::whole(60));
    EXPECT_TRUE(Hertz{}.is_zero());
    EXPECT_EQ(Hertz::ratio(0, 7), Hertz{});
}

TEST(Hertz, BitsAreExactAndRoundedUpOnce) {
    // 60000/1001 x 1 = 59.94006 bits a second; a thousand times as many are no thousand times the rounded.
    EXPECT_EQ(Hertz::ratio(60'000, 1001).bits(1).ceil().count(), 60);
    EXPECT_EQ(Hertz::ratio(60'000, 1001).bits(1001).ceil().count(), 60'000);
    EXPECT_EQ((Hertz::ratio(60'000, 1001).bits(1) * 1000).ceil().count(), 59'941);
}

TEST(Hertz, WhatDoesNotFitSaturates) {
    constexpr auto most = std::numeric_limits<std::int64_t>::max();
    EXPECT_EQ(Hertz::whole(most).times(most), Hertz::whole(most));
    EXPECT_EQ(Hertz::whole(most).times(most, most), Hertz::whole(most));
}

TEST(Hertz, PeriodsAreRoundedToTheNanosecond) {
    EXPECT_EQ(Hertz::whole(60).period().count(), 16'666'667);
    EXPECT_EQ(Hertz::whole(30).period().count(), 33'333'333);
    EXPECT_EQ(Hertz::whole(1).period().count(), 1'000'000'000);
}

TEST(Hertz, PrintsAsPeopleReadIt) {
    EXPECT_EQ(print(Hertz::ratio(60'000, 1001)), "59.94 Hz");
    EXPECT_EQ(print(Hertz::ratio(24'000, 1001)), "23.976 Hz");
    EXPECT_EQ(print(Hertz::whole(48'000)), "48 kHz");
    EXPECT_EQ(print(Hertz::whole(148'500'000)), "148.5 MHz");
    EXPECT_EQ(print(Hertz::whole(148'500'000).times(1000, 1001)), "148.352 MHz");
    EXPECT_EQ(plain_number(Hertz::whole(60)), "60");
}

}  // namespace streamwright::test::hertz
