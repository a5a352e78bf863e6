#include "tests/house/source_tree.h"

#include <algorithm>
#include <fstream>
#include <sstream>

namespace streamwright::test {

std::filesystem::path source_root() { return STREAMWRIGHT_SOURCE_DIR; }

std::vector<SourceFile> sources_below(const std::string& folder) {
    std::vector<SourceFile> files;
    for (const auto& entry : std::filesystem::recursive_directory_iterator(source_root() / folder)) {
        const auto ending = entry.path().extension();
        if (ending != ".h" && ending != ".cpp") continue;
        std::ifstream in(entry.path(), std::ios::binary);
        std::ostringstream text;
        text << in.rdbuf();
        files.push_back({std::filesystem::relative(entry.path(), source_root()).generic_string(), text.str()});
    }
    std::ranges::sort(files, {}, &SourceFile::path);
    return files;
}

std::vector<std::string> stems_in(const std::string& folder, const std::string& ending) {
    std::vector<std::string> stems;
    for (const auto& entry : std::filesystem::directory_iterator(source_root() / folder))
        if (entry.path().extension() == ending) stems.push_back(entry.path().stem().string());
    std::ranges::sort(stems);
    return stems;
}

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) lines.push_back(line);
    return lines;
}

}  // namespace streamwright::test
