#include "core/standards/host_name.h"

#include <algorithm>

namespace streamwright::standards {

namespace host_name_detail {

constexpr bool small(char c) { return c >= 'a' && c <= 'z'; }
constexpr bool capital(char c) { return c >= 'A' && c <= 'Z'; }
constexpr bool digit(char c) { return c >= '0' && c <= '9'; }
constexpr bool plain(char c) { return small(c) || capital(c) || digit(c); }

}  // namespace host_name_detail

bool is_host_label(std::string_view text) {
    using namespace host_name_detail;
    if (text.empty() || text.size() > longest_host_label) return false;
    if (!plain(text.front()) || !plain(text.back())) return false;
    return std::all_of(text.begin(), text.end(), [](char c) { return plain(c) || c == '-'; });
}

std::string host_label(std::string_view tag) {
    using namespace host_name_detail;
    std::string label;
    bool gap = false;
    for (const char c : tag) {
        if (!plain(c)) {
            gap = true;
            continue;
        }
        if (gap && !label.empty()) label += '-';
        gap = false;
        label += capital(c) ? static_cast<char>(c - 'A' + 'a') : c;
    }
    if (label.size() > longest_host_label) label.resize(longest_host_label);
    while (!label.empty() && label.back() == '-') label.pop_back();
    return label;
}

}  // namespace streamwright::standards
