// The files of types: which there are, and their text, within bounds.
#pragma once

#include "core/base/result.h"

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

namespace streamwright::catalogue {

inline constexpr std::size_t type_file_limit = std::size_t{1} << 20;  // octets; a type is a page or two of text

base::Error too_large_for_a_type(const std::string& where);
/// A type's key is the name of its file, so that each is found where it is looked for.
base::Error misnamed(const std::filesystem::path& path, const std::string& key);

/// The *.json directly in a folder, by name.
base::Result<std::vector<std::filesystem::path>> type_files(const std::filesystem::path& folder);
/// Refuses what is no file, and what is too large before any of it is read.
base::Result<std::string> read_type_file(const std::filesystem::path& path);

}  // namespace streamwright::catalogue
