#include "core/base/id.h"

#include <random>

namespace streamwright::base {

namespace {
constexpr std::string_view id_alphabet = "0123456789abcdefghjkmnpqrstvwxyz";
constexpr std::size_t id_length = 12;
}  // namespace

std::string print_id_bits(std::uint64_t bits) {
    std::string text(id_length, '0');
    for (std::size_t i = id_length; i-- > 0;) {
        text[i] = id_alphabet[bits & 31U];
        bits >>= 5U;
    }
    return text;
}

std::optional<std::uint64_t> parse_id_bits(std::string_view text) {
    if (text.size() != id_length) return std::nullopt;
    std::uint64_t bits = 0;
    for (const char c : text) {
        const auto digit = id_alphabet.find(c);
        if (digit == std::string_view::npos) return std::nullopt;
        bits = (bits << 5U) | digit;
    }
    return bits;
}

IdSource IdSource::from_entropy() {
    std::random_device entropy;
    return IdSource((std::uint64_t{entropy()} << 32U) ^ entropy());
}

std::uint64_t IdSource::next_bits() {
    // splitmix64 (Steele, Lea, Flood 2014): each state gives another value, so ids of one source never repeat early.
    state_ += 0x9E3779B97F4A7C15ULL;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27U)) * 0x94D049BB133111EBULL;
    return (z ^ (z >> 31U)) >> 4U;
}

}  // namespace streamwright::base
