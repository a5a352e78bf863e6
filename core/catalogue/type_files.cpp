#include "core/catalogue/type_files.h"

#include <algorithm>
#include <fstream>
#include <iterator>
#include <system_error>

namespace streamwright::catalogue {

namespace fs = std::filesystem;

base::Error too_large_for_a_type(const std::string& where) {
    return {"%1 is over the limit of 1 MiB for one type; check that it is the right file.", {where}};
}

base::Error misnamed(const fs::path& path, const std::string& key) {
    return {"%1: key: is \"%2\"; it must be the name of the file, so rename one of the two.", {path.string(), key}};
}

base::Result<std::vector<fs::path>> type_files(const fs::path& folder) {
    std::vector<fs::path> files;
    std::error_code trouble;
    for (fs::directory_iterator at(folder, trouble), end; !trouble && at != end; at.increment(trouble))
        if (at->path().extension() == ".json") files.push_back(at->path());
    if (trouble)
        return base::Error{"The folder %1 cannot be read: %2. Check its name and its rights.",
                           {folder.string(), trouble.message()}};
    std::sort(files.begin(), files.end());
    return files;
}

base::Result<std::string> read_type_file(const fs::path& path) {
    std::error_code trouble;
    const auto size = fs::file_size(path, trouble);
    if (trouble)
        return base::Error{"%1 cannot be read: %2. Check that it is a file, and its rights.",
                           {path.string(), trouble.message()}};
    if (size > type_file_limit) return too_large_for_a_type(path.string());
    std::ifstream file(path, std::ios::binary);
    std::string text((std::istreambuf_iterator<char>(file)), {});
    if (!file.is_open() || file.bad()) return base::Error{"%1 cannot be read; check its rights.", {path.string()}};
    return text;
}

}  // namespace streamwright::catalogue
