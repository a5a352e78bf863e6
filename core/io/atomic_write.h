// Writing a file so that at every moment either the old or the new content is there, whole: temporary file beside it,
// fsync, rename, directory fsync.
#pragma once

#include "core/base/result.h"

#include <filesystem>
#include <string_view>

namespace streamwright::io {

/// Keeps the permissions of the file it replaces; follows a symbolic link to its target. On any failure the old file
/// is untouched, the temporary one gone, and the error says what, where and what to do.
base::Result<void> write_atomically(const std::filesystem::path& path, std::string_view bytes);

}  // namespace streamwright::io
