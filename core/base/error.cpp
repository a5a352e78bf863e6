#include "core/base/error.h"

#include "core/base/utf8.h"

namespace streamwright::base {

std::string fill_places(std::string_view pattern, const std::vector<std::string>& args) {
    std::string filled;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        const bool place =
            pattern[i] == '%' && i + 1 < pattern.size() && pattern[i + 1] >= '1' && pattern[i + 1] <= '9';
        if (!place) {
            filled += pattern[i];
            continue;
        }
        const auto number = static_cast<std::size_t>(pattern[++i] - '1');
        if (number < args.size())
            filled += args[number];
        else
            filled.append({'%', pattern[i]});
    }
    return filled;
}

std::string printable(std::string_view text) {
    static constexpr char hex[] = "0123456789abcdef";
    std::string shown;
    for (std::size_t i = 0; i < text.size();) {
        const auto length = utf8_length(text, i);
        const auto byte = static_cast<unsigned char>(text[i]);
        // C1 controls are two octets in UTF-8 and steer terminals as the C0 ones do.
        const bool c1 = length == 2 && byte == 0xC2 && static_cast<unsigned char>(text[i + 1]) < 0xA0;
        if (length == 0 || c1 || (length == 1 && (byte < 0x20 || byte == 0x7F))) {
            const auto bad = static_cast<unsigned char>(c1 ? text[i + 1] : text[i]);
            shown.append({'\\', 'x', hex[bad >> 4U], hex[bad & 15U]});
            i += c1 ? 2 : 1;
        } else {
            shown.append(text.substr(i, length));
            i += length;
        }
    }
    return shown;
}

std::string Error::english() const { return printable(fill_places(pattern, args)); }

}  // namespace streamwright::base
