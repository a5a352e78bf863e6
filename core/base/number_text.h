// Reading the number at the start of what a person typed: decimal point or comma, grouping by spaces or commas,
// plain and no-break spaces, ASCII or typographic minus. Kept apart because units and money share it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace streamwright::base {

__extension__ using Int128 = __int128;

struct NumberText {
    bool negative = false;
    Int128 digits = 0;  // below 10^24
    int decimals = 0;
    bool comma_of_three = false;  // "1,234": a decimal comma by rule, but a reader might mean thousands
    std::string_view rest;        // what follows, spaces trimmed
};

/// Nothing where the text does not begin with a number, or where it has more than 24 digits.
std::optional<NumberText> read_number(std::string_view text);

/// Spaces at both ends taken off, no-break and thin ones included.
std::string_view trim_spaces(std::string_view text);

/// digits x num / (10^decimals x den), halves away from zero; nothing outside 64 bits.
std::optional<std::int64_t> scale_number(const NumberText& number, std::int64_t num, std::int64_t den);

}  // namespace streamwright::base
