#include "core/base/error.h"

#include "core/base/utf8.h"

namespace streamwright::base {

namespace error_detail {

/// C0, delete and C1 control characters; C1 is two octets in UTF-8.
bool is_control(std::string_view character) {
    const auto first = static_cast<unsigned char>(character[0]);
    if (character.size() == 1) return first < 0x20 || first == 0x7F;
    return character.size() == 2 && first == 0xC2 && static_cast<unsigned char>(character[1]) < 0xA0;
}

void append_escaped(std::string& out, std::string_view octets) {
    constexpr std::string_view hex = "0123456789ABCDEF";
    for (const char c : octets) {
        const auto octet = static_cast<unsigned char>(c);
        out += "\\x";
        out += hex[octet >> 4U];
        out += hex[octet & 15U];
    }
}

}  // namespace error_detail

std::string printable(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    while (!text.empty()) {
        const auto length = utf8_length(text, 0);
        const auto character = text.substr(0, length == 0 ? 1 : length);
        if (length == 0 || error_detail::is_control(character))
            error_detail::append_escaped(out, character);
        else
            out += character;
        text.remove_prefix(character.size());
    }
    return out;
}

std::string fill_places(std::string_view pattern, const std::vector<std::string>& args) {
    std::string out;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const bool place =
            pattern[i] == '%' && i + 1 < pattern.size() && pattern[i + 1] >= '1' && pattern[i + 1] <= '9';
        const auto index = place ? static_cast<std::size_t>(pattern[i + 1] - '1') : args.size();
        if (index >= args.size()) {
            out += pattern[i];
            continue;
        }
        out += args[index];
        ++i;
    }
    return out;
}

std::string Error::english() const { return printable(fill_places(pattern, args)); }

}  // namespace streamwright::base
