#include "core/standards/frame_rate_text.h"

#include "core/base/number_text.h"

#include <cctype>

namespace streamwright::standards {

namespace frame_rate_text_detail {

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

std::int64_t power_of_ten(int decimals) {
    std::int64_t scale = 1;
    for (int i = 0; i < decimals; ++i) scale *= 10;
    return scale;
}

/// "59.94" and its kin: n x 1000/1001 rounded or cut at the decimals that were typed, at least two.
std::optional<Hertz> thousandth_slow(std::int64_t digits, int decimals) {
    if (decimals < 2 || decimals > 6) return std::nullopt;
    const auto scale = power_of_ten(decimals);
    for (const std::int64_t n : {24, 30, 48, 60, 72, 96, 120, 144, 240}) {
        const std::int64_t over = n * 1000 * scale;
        if (digits == over / 1001 || digits == (over + 500) / 1001) return Hertz::ratio(n * 1000, 1001);
    }
    return std::nullopt;
}

std::size_t number_length(std::string_view text) {
    std::size_t count = 0;
    while (count < text.size() && (is_digit(text[count]) || text[count] == '.')) ++count;
    return count;
}

/// The denominator of a fraction: at most six digits, not zero.
std::optional<std::int64_t> take_under(std::string_view& text) {
    std::size_t count = 0;
    std::int64_t value = 0;
    for (; count < text.size() && is_digit(text[count]); ++count) {
        if (count == 6) return std::nullopt;
        value = value * 10 + (text[count] - '0');
    }
    text.remove_prefix(count);
    return value == 0 ? std::nullopt : std::optional(value);
}

}  // namespace frame_rate_text_detail

std::optional<Hertz> take_frame_rate(std::string_view& text) {
    namespace detail = frame_rate_text_detail;
    constexpr std::size_t most_characters = 12;
    const auto length = detail::number_length(text);
    if (length == 0 || length > most_characters) return std::nullopt;
    const auto number = base::read_number(text.substr(0, length));
    if (!number || !number->rest.empty()) return std::nullopt;
    text.remove_prefix(length);
    const auto digits = static_cast<std::int64_t>(number->digits);
    if (number->decimals == 0 && text.starts_with('/')) {
        text.remove_prefix(1);
        const auto under = detail::take_under(text);
        return under ? std::optional(Hertz::ratio(digits, *under)) : std::nullopt;
    }
    if (const auto slow = detail::thousandth_slow(digits, number->decimals)) return slow;
    return Hertz::ratio(digits, detail::power_of_ten(number->decimals));
}

std::string frame_rate_text(const Hertz& rate) {
    const auto decimal = plain_number(rate);
    std::string_view read = decimal;
    if (take_frame_rate(read) == rate && read.empty()) return decimal;
    return std::to_string(rate.num()) + "/" + std::to_string(rate.den());
}

}  // namespace streamwright::standards
