// The units of the trade, each a strong type over a whole number of its base unit, with literals,
// printing for people and forgiving parsing of what people type ("25m", "82 ft", "0.85 Gbps", "1,5 m").
#pragma once

#include "core/base/quantity.h"
#include "core/base/result.h"

#include <string>
#include <string_view>

namespace streamwright::base {

using BitRate = Quantity<struct BitRateTag>;              // bits per second
using Length = Quantity<struct LengthTag>;                // micrometres
using Power = Quantity<struct PowerTag>;                  // milliwatts
using ApparentPower = Quantity<struct ApparentPowerTag>;  // millivolt-amperes
using DataSize = Quantity<struct DataSizeTag>;            // octets
using Temperature = Quantity<struct TemperatureTag>;      // thousandths of a degree Celsius
using Duration = Quantity<struct DurationTag>;            // nanoseconds
using Mass = Quantity<struct MassTag>;                    // grams
using Loss = Quantity<struct LossTag>;                    // thousandths of a decibel

namespace literals {
constexpr BitRate operator""_bps(unsigned long long n) { return BitRate::from_count(static_cast<std::int64_t>(n)); }
constexpr BitRate operator""_Mbps(unsigned long long n) { return 1000000 * operator""_bps(n); }
constexpr BitRate operator""_Gbps(unsigned long long n) { return 1000 * operator""_Mbps(n); }
constexpr Length operator""_um(unsigned long long n) { return Length::from_count(static_cast<std::int64_t>(n)); }
constexpr Length operator""_mm(unsigned long long n) { return 1000 * operator""_um(n); }
constexpr Length operator""_m(unsigned long long n) { return 1000 * operator""_mm(n); }
constexpr Length operator""_km(unsigned long long n) { return 1000 * operator""_m(n); }
constexpr Power operator""_mW(unsigned long long n) { return Power::from_count(static_cast<std::int64_t>(n)); }
constexpr Power operator""_W(unsigned long long n) { return 1000 * operator""_mW(n); }
constexpr Duration operator""_ns(unsigned long long n) { return Duration::from_count(static_cast<std::int64_t>(n)); }
constexpr Duration operator""_ms(unsigned long long n) { return 1000000 * operator""_ns(n); }
constexpr Duration operator""_s(unsigned long long n) { return 1000 * operator""_ms(n); }
constexpr Mass operator""_g(unsigned long long n) { return Mass::from_count(static_cast<std::int64_t>(n)); }
constexpr Mass operator""_kg(unsigned long long n) { return 1000 * operator""_g(n); }
constexpr Loss operator""_mdB(unsigned long long n) { return Loss::from_count(static_cast<std::int64_t>(n)); }
constexpr Temperature operator""_degC(unsigned long long n) {
    return Temperature::from_count(static_cast<std::int64_t>(n) * 1000);
}
}  // namespace literals

enum class UnitSystem { metric, imperial };

/// How numbers are written for the reader.
struct NumberStyle {
    UnitSystem system = UnitSystem::metric;
    char decimal_mark = '.';
};

/// Each prints number, space, unit, with at most three decimals and no trailing zeros ("111.5 m", "865 Mb/s").
std::string print(BitRate rate, const NumberStyle& style = {});
std::string print(Length length, const NumberStyle& style = {});
std::string print(Power power, const NumberStyle& style = {});
std::string print(ApparentPower power, const NumberStyle& style = {});
std::string print(DataSize size, const NumberStyle& style = {});
std::string print(Temperature temperature, const NumberStyle& style = {});
std::string print(Duration duration, const NumberStyle& style = {});
std::string print(Mass mass, const NumberStyle& style = {});
std::string print(Loss loss, const NumberStyle& style = {});

/// Writes count / 10^decimals exactly, trailing zeros cut ("1500000" with 6 decimals is "1.5").
std::string print_decimal(std::int64_t count, int decimals, char decimal_mark = '.');

/// Each reads a number with its unit as people type it; a bare number takes the unit in brackets
/// (m or ft by style, Mb/s, W, s, degrees C, kg, dB). Refuses NaN, exponents, negative values where
/// they mean nothing, and anything outside 64 bits, naming what was read.
Result<BitRate> parse_bit_rate(std::string_view text);
Result<Length> parse_length(std::string_view text, UnitSystem bare = UnitSystem::metric);
Result<Power> parse_power(std::string_view text);
Result<Duration> parse_duration(std::string_view text);
Result<Temperature> parse_temperature(std::string_view text);
Result<Mass> parse_mass(std::string_view text);
Result<Loss> parse_loss(std::string_view text);

}  // namespace streamwright::base
