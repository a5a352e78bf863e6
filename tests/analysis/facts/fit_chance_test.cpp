// Chances of aggregation groups against every assignment tried one by one, against published figures, and the lot
// against the count.
#include "core/analysis/facts/fit_chance.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

namespace streamwright::test::fit_chance_test {

using analysis::AlikeStreams;
using namespace base::literals;

double fits(std::vector<AlikeStreams> streams, int members, base::BitRate each) {
    const auto chance = analysis::fit_chance(streams, members, each);
    EXPECT_EQ(chance.draws, 0);
    EXPECT_EQ(chance.least, chance.fits);
    return chance.fits.value;
}

// 40 streams of 1 Gb/s on 4 x 10 Gb/s: only ten on each fit, 40! / (10!^4 4^40) = 0.003 892 183 of all ways
// (multinomial coefficient).
TEST(FitChance, fortyOnFourTimesTen) { EXPECT_NEAR(fits({{1_Gbps, 40}}, 4, 10_Gbps), 0.00389218328768, 1e-12); }

// Worked example G-3: two flows meet on one of four members in a quarter of all cases.
TEST(FitChance, twoStreamsMeetInAQuarterOfAllCases) {
    EXPECT_DOUBLE_EQ(fits({{1_Gbps, 2}}, 4, 1_Gbps), 0.75);
    EXPECT_DOUBLE_EQ(fits({{1_Gbps, 1}, {900_Mbps, 1}}, 4, 1_Gbps), 0.75);
}

// Worked example G-1: one flow of 12 Gb/s on 4 x 10 Gb/s stays on one member.
TEST(FitChance, whatIsPlainIsExact) {
    EXPECT_EQ(fits({{base::BitRate::from_count(12'000'000'000), 1}}, 4, 10_Gbps), 0);
    EXPECT_EQ(fits({{1_Gbps, 10}}, 4, 10_Gbps), 1);
    EXPECT_EQ(fits({}, 4, 10_Gbps), 1);
    EXPECT_EQ(fits({{1_Gbps, 11}}, 1, 10_Gbps), 0);
}

/// Tries every assignment.
double enumerated(const std::vector<AlikeStreams>& streams, int members, std::int64_t each) {
    std::vector<std::int64_t> rates;
    for (const auto& alike : streams)
        for (int i = 0; i < alike.count; ++i) rates.push_back(alike.wire.count());
    std::vector<int> on(rates.size(), 0);
    std::int64_t ways = 0, good = 0;
    for (bool more = true; more;) {
        std::vector<std::int64_t> loads(static_cast<std::size_t>(members), 0);
        bool fit = true;
        for (std::size_t i = 0; i < rates.size(); ++i)
            fit = (loads[static_cast<std::size_t>(on[i])] += rates[i]) <= each && fit;
        ++ways;
        good += fit ? 1 : 0;
        more = false;
        for (auto& member : on) {
            if (++member < members) {
                more = true;
                break;
            }
            member = 0;
        }
    }
    return static_cast<double>(good) / static_cast<double>(ways);
}

TEST(FitChance, equalsEveryAssignmentTried) {
    std::mt19937_64 random(4);
    int between = 0;
    for (int round = 0; round < 200; ++round) {
        const int members = 2 + static_cast<int>(random() % 3);
        std::vector<AlikeStreams> streams;
        for (int classes = 1 + static_cast<int>(random() % 3); classes > 0; --classes)
            streams.push_back({base::BitRate::from_count(100 + static_cast<std::int64_t>(random() % 900)),
                               1 + static_cast<int>(random() % 3)});
        const auto each = 400 + static_cast<std::int64_t>(random() % 1200);
        const double wanted = enumerated(streams, members, each);
        EXPECT_NEAR(fits(streams, members, base::BitRate::from_count(each)), wanted, 1e-12) << "round " << round;
        between += wanted > 0 && wanted < 1 ? 1 : 0;
    }
    EXPECT_GT(between, 60);
}

// A 95 % interval may miss one in twenty: of forty seldom more than six (binomial, above 99 %).
TEST(FitChance, theLotAgreesWithTheCount) {
    int missed = 0;
    for (int n = 11; n <= 50; ++n) {
        const std::vector<AlikeStreams> streams{{300_Mbps, n}};
        const auto drawn = analysis::drawn_fit_chance(streams, 4, 4_Gbps);
        const double counted = fits(streams, 4, 4_Gbps);
        EXPECT_EQ(drawn.draws, analysis::chance_draws);
        missed += counted < drawn.least.value || counted > drawn.most.value ? 1 : 0;
    }
    EXPECT_LE(missed, 6);
}

TEST(FitChance, manyDifferentRatesAreDrawn) {
    std::vector<AlikeStreams> streams;
    for (int i = 0; i < 60; ++i) streams.push_back({base::BitRate::from_count(500'000'000 + i), 1});
    const auto chance = analysis::fit_chance(streams, 4, 10_Gbps);
    EXPECT_EQ(chance.draws, analysis::chance_draws);
    // Of rates so near each other 19 fit on a member and 20 do not: as good as 60 alike on members of 19.
    const double alike = fits({{500_Mbps, 60}}, 4, base::BitRate::from_count(9'999'999'999));
    EXPECT_LT(chance.least.value, alike);
    EXPECT_GT(chance.most.value, alike);
}

TEST(FitChance, aHundredThousandStreamsAnswer) {
    EXPECT_EQ(fits({{1_Mbps, 100'000}}, 4, 20_Gbps), 0);  // 100 Gb/s on 80
    // 25,000 on each is the mean, the deviation is the root of 100,000 x 1/4 x 3/4 = 137: 26,000 hold seven of them.
    const auto alike = analysis::fit_chance(std::vector<AlikeStreams>{{1_Mbps, 100'000}}, 4, 26_Gbps);
    EXPECT_EQ(alike.fits.value, 1);
    EXPECT_LT(alike.least.value, 1);
    std::vector<AlikeStreams> streams;
    for (int i = 0; i < 100'000; ++i) streams.push_back({base::BitRate::from_count(1'000'000 + i), 1});
    EXPECT_EQ(analysis::fit_chance(streams, 4, 28_Gbps).draws, 200);
}

// Drawn by how many fall on each: the mean and spread of the count must be those of the multinomial distribution.
TEST(FitChance, manyAlikeAreDrawnAsTheCountSays) {
    for (const std::int64_t holds : {262, 270, 280}) {
        const std::vector<AlikeStreams> streams{{1_Mbps, 1000}};
        const auto each = base::BitRate::from_count(holds * 1'000'000);
        const auto drawn = analysis::drawn_fit_chance(streams, 4, each);
        const double counted = fits(streams, 4, each);
        // Four standard deviations of the share (binomial).
        EXPECT_NEAR(drawn.fits.value, counted, 4 * std::sqrt(counted * (1 - counted) / analysis::chance_draws) + 1e-9);
    }
}

}  // namespace streamwright::test::fit_chance_test
