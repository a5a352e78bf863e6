#include "core/base/number_text.h"

#include <array>
#include <limits>

namespace streamwright::base {

namespace number_detail {

constexpr std::size_t most_digits = 24;

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Octets of the space that starts the text: blank, tab, no-break, thin, narrow no-break; 0 if there is none.
std::size_t space_length(std::string_view text) {
    constexpr std::array<std::string_view, 5> spaces{" ", "\t", "\u00A0", "\u2009", "\u202F"};
    for (const auto space : spaces)
        if (text.starts_with(space)) return space.size();
    return 0;
}

std::size_t digits_at(std::string_view text) {
    std::size_t n = 0;
    while (n < text.size() && is_digit(text[n])) ++n;
    return n;
}

/// The octets of a group separator followed by exactly three digits, or 0.
std::size_t group_length(std::string_view text, bool comma) {
    const std::size_t mark = comma ? (text.starts_with(',') ? 1 : 0) : space_length(text);
    return mark != 0 && digits_at(text.substr(mark)) == 3 ? mark : 0;
}

/// Takes digits into `out`; false once there are too many.
bool take(std::string_view& text, std::size_t count, std::string& out) {
    out += text.substr(0, count);
    text.remove_prefix(count);
    return out.size() <= most_digits;
}

/// "1,234.5" and "1,234,567" use commas as groups; "1,5" and "1,234" as the decimal mark.
bool commas_group(std::string_view text) {
    std::size_t groups = 0;
    while (group_length(text, true) != 0) {
        text.remove_prefix(4);
        ++groups;
    }
    return groups > 1 || (groups == 1 && text.size() > 1 && text[0] == '.' && is_digit(text[1]));
}

bool take_sign(std::string_view& text) {
    for (const std::string_view minus : {"-", "\u2212"})
        if (text.starts_with(minus)) {
            text = trim_spaces(text.substr(minus.size()));
            return true;
        }
    if (text.starts_with('+')) text.remove_prefix(1);
    return false;
}

/// The digits before the decimal mark; false where there are too many.
bool take_whole(std::string_view& text, std::string& digits) {
    if (!take(text, digits_at(text), digits)) return false;
    if (digits.empty() || digits.size() > 3) return true;
    const bool comma = commas_group(text);
    while (const auto mark = group_length(text, comma)) {
        text.remove_prefix(mark);
        if (!take(text, 3, digits)) return false;
    }
    return true;
}

Int128 number_of(std::string_view digits) {
    Int128 value = 0;
    for (const char c : digits) value = value * 10 + (c - '0');
    return value;
}

}  // namespace number_detail

std::string_view trim_spaces(std::string_view text) {
    while (const auto n = number_detail::space_length(text)) text.remove_prefix(n);
    for (bool more = true; more;) {
        more = false;
        for (std::size_t n = 1; n <= 3 && n <= text.size(); ++n)
            if (number_detail::space_length(text.substr(text.size() - n)) == n) {
                text.remove_suffix(n);
                more = true;
                break;
            }
    }
    return text;
}

std::optional<NumberText> read_number(std::string_view text) {
    using namespace number_detail;
    NumberText number;
    text = trim_spaces(text);
    number.negative = take_sign(text);
    std::string digits;
    if (!take_whole(text, digits)) return std::nullopt;
    const bool marked = text.size() > 1 && (text[0] == '.' || text[0] == ',') && is_digit(text[1]);
    if (marked) {
        const auto fraction = digits_at(text.substr(1));
        number.comma_of_three = text[0] == ',' && fraction == 3 && digits.size() <= 3 && number_of(digits) != 0;
        text.remove_prefix(1);
        number.decimals = static_cast<int>(fraction);
        if (!take(text, fraction, digits)) return std::nullopt;
    }
    if (digits.empty()) return std::nullopt;
    number.digits = number_of(digits);
    number.rest = trim_spaces(text);
    const bool second_mark = !number.rest.empty() && (number.rest[0] == '.' || number.rest[0] == ',');
    return second_mark ? std::nullopt : std::optional(number);
}

std::optional<std::int64_t> scale_number(const NumberText& number, std::int64_t num, std::int64_t den) {
    Int128 over = 0, under = den;
    if (__builtin_mul_overflow(number.digits, Int128{num}, &over)) return std::nullopt;
    for (int i = 0; i < number.decimals; ++i)
        if (__builtin_mul_overflow(under, Int128{10}, &under)) return std::nullopt;
    const Int128 half = over % under >= under - over % under ? 1 : 0;
    const Int128 magnitude = over / under + half;
    if (magnitude > std::numeric_limits<std::int64_t>::max()) return std::nullopt;
    const auto value = static_cast<std::int64_t>(magnitude);
    return number.negative ? -value : value;
}

}  // namespace streamwright::base
