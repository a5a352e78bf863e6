// SHA-256 (FIPS 180-4), for digests of files and checksums of journal records.
#pragma once

#include <string>
#include <string_view>

namespace streamwright::io {

std::string sha256_hex(std::string_view bytes);

}  // namespace streamwright::io
