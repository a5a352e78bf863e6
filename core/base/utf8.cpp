#include "core/base/utf8.h"

namespace streamwright::base {

std::size_t utf8_length(std::string_view text, std::size_t at) {
    if (at >= text.size()) return 0;
    const auto octet = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const unsigned char first = octet(at);
    if (first < 0x80) return 1;
    const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
    if (first < 0xC2 || first > 0xF4 || at + length > text.size()) return 0;
    for (std::size_t i = 1; i < length; ++i)
        if ((octet(at + i) & 0xC0U) != 0x80U) return 0;
    const unsigned char second = octet(at + 1);
    const bool out_of_range = (first == 0xE0 && second < 0xA0) || (first == 0xED && second > 0x9F) ||
                              (first == 0xF0 && second < 0x90) || (first == 0xF4 && second > 0x8F);
    return out_of_range ? 0 : length;
}

}  // namespace streamwright::base
