#include "tests/support/mutate.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstddef>

namespace streamwright::test {

namespace mutate_detail {

using Random = std::mt19937_64;

std::size_t below(std::size_t limit, Random& random) {
    return limit == 0 ? 0 : static_cast<std::size_t>(random() % limit);
}

void flip_octet(std::string& text, Random& random) { text[below(text.size(), random)] = static_cast<char>(random()); }

void cut_off(std::string& text, Random& random) { text.resize(below(text.size(), random)); }

void take_out(std::string& text, Random& random) { text.erase(below(text.size(), random), 1 + below(60, random)); }

/// A slice stands twice, or somewhere else: rows, keys and halves of them.
void repeat_slice(std::string& text, Random& random) {
    const auto slice = text.substr(below(text.size(), random), 1 + below(200, random));
    text.insert(below(text.size(), random), slice);
}

void repeat_line(std::string& text, Random& random) {
    const auto from = text.rfind('\n', below(text.size(), random));
    const auto start = from == std::string::npos ? 0 : from + 1;
    const auto end = std::min(text.find('\n', start), text.size());
    text.insert(start, text.substr(start, end - start) + '\n');
}

/// The place and length of the next run of digits after some place.
std::pair<std::size_t, std::size_t> digits_after(const std::string& text, std::size_t at) {
    const auto first = text.find_first_of("0123456789", at);
    if (first == std::string::npos) return {0, 0};
    const auto end = std::min(text.find_first_not_of("0123456789", first), text.size());
    return {first, end - first};
}

void extreme_number(std::string& text, Random& random) {
    constexpr std::array numbers{"0",
                                 "-1",
                                 "-0",
                                 "1e999",
                                 "-1e999",
                                 "1.5",
                                 "1e-9",
                                 "2147483647",
                                 "2147483648",
                                 "-2147483649",
                                 "4294967296",
                                 "9223372036854775807",
                                 "-9223372036854775808",
                                 "9223372036854775808",
                                 "18446744073709551615",
                                 "18446744073709551616",
                                 "99999999999999999999999999999999"};
    const auto [at, length] = digits_after(text, below(text.size(), random));
    text.replace(at, length, numbers[below(numbers.size(), random)]);
}

void other_value(std::string& text, Random& random) {
    constexpr std::array values{"null",        "true",        "[]",   "{}",       "\"\"",
                                "\"\\u0000\"", "\"\\ud800\"", "[[]]", "{\"\":0}", "-"};
    const auto colon = text.find(':', below(text.size(), random));
    if (colon == std::string::npos) return;
    const auto end = std::min(text.find_first_of(",}]", colon), text.size());
    text.replace(colon + 1, end - colon - 1, values[below(values.size(), random)]);
}

void nest_deep(std::string& text, Random& random) {
    constexpr std::array<std::size_t, 4> depths{3, 60, 70, 3000};
    const auto depth = depths[below(depths.size(), random)];
    const bool closed = random() % 2 == 0;
    std::string nest(depth, '[');
    if (closed) nest += std::string(depth, ']');
    const auto colon = text.find(':', below(text.size(), random));
    text.insert(colon == std::string::npos ? 0 : colon + 1, nest + (random() % 2 == 0 ? "," : ""));
}

/// RFC 3629 forbids all of these: a lone follower, a cut sequence, overlong forms, a surrogate, past the last
/// character.
void bad_utf8(std::string& text, Random& random) {
    constexpr std::array sequences{"\x80", "\xC3", "\xC0\x80", "\xE0\x80\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80",
                                   "\xFF"};
    text.insert(below(text.size(), random), sequences[below(sequences.size(), random)]);
}

void steer_terminal(std::string& text, Random& random) {
    constexpr std::array sequences{"\\u001b[2J", "\\u009b31m", "\\u0007", "\\n", "\x1b[0m", "\xC2\x9B", "%1", "%n"};
    const auto quote = text.find('"', below(text.size(), random));
    text.insert(quote == std::string::npos ? 0 : quote + 1, sequences[below(sequences.size(), random)]);
}

void sign_of_json(std::string& text, Random& random) {
    text[below(text.size(), random)] = "0123456789\"{}[],:nt-"[below(20, random)];
}

}  // namespace mutate_detail

std::string mutated(std::string text, std::mt19937_64& random) {
    using namespace mutate_detail;
    constexpr std::array harms{flip_octet,     cut_off,        take_out,    repeat_slice, repeat_line,
                               extreme_number, extreme_number, other_value, other_value,  nest_deep,
                               bad_utf8,       steer_terminal, sign_of_json};
    for (auto count = 1 + random() % 4; count > 0 && !text.empty(); --count)
        harms[below(harms.size(), random)](text, random);
    return text;
}

}  // namespace streamwright::test
