#include "core/io/atomic_write.h"

#include <atomic>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <optional>
#include <string>
#include <sys/stat.h>
#include <unistd.h>

namespace streamwright::io {

namespace fs = std::filesystem;

namespace {

base::Error write_refused(const fs::path& path, const char* step, int reason) {
    const char* cure = "Check the disk and try again, or save to another folder.";
    if (reason == EACCES || reason == EPERM || reason == EROFS)
        cure = "Save to another folder, or ask for leave to write here.";
    if (reason == ENOENT || reason == ENOTDIR) cure = "Make the folder first, or save to another one.";
    if (reason == ENOSPC || reason == EDQUOT || reason == EFBIG) cure = "Make room, or save to another disk.";
    return {"%1 could not be saved: %2 failed (%3); the file is as it was. %4",
            {path.string(), step, std::strerror(reason), cure}};
}

/// A temporary file that goes away unless it was renamed.
struct TemporaryFile {
    fs::path path;
    int descriptor = -1;

    TemporaryFile() = default;
    TemporaryFile(const TemporaryFile&) = delete;
    TemporaryFile& operator=(const TemporaryFile&) = delete;
    ~TemporaryFile() {
        if (descriptor >= 0) ::close(descriptor);
        if (!path.empty()) ::unlink(path.c_str());
    }
};

bool open_beside(TemporaryFile& file, const fs::path& folder) {
    static std::atomic<unsigned> counter{0};
    for (int attempt = 0; attempt < 1000; ++attempt) {
        const auto name = ".streamwright-" + std::to_string(::getpid()) + '-' + std::to_string(counter++) + ".tmp";
        const auto path = folder / name;
        file.descriptor = ::open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
        if (file.descriptor >= 0) {
            file.path = path;
            return true;
        }
        if (errno != EEXIST) return false;
    }
    return false;
}

bool write_all(int descriptor, std::string_view bytes) {
    while (!bytes.empty()) {
        const auto written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

void keep_permissions(int descriptor, const fs::path& old) {
    struct stat held {};
    if (::stat(old.c_str(), &held) != 0) return;
    // The owner can be kept by the superuser only; the mode is what matters and is kept even where that fails.
    [[maybe_unused]] const int owner = ::fchown(descriptor, held.st_uid, held.st_gid);
    [[maybe_unused]] const int mode = ::fchmod(descriptor, held.st_mode & 07777U);
}

/// The file that a chain of symbolic links leads to, which need not exist yet.
fs::path link_target(fs::path path) {
    std::error_code trouble;
    for (int steps = 0; steps < 40 && fs::is_symlink(path, trouble); ++steps) {
        const auto target = fs::read_symlink(path, trouble);
        if (trouble) return path;
        path = target.is_absolute() ? target : path.parent_path() / target;
    }
    return path;
}

std::optional<base::Error> sync_folder(const fs::path& folder, const fs::path& path) {
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return std::nullopt;  // a folder that may be written but not read
    const bool synced = ::fsync(descriptor) == 0 || errno == EINVAL;
    const int reason = errno;
    ::close(descriptor);
    if (synced) return std::nullopt;
    return base::Error{"%1 was saved, but the disk did not confirm it (%2). Save again to be sure.",
                       {path.string(), std::strerror(reason)}};
}

}  // namespace

base::Result<void> write_atomically(const fs::path& path, std::string_view bytes) {
    const auto target = link_target(path);
    const auto folder = target.has_parent_path() ? target.parent_path() : fs::path(".");
    std::error_code ignored;
    if (fs::is_directory(target, ignored)) return write_refused(path, "replacing a folder by a file", EISDIR);
    TemporaryFile file;
    if (!open_beside(file, folder)) return write_refused(path, "making a file in the folder", errno);
    keep_permissions(file.descriptor, target);
    if (!write_all(file.descriptor, bytes)) return write_refused(path, "writing", errno);
    if (::fsync(file.descriptor) != 0) return write_refused(path, "writing to the disk", errno);
    const int closed = ::close(file.descriptor);
    file.descriptor = -1;
    if (closed != 0) return write_refused(path, "writing", errno);
    if (::rename(file.path.c_str(), target.c_str()) != 0) return write_refused(path, "replacing the old file", errno);
    file.path.clear();
    if (const auto trouble = sync_folder(folder, path)) return *trouble;
    return {};
}

}  // namespace streamwright::io
