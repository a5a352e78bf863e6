#include "core/base/number_text.h"
#include "core/base/text.h"
#include "core/base/units.h"

#include <algorithm>
#include <limits>
#include <span>

namespace streamwright::base {

namespace parse_detail {

/// One way to write a unit: `num / den` base units.
struct Name {
    std::string_view name;
    std::int64_t num;
    std::int64_t den = 1;
};

/// How one kind of quantity is read and refused.
struct Kind {
    std::span<const Name> names;
    std::string_view bare;  // unit of a number without one
    bool negative_allowed = false;
    std::string_view refusal;  // pattern, %1 is what was read
};

Error refused(std::string_view pattern, std::string_view text) {
    constexpr std::size_t most_shown = 60;
    return {std::string(pattern), {std::string(text.substr(0, most_shown)) + (text.size() > most_shown ? "..." : "")}};
}

constexpr std::string_view too_large =
    STREAMWRIGHT_TEXT("\"%1\" is too large a number to work with. Write a smaller one.");
constexpr std::string_view below_zero =
    STREAMWRIGHT_TEXT("\"%1\" is below zero, which means nothing here. Write it without the minus.");
constexpr std::string_view two_readings =
    STREAMWRIGHT_TEXT("\"%1\" can be read in two ways: a comma may mark decimals or thousands. Write 1.5 or 1500.");

/// Printing cuts trailing zeros, so "1,500" was typed by a person, who may mean thousands.
bool ambiguous(const NumberText& number) { return number.comma_of_three && number.digits % 10 == 0; }

const Name* find_name(std::span<const Name> names, std::string_view unit) {
    const auto found = std::find_if(names.begin(), names.end(), [&](const Name& each) { return each.name == unit; });
    return found == names.end() ? nullptr : &*found;
}

Result<std::int64_t> read(std::string_view text, std::string_view number_text, const Kind& kind) {
    const auto number = read_number(number_text);
    if (!number) return refused(kind.refusal, text);
    const auto* name = find_name(kind.names, number->rest.empty() ? kind.bare : number->rest);
    if (!name) return refused(kind.refusal, text);
    if (ambiguous(*number)) return refused(two_readings, text);
    if (number->negative && number->digits != 0 && !kind.negative_allowed) return refused(below_zero, text);
    const auto count = scale_number(*number, name->num, name->den);
    if (!count) return refused(too_large, text);
    return *count;
}

template <class Q>
Result<Q> as(const Result<std::int64_t>& count) {
    if (!count) return count.error();
    return Q::from_count(*count);
}

constexpr Name rate_names[] = {{"b/s", 1},
                               {"bps", 1},
                               {"bit/s", 1},
                               {"bits/s", 1},
                               {"k", 1'000},
                               {"kb/s", 1'000},
                               {"kbps", 1'000},
                               {"kbit/s", 1'000},
                               {"m", 1'000'000},
                               {"mb/s", 1'000'000},
                               {"mbps", 1'000'000},
                               {"mbit/s", 1'000'000},
                               {"g", 1'000'000'000},
                               {"gb/s", 1'000'000'000},
                               {"gbps", 1'000'000'000},
                               {"gbit/s", 1'000'000'000},
                               {"gbe", 1'000'000'000},
                               {"t", 1'000'000'000'000},
                               {"tb/s", 1'000'000'000'000},
                               {"tbps", 1'000'000'000'000},
                               {"tbit/s", 1'000'000'000'000}};
constexpr Name length_names[] = {{"m", 1'000'000},     {"metre", 1'000'000},  {"metres", 1'000'000},
                                 {"meter", 1'000'000}, {"meters", 1'000'000}, {"km", 1'000'000'000},
                                 {"cm", 10'000},       {"mm", 1'000},         {"um", 1},
                                 {"\u00B5m", 1},       {"\u03BCm", 1},        {"ft", 304'800},
                                 {"foot", 304'800},    {"feet", 304'800},     {"'", 304'800},
                                 {"\u2032", 304'800},  {"\u2019", 304'800},   {"in", 25'400},
                                 {"inch", 25'400},     {"inches", 25'400},    {"\"", 25'400},
                                 {"\u2033", 25'400},   {"\u201D", 25'400},    {"yd", 914'400},
                                 {"M", 1'000'000},     {"FT", 304'800},       {"Ft", 304'800}};
constexpr Name inch_names[] = {{"in", 25'400}, {"inch", 25'400},   {"inches", 25'400},
                               {"\"", 25'400}, {"\u2033", 25'400}, {"\u201D", 25'400}};
constexpr Name power_names[] = {{"W", 1'000}, {"w", 1'000},      {"watt", 1'000},   {"watts", 1'000}, {"mW", 1},
                                {"mw", 1},    {"kW", 1'000'000}, {"kw", 1'000'000}, {"KW", 1'000'000}};
constexpr Name duration_names[] = {{"s", 1'000'000'000},        {"sec", 1'000'000'000},      {"second", 1'000'000'000},
                                   {"seconds", 1'000'000'000},  {"ms", 1'000'000},           {"us", 1'000},
                                   {"\u00B5s", 1'000},          {"\u03BCs", 1'000},          {"ns", 1},
                                   {"min", 60'000'000'000},     {"minutes", 60'000'000'000}, {"h", 3'600'000'000'000},
                                   {"hours", 3'600'000'000'000}};
constexpr Name celsius_names[] = {{"\u00B0C", 1'000}, {"C", 1'000},      {"c", 1'000},
                                  {"degC", 1'000},    {"\u00B0", 1'000}, {"\u00B0c", 1'000}};
constexpr Name fahrenheit_names[] = {
    {"\u00B0F", 5'000, 9}, {"F", 5'000, 9}, {"f", 5'000, 9}, {"degF", 5'000, 9}, {"\u00B0f", 5'000, 9}};
constexpr Name mass_names[] = {{"kg", 1'000},
                               {"Kg", 1'000},
                               {"KG", 1'000},
                               {"g", 1},
                               {"t", 1'000'000},
                               {"lb", 45'359'237, 100'000},
                               {"lbs", 45'359'237, 100'000},
                               {"oz", 45'359'237, 1'600'000}};
constexpr Name loss_names[] = {{"dB", 1'000}, {"db", 1'000}, {"DB", 1'000}};

constexpr std::string_view length_refusal =
    STREAMWRIGHT_TEXT("\"%1\" is not a length. Write it like 25 m, 1.5 m or 82 ft.");

/// 82' 6" and 82 ft 6 in: the part up to and with the foot mark, or nothing.
std::string_view feet_part(std::string_view text) {
    for (const std::string_view mark : {"ft", "'", "\u2032", "\u2019"}) {
        const auto at = text.find(mark);
        if (at != std::string_view::npos && at + mark.size() < text.size() &&
            !trim_spaces(text.substr(at + mark.size())).empty())
            return text.substr(0, at + mark.size());
    }
    return {};
}

Result<Length> feet_and_inches(std::string_view text, std::string_view feet_text) {
    constexpr std::int64_t foot = 304'800;
    const auto feet = read(text, feet_text, {length_names, "ft", false, length_refusal});
    const auto inches = read(text, text.substr(feet_text.size()), {inch_names, "in", false, length_refusal});
    if (!feet) return feet.error();
    if (!inches) return inches.error();
    if (*feet % foot != 0 || *inches >= foot) return refused(length_refusal, text);
    std::int64_t sum = 0;
    if (__builtin_add_overflow(*feet, *inches, &sum)) return refused(too_large, text);
    return Length::from_count(sum);
}

/// A capital B stands for octets ("MB/s"), eight times as much: taken for bits it would mislead by a factor of eight.
bool means_octets(std::string_view unit) {
    return unit.find("B/s") != std::string_view::npos || unit.find("Bps") != std::string_view::npos;
}

std::string lower(std::string_view text) {
    std::string out(text);
    for (char& c : out)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return out;
}

}  // namespace parse_detail

Result<BitRate> parse_bit_rate(std::string_view text) {
    using namespace parse_detail;
    if (means_octets(text))
        return refused(STREAMWRIGHT_TEXT("\"%1\" counts octets. Rates are in bits: write it like 850 Mb/s."), text);
    return as<BitRate>(read(text, lower(text),
                            {rate_names, "mb/s", false,
                             STREAMWRIGHT_TEXT("\"%1\" is not a bit rate. Write it like 850 Mb/s "
                                               "or 0.85 Gb/s.")}));
}

Result<Length> parse_length(std::string_view text, UnitSystem bare) {
    using namespace parse_detail;
    const auto feet = feet_part(text);
    if (!feet.empty()) return feet_and_inches(text, feet);
    return as<Length>(read(text, text, {length_names, bare == UnitSystem::metric ? "m" : "ft", false, length_refusal}));
}

Result<Power> parse_power(std::string_view text) {
    using namespace parse_detail;
    return as<Power>(
        read(text, text, {power_names, "W", false, STREAMWRIGHT_TEXT("\"%1\" is not a power. Write it like 25.5 W.")}));
}

Result<Duration> parse_duration(std::string_view text) {
    using namespace parse_detail;
    return as<Duration>(
        read(text, text,
             {duration_names, "s", false, STREAMWRIGHT_TEXT("\"%1\" is not a time. Write it like 2 s or 250 ms.")}));
}

Result<Temperature> parse_temperature(std::string_view text) {
    using namespace parse_detail;
    constexpr std::string_view refusal = STREAMWRIGHT_TEXT("\"%1\" is not a temperature. Write it like 40 \u00B0C.");
    const auto number = read_number(text);
    const bool fahrenheit = number && find_name(fahrenheit_names, number->rest);
    if (!fahrenheit) return as<Temperature>(read(text, text, {celsius_names, "C", true, refusal}));
    // -32 degrees first, exactly, then five ninths.
    auto shifted = *number;
    Int128 shift = 32;
    for (int i = 0; i < shifted.decimals; ++i) shift *= 10;
    const Int128 above_freezing = (shifted.negative ? -shifted.digits : shifted.digits) - shift;
    shifted.negative = above_freezing < 0;
    shifted.digits = shifted.negative ? -above_freezing : above_freezing;
    const auto count = scale_number(shifted, 5'000, 9);
    if (!count) return refused(too_large, text);
    return Temperature::from_count(*count);
}

Result<Mass> parse_mass(std::string_view text) {
    using namespace parse_detail;
    return as<Mass>(
        read(text, text,
             {mass_names, "kg", false, STREAMWRIGHT_TEXT("\"%1\" is not a weight. Write it like 3.5 kg or 8 lb.")}));
}

Result<Loss> parse_loss(std::string_view text) {
    using namespace parse_detail;
    return as<Loss>(
        read(text, text, {loss_names, "dB", false, STREAMWRIGHT_TEXT("\"%1\" is not a loss. Write it like 1.9 dB.")}));
}

}  // namespace streamwright::base
