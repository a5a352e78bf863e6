// Money in exact ten-thousandths, against hand arithmetic and the published rounding examples (row COM-002 of
// tests/reference/network-values.csv: 2.665 and 2.675 round commercially to 2.67 and 2.68).
#include "core/base/money.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace streamwright::test::money {

using namespace base;

const Currency euro{"EUR"};
Money euros(std::int64_t ten_thousandths) { return {ten_thousandths, euro}; }

TEST(Money, RoundsCommercially) {
    EXPECT_EQ(print(euros(26'650), 2), "2.67 EUR");
    EXPECT_EQ(print(euros(26'750), 2), "2.68 EUR");
    EXPECT_EQ(euros(-26'650).rounded(2), euros(-26'700));
    EXPECT_EQ(euros(-26'649).rounded(2), euros(-26'600));
    EXPECT_EQ(print(Money(12'345'000, {"JPY"}), 0), "1235 JPY");  // J6: 1234.5 JPY, half up
}

TEST(Money, PrintsAllItsDecimals) {
    EXPECT_EQ(print(euros(125'000), 2), "12.50 EUR");
    EXPECT_EQ(print(euros(120'000), 2, ','), "12,00 EUR");
    EXPECT_EQ(print(euros(-5), 4), "-0.0005 EUR");
    EXPECT_EQ(print(euros(0), 2), "0.00 EUR");
}

TEST(Money, ReadsWhatPeopleType) {
    for (const char* text : {"12.50", "12,5", "12.5000", " 12.50 ", "12.50 EUR"}) {
        const auto amount = parse_money(text, euro);
        ASSERT_TRUE(amount) << text;
        EXPECT_EQ(*amount, euros(125'000)) << text;
    }
    EXPECT_EQ(*parse_money("1 234,5", euro), euros(12'345'000));
    EXPECT_EQ(*parse_money("1,234.50", euro), euros(12'345'000));
    EXPECT_EQ(*parse_money("-0.0001", euro), euros(-1));
}

TEST(Money, RefusesInWords) {
    for (const char* text : {"", "abc", "12.50 USD", "1.23456", "1,234", "1e3", "999999999999999999999", "12.5.0"}) {
        const auto amount = parse_money(text, euro);
        ASSERT_FALSE(amount) << text;
        EXPECT_NE(amount.error().english().find(text), std::string::npos);
    }
}

TEST(Money, PricesPerMetreKeepTheirFractions) {
    const auto per_metre = *parse_money("0.4275", euro);
    EXPECT_EQ(print(per_metre * 305, 2), "130.39 EUR");  // 130.3875
    EXPECT_EQ(print(per_metre * 305 + euros(1), 4), "130.3876 EUR");
}

RC_GTEST_PROP(MoneyRoundTrip, FourDecimalsAreKept, (std::int32_t count, bool decimal_comma)) {
    const auto amount = euros(count);
    const auto again = parse_money(print(amount, 4, decimal_comma ? ',' : '.'), euro);
    RC_ASSERT(again.ok());
    RC_ASSERT(*again == amount);
}

RC_GTEST_PROP(MoneyRounding, IsNearestAndHalvesGoOut, (std::int32_t count)) {
    const auto decimals = *rc::gen::inRange(0, 5);
    std::int64_t unit = 1;
    for (int i = decimals; i < 4; ++i) unit *= 10;
    const auto rounded = euros(count).rounded(decimals).ten_thousandths();
    const auto off = std::abs(rounded) - std::abs(std::int64_t{count});
    RC_ASSERT(rounded % unit == 0);
    RC_ASSERT(2 * off <= unit);
    RC_ASSERT(2 * off > -unit);
}

}  // namespace streamwright::test::money
