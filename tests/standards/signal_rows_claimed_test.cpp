// Every published row and worked example of signals is held against the code by some test, or listed here with the
// reason why there is nothing to compute or to look up.
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace streamwright::test::signal_rows_claimed {

struct Prose {
    const char* id;
    const char* why;
};
constexpr Prose prose[] = {
    {"COD-029", "words of a session description: media type and clock"},
    {"COD-032", "words of a session description and of a register"},
    {"COD-033", "a feature of a payload format that no type of the catalogue has"},
    {"COD-086", "words of a session description"},
    {"COD-087", "a session description must state the rate; its value is COD-120"},
    {"DSP-011", "no source was found for it"},
    {"DST-043", "a property of a type: light compression is stated there"},
};

TEST(SignalRows, WhatIsProseStandsInTheFile) {
    for (const auto& each : prose) EXPECT_FALSE(reference_row(each.id).quantity.empty()) << each.id << each.why;
}

/// Looks when all tests have run; says nothing of a run that was filtered.
class AllClaimed : public ::testing::Environment {
    void TearDown() override {
        const auto& unit = *::testing::UnitTest::GetInstance();
        if (unit.test_to_run_count() != unit.total_test_count() || unit.failed_test_count() > 0) return;
        for (const auto& id : signal_rows_not_claimed())
            ADD_FAILURE() << id << " of tests/reference/signal-*.csv is held against no code";
    }
};
const auto* const all_claimed = ::testing::AddGlobalTestEnvironment(new AllClaimed);

}  // namespace streamwright::test::signal_rows_claimed
