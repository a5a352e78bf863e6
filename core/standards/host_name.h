// Host names: what a label may hold, and the label that a tag of a drawing makes.
#pragma once

#include "core/standards/citation.h"

#include <string>
#include <string_view>

namespace streamwright::standards {

inline constexpr std::size_t longest_host_label = 63;
inline constexpr Citation host_label_source{"IETF", "RFC 1123", "section 2.1 (with RFC 952 and RFC 1035 2.3.4)"};

/// Letters, digits and hyphens, 1 to 63 of them, no hyphen first or last.
bool is_host_label(std::string_view text);

/// Letters in lower case (case never tells names apart, RFC 1035 2.3.3), digits kept, everything between them one
/// hyphen, cut at 63; empty where the tag holds neither letter nor digit.
std::string host_label(std::string_view tag);

}  // namespace streamwright::standards
