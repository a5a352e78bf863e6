// The nearest word of a list. Distances are the textbook examples of Levenshtein's measure.
#include "core/base/nearest.h"

#include <gtest/gtest.h>

#include <array>
#include <string>

namespace streamwright::base {

namespace nearest_test {

TEST(Nearest, CountsLettersAsTheTextbookDoes) {
    EXPECT_EQ(letters_between("kitten", "sitting"), 3U);
    EXPECT_EQ(letters_between("saturday", "sunday"), 3U);
    EXPECT_EQ(letters_between("flaw", "lawn"), 2U);
    EXPECT_EQ(letters_between("", "abc"), 3U);
    EXPECT_EQ(letters_between("abc", ""), 3U);
    EXPECT_EQ(letters_between("same", "same"), 0U);
}

TEST(Nearest, FindsWhatWasMeantAndNothingFarOff) {
    constexpr std::array<std::string_view, 3> list{"copper-too-long", "fibre-too-long", "no-querier"};
    EXPECT_EQ(nearest("coper-to-long", list), "copper-too-long");
    EXPECT_EQ(nearest("noquerier", list), "no-querier");
    EXPECT_EQ(nearest("fiber-too-long", list), "fibre-too-long");
    EXPECT_EQ(nearest("xyz", list), std::nullopt);
    EXPECT_EQ(nearest("", list), std::nullopt);
    EXPECT_EQ(nearest(std::string(100000, 'a'), list), std::nullopt);
    EXPECT_EQ(nearest("x", {}), std::nullopt);
}

}  // namespace nearest_test

}  // namespace streamwright::base
