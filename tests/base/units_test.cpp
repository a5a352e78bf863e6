// Units printed for people and read from what people type. Factors: SI prefixes; 1 ft = 0.3048 m, 1 in = 25.4 mm and
// 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959).
#include "core/base/units.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace streamwright::test::units {

using namespace base;
using namespace base::literals;

constexpr NumberStyle imperial{UnitSystem::imperial, '.'};
constexpr NumberStyle comma{UnitSystem::metric, ','};

TEST(UnitsPrint, RatesTakeTheLargestFittingStep) {
    EXPECT_EQ(print(865_Mbps), "865 Mb/s");
    EXPECT_EQ(print(1_Gbps), "1 Gb/s");
    EXPECT_EQ(print(10580_Mbps), "10.58 Gb/s");
    EXPECT_EQ(print(BitRate::from_count(520'000)), "520 kb/s");
    EXPECT_EQ(print(10580_Mbps, comma), "10,58 Gb/s");
    EXPECT_EQ(print(BitRate()), "0 b/s");
}

TEST(UnitsPrint, RoundingGoesHalfAwayFromZeroAndIntoTheNextStep) {
    EXPECT_EQ(print(BitRate::from_count(1'000'500)), "1.001 Mb/s");
    EXPECT_EQ(print(BitRate::from_count(1'000'499)), "1 Mb/s");
    EXPECT_EQ(print(BitRate::from_count(999'999'999)), "1 Gb/s");
    EXPECT_EQ(print(BitRate::from_count(-1'000'500)), "-1.001 Mb/s");
}

TEST(UnitsPrint, LengthsInMetresMillimetresAndFeet) {
    EXPECT_EQ(print(111'500_mm), "111.5 m");
    EXPECT_EQ(print(44'450_um), "44.45 mm");
    EXPECT_EQ(print(Length()), "0 m");
    EXPECT_EQ(print(10_km), "10 km");
    EXPECT_EQ(print(1200_m), "1200 m");
    EXPECT_EQ(print(25_m, imperial), "82 ft");  // 82.02 ft
    EXPECT_EQ(print(100_m, imperial), "328.1 ft");
}

TEST(UnitsPrint, OtherQuantities) {
    EXPECT_EQ(print(25'500_mW), "25.5 W");
    EXPECT_EQ(print(ApparentPower::from_count(1'920'000)), "1920 VA");
    EXPECT_EQ(print(DataSize::from_count(1518)), "1518 octets");
    EXPECT_EQ(print(40_degC), "40 °C");
    EXPECT_EQ(print(40_degC, imperial), "104 °F");
    EXPECT_EQ(print(-40_degC, imperial), "-40 °F");
    EXPECT_EQ(print(31'250_ms), "31.25 s");
    EXPECT_EQ(print(250_ms), "250 ms");
    EXPECT_EQ(print(12'304_ns), "12.304 µs");
    EXPECT_EQ(print(3'500_g), "3.5 kg");
    EXPECT_EQ(print(3'629_g, imperial), "8.001 lb");  // 3629 / 453.59237
    EXPECT_EQ(print(1785_mdB), "1.785 dB");
}

TEST(UnitsPrint, TheSmallestNumberHasASize) {
    EXPECT_EQ(print_decimal(INT64_MIN, 3), "-9223372036854775.808");
    EXPECT_EQ(print_decimal(1'500'000, 6), "1.5");
    EXPECT_EQ(print_decimal(-5, 3, ','), "-0,005");
}

template <class Q>
void expect_read(const Result<Q>& have, Q want, const char* text) {
    ASSERT_TRUE(have) << text << ": " << have.error().english();
    EXPECT_EQ(*have, want) << text;
}

TEST(UnitsParse, LengthsAsPeopleTypeThem) {
    for (const char* text : {"25m", "25 m", " 25 m ", "25.0 m", "25 metres", "2500 cm", "0.025 km", "25", "+25 m",
                             "25\u00A0m", "25\u202Fm", "25 000 mm", "25,000.0 mm"})
        expect_read(parse_length(text), 25_m, text);
    for (const char* text : {"1,5 m", "1.5 m", "1500mm", "1,5"}) expect_read(parse_length(text), 1'500_mm, text);
    for (const char* text : {"82 ft", "82ft", "82'", "82 feet", "82′", "82 FT"})
        expect_read(parse_length(text), Length::from_count(82 * 304'800), text);
    for (const char* text : {"82' 6\"", "82 ft 6 in", "82.5 ft", "82′6″", "990 in"})
        expect_read(parse_length(text), Length::from_count(82 * 304'800 + 6 * 25'400), text);
    expect_read(parse_length("82", UnitSystem::imperial), Length::from_count(82 * 304'800), "82");
}

TEST(UnitsParse, RatesAsPeopleTypeThem) {
    for (const char* text : {"850 Mbit/s", "0.85 Gbps", "850mbps", "850", "850M", "0,85 Gb/s", "850000 kb/s"})
        expect_read(parse_bit_rate(text), 850_Mbps, text);
    expect_read(parse_bit_rate("10G"), 10_Gbps, "10G");
    expect_read(parse_bit_rate("2.5 GbE"), 2500_Mbps, "2.5 GbE");
}

TEST(UnitsParse, OtherQuantities) {
    expect_read(parse_power("25.5 W"), 25'500_mW, "25.5 W");
    expect_read(parse_power("370"), 370_W, "370");
    expect_read(parse_power("1.2 kW"), 1200_W, "1.2 kW");
    expect_read(parse_duration("2 s"), 2_s, "2 s");
    expect_read(parse_duration("16ms"), 16_ms, "16ms");
    expect_read(parse_duration("2 min"), 120_s, "2 min");
    expect_read(parse_temperature("-5"), -5_degC, "-5");
    expect_read(parse_temperature("104 °F"), 40_degC, "104 °F");
    expect_read(parse_temperature("\u2212"
                                  "40 F"),
                -40_degC, "-40 F");
    expect_read(parse_mass("8 lb"), Mass::from_count(3'629), "8 lb");  // 3628.74 g
    expect_read(parse_mass("3,5kg"), 3'500_g, "3,5kg");
    expect_read(parse_loss("1.9 dB"), 1900_mdB, "1.9 dB");
}

TEST(UnitsParse, NonsenseIsRefusedInOneSentenceThatNamesIt) {
    for (const char* text : {"",       " ",      "m",       "abc",      "nan",       "NaN m",   "inf",
                             "1e3 m",  "0x10 m", "1.2.3 m", "1..2 m",   "5. m",      "12 34 m", "25 parsecs",
                             "25 m m", "--5 m",  "1,2,3 m", "82' 13\"", "82.5' 6\"", "25 dB",   "٣ m"}) {
        const auto have = parse_length(text);
        ASSERT_FALSE(have) << text;
        EXPECT_NE(have.error().english().find(text), std::string::npos) << have.error().english();
    }
}

TEST(UnitsParse, NegativeValuesAreRefusedWhereTheyMeanNothing) {
    EXPECT_FALSE(parse_length("-3 m"));
    EXPECT_FALSE(parse_bit_rate("-1 Mb/s"));
    EXPECT_FALSE(parse_loss("-0.5 dB"));
    EXPECT_TRUE(parse_length("-0 m"));
    EXPECT_TRUE(parse_temperature("-10 C"));
}

TEST(UnitsParse, WhatDoesNotFitIsRefused) {
    EXPECT_FALSE(parse_length("9223372036855 m"));  // 2^63 um is 9,223,372,036,854.775808 m
    EXPECT_TRUE(parse_length("9223372036854 m"));
    EXPECT_FALSE(parse_length("99999999999999999999999999999999 m"));
    EXPECT_FALSE(parse_bit_rate("9300000000 Gb/s"));
    EXPECT_FALSE(parse_length("0.0000000000000000000000001 m"));
}

TEST(UnitsParse, OctetsAreNotTakenForBits) {
    for (const char* text : {"100 MB/s", "100 GB/s", "100 MBps"}) {
        const auto have = parse_bit_rate(text);
        ASSERT_FALSE(have) << text;
        EXPECT_NE(have.error().english().find("octets"), std::string::npos);
    }
}

TEST(UnitsParse, ACommaOfTwoReadingsIsRefused) {
    for (const char* text : {"1,500 m", "20,000 m"}) EXPECT_FALSE(parse_length(text)) << text;
    expect_read(parse_length("1,500.0 m"), 1500_m, "1,500.0 m");
    expect_read(parse_length("0,500 m"), 500_mm, "0,500 m");
}

TEST(UnitsParse, ControlCharactersOfTheInputAreShown) {
    EXPECT_NE(parse_length("\x1B[31m").error().english().find("\\x1B[31m"), std::string::npos);
}

// What is printed exactly, without rounding, is read back: counts of a thousandth of the printed step.
RC_GTEST_PROP(UnitsRoundTrip, LengthsUnderTenKilometres, (bool decimal_comma)) {
    const auto length = Length::from_count(*rc::gen::inRange<std::int64_t>(0, 10'000'000) * 1000);
    const NumberStyle style{UnitSystem::metric, decimal_comma ? ',' : '.'};
    const auto again = parse_length(print(length, style));
    RC_ASSERT(again.ok());
    RC_ASSERT(*again == length);
}

RC_GTEST_PROP(UnitsRoundTrip, TenthsOfAFoot, ()) {
    const auto length = Length::from_count(*rc::gen::inRange<std::int64_t>(0, 1'000'000) * 30'480);
    const auto again = parse_length(print(length, imperial));
    RC_ASSERT(again.ok());
    RC_ASSERT(*again == length);
}

RC_GTEST_PROP(UnitsRoundTrip, RatesWithinHalfAThousandthOfTheirStep, ()) {
    const auto rate = BitRate::from_count(*rc::gen::inRange<std::int64_t>(0, 400'000'000'000));
    const auto again = parse_bit_rate(print(rate));
    RC_ASSERT(again.ok());
    const auto error = (*again - rate).count();
    RC_ASSERT(std::abs(error) * 2000 <= std::max<std::int64_t>(rate.count(), 0));
}

RC_GTEST_PROP(UnitsRoundTrip, LossesTemperaturesAndPowers, (std::int32_t count)) {
    const auto magnitude = std::abs(static_cast<std::int64_t>(count));
    RC_ASSERT(*parse_loss(print(Loss::from_count(magnitude))) == Loss::from_count(magnitude));
    RC_ASSERT(*parse_power(print(Power::from_count(magnitude))) == Power::from_count(magnitude));
    RC_ASSERT(*parse_temperature(print(Temperature::from_count(count))) == Temperature::from_count(count));
}

RC_GTEST_PROP(UnitsParseNever, CrashesOnAnyText, (const std::string& text)) {
    const auto length = parse_length(text);
    const auto rate = parse_bit_rate(text);
    if (!length) RC_ASSERT(!length.error().english().empty());
    if (!rate) RC_ASSERT(!rate.error().english().empty());
}

}  // namespace streamwright::test::units
