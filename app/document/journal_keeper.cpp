#include "app/document/journal_keeper.h"

#include <QMetaObject>

#include <chrono>

namespace streamwright::app {

namespace fs = std::filesystem;
using namespace std::chrono_literals;

namespace journal_keeper_detail {
/// Edits of one gesture share an fsync; well within the promised 250 ms.
constexpr auto gather = 100ms;
}  // namespace journal_keeper_detail

fs::path displaced_journal(const fs::path& journal) {
    auto path = journal;
    path += ".old";
    return path;
}

JournalKeeper::JournalKeeper(QObject* parent) : QObject(parent), thread_([this](std::stop_token s) { run(s); }) {}

JournalKeeper::~JournalKeeper() {
    thread_.request_stop();
    wake_.notify_all();
    thread_.join();
    if (writer_) (void)writer_->sync();
}

void JournalKeeper::follow(fs::path journal, std::string digest, std::function<model::Delta()> base) {
    stop();
    path_ = std::move(journal);
    digest_ = std::move(digest);
    base_ = std::move(base);
    refused_ = false;
}

void JournalKeeper::stop() {
    writer_.reset();
    path_.clear();
    const std::lock_guard lock(mutex_);
    unsynced_.reset();
}

bool JournalKeeper::start() {
    std::error_code ignored;
    fs::create_directories(path_.parent_path(), ignored);
    const bool displaces = fs::exists(path_, ignored);
    if (displaces) fs::rename(path_, displaced_journal(path_), ignored);
    auto started = io::JournalWriter::start(path_, digest_);
    if (!started) {
        refused_ = true;
        Q_EMIT failed(started.error());
        return false;
    }
    writer_ = std::move(started).value();
    return true;
}

void JournalKeeper::append(const model::Delta& delta) {
    if (path_.empty() || refused_) return;
    const bool fresh = !writer_;
    if (fresh && !start()) return;
    if (fresh && base_)
        if (auto written = writer_->append(base_()); !written) Q_EMIT failed(written.error());
    if (auto written = writer_->append(delta); !written) {
        Q_EMIT failed(written.error());
        return;
    }
    {
        const std::lock_guard lock(mutex_);
        unsynced_ = writer_;
    }
    wake_.notify_all();
}

void JournalKeeper::remove() {
    const auto path = path_;
    stop();
    std::error_code ignored;
    if (path.empty()) return;
    fs::remove(path, ignored);
    fs::remove(displaced_journal(path), ignored);
}

bool JournalKeeper::confirmed() {
    const std::lock_guard lock(mutex_);
    return !unsynced_ && !syncing_;
}

void JournalKeeper::run(const std::stop_token& closing) {
    std::unique_lock lock(mutex_);
    while (!closing.stop_requested()) {
        if (!wake_.wait(lock, closing, [&] { return unsynced_ != nullptr; })) return;
        wake_.wait_for(lock, closing, journal_keeper_detail::gather, [] { return false; });
        auto writer = std::exchange(unsynced_, nullptr);
        if (!writer) continue;
        syncing_ = true;
        lock.unlock();
        auto synced = writer->sync();
        writer.reset();
        if (!synced)
            QMetaObject::invokeMethod(
                this, [this, error = synced.error()] { Q_EMIT failed(error); }, Qt::QueuedConnection);
        lock.lock();
        syncing_ = false;
    }
}

}  // namespace streamwright::app
