// The lines of a journal and their checksums.
#pragma once

#include "core/io/sha256.h"

#include <string>
#include <string_view>

namespace streamwright::io {

inline constexpr std::size_t checksum_length = 16;  // 64 bits of SHA-256: damage, not forgery, is what it must see

inline std::string line_checksum(std::string_view before, std::string_view payload) {
    return sha256_hex(std::string(before) + std::string(payload)).substr(0, checksum_length);
}

}  // namespace streamwright::io
