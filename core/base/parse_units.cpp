#include "core/base/text.h"
#include "core/base/units.h"

#include <cctype>
#include <initializer_list>
#include <optional>

namespace streamwright::base {

namespace parse_units_detail {

/// A unit as people write it, and how many base units it is, as a fraction.
struct UnitName {
    std::string_view name;
    std::int64_t over, under;
};

struct Number {
    bool negative = false;
    std::int64_t digits = 0;  // without the decimal mark
    int decimals = 0;
    std::string unit;  // lower case, spaces gone
};

/// Spaces people type between digits or before the unit: plain, no-break, narrow no-break.
std::string without_spaces(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text.substr(i).starts_with("\xC2\xA0")) {
            ++i;
        } else if (text.substr(i).starts_with("\xE2\x80\xAF")) {
            i += 2;
        } else if (text[i] != ' ' && text[i] != '\t') {
            out += text[i];
        }
    }
    return out;
}

std::optional<Number> split(std::string_view text) {
    const std::string plain = without_spaces(text);
    Number number;
    std::size_t at = 0;
    if (at < plain.size() && (plain[at] == '-' || plain[at] == '+')) number.negative = plain[at++] == '-';
    bool marked = false;
    std::size_t seen = 0;
    for (; at < plain.size(); ++at) {
        const char c = plain[at];
        if (std::isdigit(static_cast<unsigned char>(c))) {
            if (__builtin_mul_overflow(number.digits, 10, &number.digits) ||
                __builtin_add_overflow(number.digits, c - '0', &number.digits))
                return std::nullopt;
            ++seen;
            if (marked) ++number.decimals;
        } else if ((c == '.' || c == ',') && !marked) {
            marked = true;
        } else {
            break;
        }
    }
    if (seen == 0 || (marked && number.decimals == 0)) return std::nullopt;
    for (; at < plain.size(); ++at)
        number.unit += static_cast<char>(std::tolower(static_cast<unsigned char>(plain[at])));
    return number;
}

/// Number x unit in base units, rounded half away from zero; nothing if it does not fit.
std::optional<std::int64_t> in_base_units(const Number& number, const UnitName& unit) {
    __extension__ using Wide = __int128;
    Wide value = static_cast<Wide>(number.digits) * unit.over;
    Wide divisor = unit.under;
    for (int i = 0; i < number.decimals; ++i) divisor *= 10;
    value = (value + divisor / 2) / divisor;
    if (value > INT64_MAX) return std::nullopt;
    return number.negative ? -static_cast<std::int64_t>(value) : static_cast<std::int64_t>(value);
}

Error refused(std::string_view text, const char* example) {
    return {STREAMWRIGHT_TEXT("'%1' cannot be read; write a number with its unit, such as %2."),
            {printable(text), example}};
}

Result<std::int64_t> parse(std::string_view text, std::initializer_list<UnitName> units, const char* example,
                           bool may_be_negative = false) {
    if (text.size() > 64) return refused(text.substr(0, 64), example);
    const auto number = split(text);
    if (!number || number->decimals > 15 || (number->negative && !may_be_negative)) return refused(text, example);
    for (const auto& unit : units) {
        if (unit.name != number->unit) continue;
        const auto count = in_base_units(*number, unit);
        if (!count) return Error{STREAMWRIGHT_TEXT("'%1' is too large."), {printable(text)}};
        return *count;
    }
    return refused(text, example);
}

template <class Q>
Result<Q> as(const Result<std::int64_t>& count) {
    if (!count) return count.error();
    return Q::from_count(*count);
}

}  // namespace parse_units_detail

Result<BitRate> parse_bit_rate(std::string_view text) {
    constexpr std::int64_t k = 1000;
    return parse_units_detail::as<BitRate>(parse_units_detail::parse(text,
                                                                     {{"", k * k, 1},
                                                                      {"b/s", 1, 1},
                                                                      {"bps", 1, 1},
                                                                      {"bit/s", 1, 1},
                                                                      {"kb/s", k, 1},
                                                                      {"kbps", k, 1},
                                                                      {"kbit/s", k, 1},
                                                                      {"mb/s", k * k, 1},
                                                                      {"mbps", k * k, 1},
                                                                      {"mbit/s", k * k, 1},
                                                                      {"m", k * k, 1},
                                                                      {"gb/s", k * k * k, 1},
                                                                      {"gbps", k * k * k, 1},
                                                                      {"gbit/s", k * k * k, 1},
                                                                      {"g", k * k * k, 1}},
                                                                     "850 Mb/s or 0.85 Gbps"));
}

Result<Length> parse_length(std::string_view text, UnitSystem bare) {
    constexpr std::int64_t metre = 1000000;
    constexpr std::int64_t foot = 304800;
    return parse_units_detail::as<Length>(parse_units_detail::parse(text,
                                                                    {{"", bare == UnitSystem::metric ? metre : foot, 1},
                                                                     {"m", metre, 1},
                                                                     {"cm", metre / 100, 1},
                                                                     {"mm", 1000, 1},
                                                                     {"km", 1000 * metre, 1},
                                                                     {"ft", foot, 1},
                                                                     {"feet", foot, 1},
                                                                     {"foot", foot, 1},
                                                                     {"'", foot, 1},
                                                                     {"in", 25400, 1},
                                                                     {"inch", 25400, 1},
                                                                     {"\"", 25400, 1}},
                                                                    "25 m or 82 ft"));
}

Result<Power> parse_power(std::string_view text) {
    return parse_units_detail::as<Power>(
        parse_units_detail::parse(text, {{"", 1000, 1}, {"w", 1000, 1}, {"mw", 1, 1}, {"kw", 1000000, 1}}, "25.5 W"));
}

Result<Duration> parse_duration(std::string_view text) {
    constexpr std::int64_t second = 1000000000;
    return parse_units_detail::as<Duration>(parse_units_detail::parse(text,
                                                                      {{"", second, 1},
                                                                       {"s", second, 1},
                                                                       {"min", 60 * second, 1},
                                                                       {"ms", second / 1000, 1},
                                                                       {"us", 1000, 1},
                                                                       {"\xC2\xB5s", 1000, 1},
                                                                       {"ns", 1, 1}},
                                                                      "16 ms or 2 s"));
}

Result<Temperature> parse_temperature(std::string_view text) {
    // Fahrenheit has an offset, so it is read as a number of its own.
    auto fahrenheit = parse_units_detail::parse(text,
                                                {{"f", 1000, 1},
                                                 {"\xC2\xB0"
                                                  "f",
                                                  1000, 1}},
                                                "35 C or 95 F", true);
    if (fahrenheit) return Temperature::from_count((*fahrenheit - 32000) * 5 / 9);
    return parse_units_detail::as<Temperature>(parse_units_detail::parse(text,
                                                                         {{"", 1000, 1},
                                                                          {"c", 1000, 1},
                                                                          {"\xC2\xB0"
                                                                           "c",
                                                                           1000, 1}},
                                                                         "35 C or 95 F", true));
}

Result<Mass> parse_mass(std::string_view text) {
    return parse_units_detail::as<Mass>(parse_units_detail::parse(
        text, {{"", 1000, 1}, {"kg", 1000, 1}, {"g", 1, 1}, {"lb", 45359237, 100000}, {"lbs", 45359237, 100000}},
        "3.2 kg"));
}

Result<Loss> parse_loss(std::string_view text) {
    return parse_units_detail::as<Loss>(parse_units_detail::parse(text, {{"", 1000, 1}, {"db", 1000, 1}}, "1.5 dB"));
}

}  // namespace streamwright::base
