// Stepping through UTF-8 without trusting it.
#pragma once

#include <cstddef>
#include <string_view>

namespace streamwright::base {

/// Octets of the well-formed character at that place (RFC 3629: shortest form, no surrogates, up to U+10FFFF); 0 if
/// there is none.
std::size_t utf8_length(std::string_view text, std::size_t at);

}  // namespace streamwright::base
