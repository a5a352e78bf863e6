// Exact rates held against Boost.Multiprecision rationals of any size.
#include "core/base/rate.h"

#include <boost/multiprecision/cpp_int.hpp>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace streamwright::test::rates {

using namespace base;
using namespace base::literals;
using boost::multiprecision::cpp_int;
using boost::multiprecision::cpp_rational;

/// A rate as made, and the same number without limits.
struct Pair {
    Rate rate;
    cpp_rational exact;
};

cpp_int ceil_of(const cpp_rational& value) {
    const cpp_int num = numerator(value), den = denominator(value);
    cpp_int whole = num / den;
    if (num % den > 0) ++whole;
    return whole;
}

Pair scaled(std::int64_t rate, std::int64_t over, std::int64_t under) {
    return {Rate::scaled(BitRate::from_count(rate), over, under), cpp_rational(cpp_int(rate) * over, cpp_int(under))};
}

/// Payload rates and octets as streams have them.
Pair any_stream() {
    return scaled(*rc::gen::inRange<std::int64_t>(0, 100'000'000'000), *rc::gen::inRange<std::int64_t>(0, 10'000),
                  *rc::gen::inRange<std::int64_t>(1, 10'000));
}

TEST(Rate, WholeRatesStayWhole) {
    EXPECT_EQ(Rate(865_Mbps).ceil(), 865_Mbps);
    EXPECT_TRUE(Rate().is_zero());
    EXPECT_EQ(Rate(1_Gbps) - Rate(1_Gbps), Rate());
    EXPECT_EQ(Rate(850_Mbps) * 12, Rate(10200_Mbps));  // network-examples N-7
}

TEST(Rate, AThirdOfABitRoundsUpOnceAtTheEnd) {
    const auto third = Rate::scaled(1_bps, 1, 3);
    EXPECT_EQ(third.ceil(), 1_bps);
    EXPECT_EQ((third + third + third).ceil(), 1_bps);
    EXPECT_EQ((third * 3), Rate(1_bps));
    EXPECT_EQ((third * 4).ceil(), 2_bps);
    EXPECT_LT(third, Rate(1_bps));
}

RC_GTEST_PROP(RateAlgebra, SumsOfStreamsAreExact, ()) {
    Pair sum{Rate(), 0};
    // Few different packet sizes, as in a venue: the denominators have a small common multiple.
    const auto sizes = *rc::gen::container<std::vector<std::int64_t>>(3, rc::gen::inRange<std::int64_t>(1, 1500));
    const auto count = *rc::gen::inRange(0, 60);
    for (int i = 0; i < count; ++i) {
        const auto size = sizes[static_cast<std::size_t>(*rc::gen::inRange(0, 3))];
        const auto next = scaled(*rc::gen::inRange<std::int64_t>(0, 10'000'000'000), size + 78, size);
        sum = {sum.rate + next.rate, sum.exact + next.exact};
    }
    RC_ASSERT(cpp_int(sum.rate.ceil().count()) == ceil_of(sum.exact));
}

RC_GTEST_PROP(RateAlgebra, OrderIsExact, ()) {
    const auto a = any_stream(), b = any_stream();
    RC_ASSERT((a.rate < b.rate) == (a.exact < b.exact));
    RC_ASSERT((a.rate == b.rate) == (a.exact == b.exact));
    RC_ASSERT((a.rate > b.rate) == (a.exact > b.exact));
}

RC_GTEST_PROP(RateAlgebra, CloseNeighboursAreTold, ()) {
    // n / d and (n + 1) / (d + 1) differ by less than 1 / d: products would need more than 128 bits when scaled up.
    const auto n = *rc::gen::inRange<std::int64_t>(1, INT64_MAX / 2),
               d = *rc::gen::inRange<std::int64_t>(1, INT64_MAX / 2);
    const auto a = scaled(n, INT64_MAX - 1, d), b = scaled(n + 1, INT64_MAX - 1, d + 1);
    RC_ASSERT((a.rate < b.rate) == (a.exact < b.exact));
    RC_ASSERT((b.rate < a.rate) == (b.exact < a.exact));
}

RC_GTEST_PROP(RateAlgebra, DifferencesAndMultiplesAreExact, (std::int16_t times)) {
    const auto a = any_stream(), b = any_stream();
    RC_ASSERT(cpp_int((a.rate - b.rate).ceil().count()) == ceil_of(a.exact - b.exact));
    RC_ASSERT(cpp_int((a.rate * times).ceil().count()) == ceil_of(a.exact * times));
    RC_ASSERT(a.rate - b.rate + b.rate == a.rate);
}

RC_GTEST_PROP(RateAlgebra, WhereTheBitsEndSumsAreNeverBelowTheTruth, ()) {
    // Denominators without common factors soon outgrow 128 bits; each rounding adds at most two millionths of a bit.
    Pair sum{Rate(), 0};
    const auto count = *rc::gen::inRange(1, 20);
    for (int i = 0; i < count; ++i) {
        const auto next =
            scaled(*rc::gen::inRange<std::int64_t>(0, 1'000'000'000'000), *rc::gen::inRange<std::int64_t>(1, INT32_MAX),
                   *rc::gen::inRange<std::int64_t>(1, INT64_MAX));
        sum = {sum.rate + next.rate, sum.exact + next.exact};
    }
    const auto least = ceil_of(sum.exact), most = ceil_of(sum.exact + cpp_rational(2 * count, 1'000'000));
    const cpp_int have = sum.rate.ceil().count();
    RC_ASSERT(have >= least);
    RC_ASSERT(have <= most);
}

RC_GTEST_PROP(RateAlgebra, PercentIsRoundedUp, ()) {
    const auto load = any_stream();
    const auto capacity = *rc::gen::inRange<std::int64_t>(1, 400'000'000'000);
    RC_ASSERT(cpp_int(percent_tenths(load.rate, BitRate::from_count(capacity))) ==
              ceil_of(load.exact * 1000 / capacity));
}

TEST(Rate, JustOverFullNeverReadsAsFull) {
    EXPECT_EQ(percent_tenths(Rate(1_Gbps), 1_Gbps), 1000);
    EXPECT_EQ(percent_tenths(Rate(1_Gbps) + Rate::scaled(1_bps, 1, 1000), 1_Gbps), 1001);
    EXPECT_EQ(percent_tenths(Rate(), BitRate()), 0);
    EXPECT_EQ(percent_tenths(Rate(1_bps), BitRate()), INT64_MAX);
}

TEST(Rate, HugeRatesSaturate) {
    const Rate most(BitRate::from_count(INT64_MAX));
    EXPECT_EQ((most + most).ceil().count(), INT64_MAX);
    EXPECT_EQ((most * INT64_MAX).ceil().count(), INT64_MAX);
    EXPECT_EQ((most * INT64_MAX * INT64_MAX * INT64_MAX).ceil().count(), INT64_MAX);
    EXPECT_GT(most + Rate::scaled(1_bps, 1, INT64_MAX), most);
}

}  // namespace streamwright::test::rates
