// A journal is lines of "checksum payload". The first payload is a header {format, version, digest}; each other is one
// edit: a list of {table, id, record or null}. A checksum covers the one before it, so that no line can be lost unseen.
#include "core/io/journal.h"

#include "core/io/design_json.h"
#include "core/io/detail/journal_lines.h"
#include "core/io/detail/row_json.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <unistd.h>

namespace streamwright::io {

namespace fs = std::filesystem;

namespace {

base::Error journal_refused(const std::string& where, int reason) {
    return {"The journal %1 cannot be written (%2); save the design now, to a disk with room.",
            {where, std::strerror(reason)}};
}

template <class Row>
void append_changes(std::string& payload, std::string_view table, const std::vector<model::Change<Row>>& changes) {
    for (const auto& change : changes) {
        if (payload.size() > 1) payload += ',';
        payload += "{\"table\":\"" + std::string(table) + "\",\"id\":";
        payload += Json(model::key_text(change.key())).dump(-1, ' ', false, Json::error_handler_t::replace);
        payload += ",\"record\":" + (change.after ? row_text(*change.after) : std::string("null")) + '}';
    }
}

void sync_folder_of(const fs::path& path) {
    const auto folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor < 0) return;
    ::fsync(descriptor);
    ::close(descriptor);
}

bool append_bytes(int descriptor, std::string_view bytes) {
    const auto start = ::lseek(descriptor, 0, SEEK_END);
    while (!bytes.empty()) {
        const auto written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) {
            const int reason = errno;
            // A torn line would hide all that follows it.
            if (::ftruncate(descriptor, start) != 0) errno = reason;
            errno = reason;
            return false;
        }
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return true;
}

}  // namespace

fs::path journal_path(const fs::path& design) {
    auto path = design;
    path += ".journal";
    return path;
}

JournalWriter::JournalWriter(int descriptor, std::string where) : descriptor_(descriptor), where_(std::move(where)) {}

JournalWriter::~JournalWriter() { ::close(descriptor_); }

base::Result<std::unique_ptr<JournalWriter>> JournalWriter::start(const fs::path& journal, const std::string& digest) {
    const int descriptor = ::open(journal.c_str(), O_RDWR | O_CREAT | O_TRUNC | O_APPEND | O_CLOEXEC, 0666);
    if (descriptor < 0) return journal_refused(journal.string(), errno);
    std::unique_ptr<JournalWriter> writer(new JournalWriter(descriptor, journal.string()));
    Json header{{"format", "streamwright-journal"}, {"version", format_version}, {"digest", digest}};
    if (auto written = writer->append_line(header.dump()); !written) return written.error();
    if (auto synced = writer->sync(); !synced) return synced.error();
    sync_folder_of(journal);
    return writer;
}

base::Result<void> JournalWriter::append_line(const std::string& payload) {
    const auto checksum = line_checksum(chain_, payload);
    if (!append_bytes(descriptor_, checksum + ' ' + payload + '\n')) return journal_refused(where_, errno);
    chain_ = checksum;
    return {};
}

base::Result<void> JournalWriter::append(const model::Delta& delta) {
    std::string payload = "[";
    model::for_each_table([&](std::string_view table, auto member) {
        using Row = typename std::remove_reference_t<decltype(std::declval<model::Design>().*member)>::Row;
        append_changes(payload, table, delta.of<Row>());
    });
    if (payload.size() == 1) return {};
    return append_line(payload + ']');
}

base::Result<void> JournalWriter::sync() {
    if (::fsync(descriptor_) != 0) return journal_refused(where_, errno);
    return {};
}

}  // namespace streamwright::io
