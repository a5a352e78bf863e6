// Widths by summing advances. UTF-8 is read leniently: a broken octet counts as one missing glyph.
#include "core/layout/text_width.h"

#include "core/layout/b612_advances.h"

#include <algorithm>

namespace streamwright::layout {

namespace text_width_detail {

struct Decoded {
    char32_t code;
    std::size_t octets;
};

constexpr char32_t broken = 0xFFFD;

Decoded decode(std::string_view text) {
    const auto lead = static_cast<unsigned char>(text[0]);
    if (lead < 0x80) return {lead, 1};
    const std::size_t more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : lead >= 0xC0 ? 1 : 0;
    if (more == 0 || lead > 0xF4 || text.size() <= more) return {broken, 1};
    char32_t code = lead & (0x3Fu >> more);
    for (std::size_t i = 1; i <= more; ++i) {
        const auto octet = static_cast<unsigned char>(text[i]);
        if ((octet & 0xC0) != 0x80) return {broken, 1};
        code = code << 6 | (octet & 0x3Fu);
    }
    return {code, more + 1};
}

std::int64_t advance(char32_t code, Weight weight) {
    const auto found = std::ranges::lower_bound(b612_advances, code, {}, &Advance::code);
    const Advance& entry = found != b612_advances.end() && found->code == code ? *found : b612_missing;
    return weight == Weight::bold ? entry.bold : entry.normal;
}

/// Scripts in which letters join or stack: a table of advances does not know their widths.
bool needs_shaping(char32_t code) {
    return (code >= 0x0590 && code <= 0x08FF) || (code >= 0x0900 && code <= 0x109F) ||
           (code >= 0x1780 && code <= 0x17FF) || (code >= 0xFB1D && code <= 0xFDFF) ||
           (code >= 0xFE70 && code <= 0xFEFF);
}

}  // namespace text_width_detail

base::Length text_width(std::string_view text, base::Length em, Weight weight, const ShapedWidth& shaped) {
    using namespace text_width_detail;
    std::int64_t units = 0;
    for (std::size_t at = 0; at < text.size();) {
        const auto [code, octets] = decode(text.substr(at));
        if (shaped && needs_shaping(code)) return shaped(text, em, weight);
        units += advance(code, weight);
        at += octets;
    }
    return base::Length::from_count(units * em.count() / b612_units_per_em);
}

std::string elided(std::string_view text, base::Length room, base::Length em, Weight weight) {
    using namespace text_width_detail;
    if (text_width(text, em, weight) <= room) return std::string(text);
    static constexpr std::string_view ellipsis = "\u2026";
    const auto left = room - text_width(ellipsis, em, weight);
    std::size_t kept = 0;
    for (std::size_t at = 0; at < text.size();) {
        at += decode(text.substr(at)).octets;
        if (text_width(text.substr(0, at), em, weight) > left) break;
        kept = at;
    }
    while (kept > 0 && text[kept - 1] == ' ') --kept;
    return std::string(text.substr(0, kept)).append(ellipsis);
}

}  // namespace streamwright::layout
