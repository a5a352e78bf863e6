// The project's own sources as text, for tests that hold the house to its plan.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace streamwright::test {

std::filesystem::path source_root();

struct SourceFile {
    std::string path;  // from the root, with slashes
    std::string text;
};

/// The .h and .cpp files below a folder, sorted.
std::vector<SourceFile> sources_below(const std::string& folder);

/// Names without ending of the files with that ending directly in a folder, sorted.
std::vector<std::string> stems_in(const std::string& folder, const std::string& ending);

std::vector<std::string> lines_of(const std::string& text);

}  // namespace streamwright::test
