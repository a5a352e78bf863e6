// Design files on disk: opening, saving, and noticing that another program has the same file open.
#pragma once

#include "core/base/result.h"
#include "core/io/sha256.h"
#include "core/model/design.h"

#include <filesystem>
#include <memory>
#include <string>

namespace streamwright::io {

struct OpenedDesign {
    model::Design design;
    std::string digest;  // SHA-256 of the file's bytes, in hex
};

base::Result<OpenedDesign> open_design(const std::filesystem::path& path);
/// The digest of what was written.
base::Result<std::string> save_design(const std::filesystem::path& path, const model::Design& design);

/// Held while a program has the file open; released with it, also when the program dies. A second holder is told.
class FileLock {
public:
    /// Null if another process holds it.
    static std::unique_ptr<FileLock> take(const std::filesystem::path& design);
    ~FileLock();
    FileLock(const FileLock&) = delete;
    FileLock& operator=(const FileLock&) = delete;

private:
    FileLock(int descriptor, std::filesystem::path path);
    int descriptor_;
    std::filesystem::path path_;
};

}  // namespace streamwright::io
