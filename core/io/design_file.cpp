#include "core/io/design_file.h"

#include "core/io/atomic_write.h"
#include "core/io/design_json.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace streamwright::io {

namespace fs = std::filesystem;

namespace {

struct ReadDescriptor {
    int number;
    explicit ReadDescriptor(const fs::path& path) : number(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK)) {}
    ~ReadDescriptor() {
        if (number >= 0) ::close(number);
    }
    ReadDescriptor(const ReadDescriptor&) = delete;
    ReadDescriptor& operator=(const ReadDescriptor&) = delete;
};

base::Error unreadable(const fs::path& path, int reason) {
    const char* cure = "Check the disk and try again.";
    if (reason == ENOENT || reason == ENOTDIR) cure = "Check its name and folder.";
    if (reason == EACCES || reason == EPERM) cure = "Ask for leave to read it.";
    return {"%1 cannot be read: %2. %3", {path.string(), std::strerror(reason), cure}};
}

base::Result<std::string> read_text(const fs::path& path) {
    const ReadDescriptor file(path);
    struct stat facts {};
    if (file.number < 0 || ::fstat(file.number, &facts) != 0) return unreadable(path, errno);
    if (!S_ISREG(facts.st_mode))
        return base::Error{"%1 is not a file but a folder or device; open a design file.", {path.string()}};
    if (static_cast<std::uint64_t>(facts.st_size) > size_limit)
        return base::Error{"%1 is larger than %2 MiB, the most a design may have; check that it is the right file.",
                           {path.string(), std::to_string(size_limit >> 20U)}};
    std::string text(static_cast<std::size_t>(facts.st_size), '\0');
    std::size_t filled = 0;
    while (filled < text.size()) {
        const auto got = ::read(file.number, text.data() + filled, text.size() - filled);
        if (got < 0 && errno == EINTR) continue;
        if (got < 0) return unreadable(path, errno);
        if (got == 0) break;  // became shorter meanwhile; the parser will say so
        filled += static_cast<std::size_t>(got);
    }
    text.resize(filled);
    return text;
}

/// Beside the design, not the design itself: a save replaces the file, and a lock would stay on the old one.
fs::path lock_path(const fs::path& design) {
    std::error_code trouble;
    auto real = fs::weakly_canonical(design, trouble);
    if (trouble) real = design;
    return real.parent_path() / ('.' + real.filename().string() + ".lock");
}

/// Whether the path still names the file that is open: a holder removes it when it lets go.
bool still_names(const fs::path& path, int descriptor) {
    struct stat open_file {
    }, named{};
    return ::fstat(descriptor, &open_file) == 0 && ::stat(path.c_str(), &named) == 0 &&
           open_file.st_ino == named.st_ino && open_file.st_dev == named.st_dev;
}

}  // namespace

base::Result<OpenedDesign> open_design(const fs::path& path) {
    const auto text = read_text(path);
    if (!text) return text.error();
    auto design = read_design(*text, path.string());
    if (!design) return design.error();
    return OpenedDesign{std::move(*design), sha256_hex(*text)};
}

base::Result<std::string> save_design(const fs::path& path, const model::Design& design) {
    const auto text = write_design(design);
    if (text.size() > size_limit)
        return base::Error{"%1 would be larger than %2 MiB and could not be opened again; it was not saved.",
                           {path.string(), std::to_string(size_limit >> 20U)}};
    if (auto written = write_atomically(path, text); !written) return written.error();
    return sha256_hex(text);
}

FileLock::FileLock(int descriptor, fs::path path) : descriptor_(descriptor), path_(std::move(path)) {}

FileLock::~FileLock() {
    if (descriptor_ < 0) return;
    ::unlink(path_.c_str());
    ::close(descriptor_);
}

std::unique_ptr<FileLock> FileLock::take(const fs::path& design) {
    const auto path = lock_path(design);
    for (int attempt = 0; attempt < 100; ++attempt) {
        const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC, 0666);
        // Where no lock can be kept (a folder that may only be read), nobody can save either.
        if (descriptor < 0) return std::unique_ptr<FileLock>(new FileLock(-1, path));
        if (::flock(descriptor, LOCK_EX | LOCK_NB) != 0) {
            const bool held = errno == EWOULDBLOCK;
            ::close(descriptor);
            return held ? nullptr : std::unique_ptr<FileLock>(new FileLock(-1, path));
        }
        if (still_names(path, descriptor)) return std::unique_ptr<FileLock>(new FileLock(descriptor, path));
        ::close(descriptor);
    }
    return nullptr;
}

}  // namespace streamwright::io
