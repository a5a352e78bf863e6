#include "app/cli/terminal_safe.h"

namespace streamwright::app {

namespace terminal_safe_detail {

void append_escape(std::string& out, unsigned char code) {
    constexpr std::string_view hex = "0123456789abcdef";
    out += "\\u00";
    out += hex[code >> 4U];
    out += hex[code & 15U];
}

}  // namespace terminal_safe_detail

std::string terminal_safe(std::string_view json_text) {
    using terminal_safe_detail::append_escape;
    std::string out;
    out.reserve(json_text.size());
    for (std::size_t at = 0; at < json_text.size(); ++at) {
        const auto octet = static_cast<unsigned char>(json_text[at]);
        const auto next = at + 1 < json_text.size() ? static_cast<unsigned char>(json_text[at + 1]) : 0U;
        if (octet == 0x7F) {
            append_escape(out, 0x7F);
        } else if (octet == 0xC2 && next >= 0x80 && next < 0xA0) {  // UTF-8 of U+0080 to U+009F
            append_escape(out, static_cast<unsigned char>(next));
            ++at;
        } else {
            out += json_text[at];
        }
    }
    return out;
}

}  // namespace streamwright::app
