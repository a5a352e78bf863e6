// Words that several documents share. All expected values are made by hand.
#include "core/deliver/documents/words.h"

#include <gtest/gtest.h>

namespace streamwright::test {

namespace words_test {

using deliver::listed_in_runs;

TEST(TagRuns, ThreeThatFollowOneAnotherAreOneItem) {
    EXPECT_EQ(listed_in_runs({"N007", "N008", "N009", "N010"}), "N007 to N010");
    EXPECT_EQ(listed_in_runs({"N001", "N002", "N003"}), "N001 to N003");
    EXPECT_EQ(listed_in_runs({"N001", "N002"}), "N001, N002") << "two stand as they are";
    EXPECT_EQ(listed_in_runs({"N001"}), "N001");
    EXPECT_EQ(listed_in_runs({}), "");
}

TEST(TagRuns, AGapEndsARun) {
    EXPECT_EQ(listed_in_runs({"N003", "N007", "N008", "N009", "N011", "N012", "N014", "N015", "N016"}),
              "N003, N007 to N009, N011, N012, N014 to N016");
}

TEST(TagRuns, OtherLettersEndARun) {
    EXPECT_EQ(listed_in_runs({"DEC-001", "DEC-002", "ENC-003", "ENC-004", "ENC-005"}),
              "DEC-001, DEC-002, ENC-003 to ENC-005");
    EXPECT_EQ(listed_in_runs({"DEC-001", "ENC-002", "EP-003"}), "DEC-001, ENC-002, EP-003");
    EXPECT_EQ(listed_in_runs({"SW-A1-1", "SW-A1-2", "SW-A1-3", "SW-A2-4"}), "SW-A1-1 to SW-A1-3, SW-A2-4");
}

TEST(TagRuns, NumbersKeepTheirZeros) {
    EXPECT_EQ(listed_in_runs({"N098", "N099", "N100"}), "N098 to N100");
    EXPECT_EQ(listed_in_runs({"N8", "N9", "N10"}), "N8 to N10") << "without zeros a number grows";
    EXPECT_EQ(listed_in_runs({"N998", "N999", "N1000"}), "N998 to N1000");
    EXPECT_EQ(listed_in_runs({"N008", "N009", "N10"}), "N008, N009, N10") << "a number of another width";
    EXPECT_EQ(listed_in_runs({"N8", "N09", "N010"}), "N8, N09, N010");
}

TEST(TagRuns, OnlyNumbersAtTheEndCount) {
    EXPECT_EQ(listed_in_runs({"N1a", "N2a", "N3a"}), "N1a, N2a, N3a");
    EXPECT_EQ(listed_in_runs({"Rack", "Rack", "Rack"}), "Rack, Rack, Rack");
    EXPECT_EQ(listed_in_runs({"7", "8", "9"}), "7 to 9") << "a tag may be a bare number";
    EXPECT_EQ(listed_in_runs({"N99999999999999999999", "N100000000000000000000", "N100000000000000000001"}),
              "N99999999999999999999 to N100000000000000000001")
        << "longer than any integer type";
}

}  // namespace words_test

}  // namespace streamwright::test
