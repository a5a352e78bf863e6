// Writes each edit to the journal at once and has it fsynced by a thread within a quarter of a second.
#pragma once

#include "core/io/journal.h"

#include <QObject>

#include <condition_variable>
#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <thread>

namespace streamwright::app {

class JournalKeeper final : public QObject {
    Q_OBJECT

public:
    explicit JournalKeeper(QObject* parent = nullptr);
    ~JournalKeeper() override;

    /// Where edits go from now on; the file is made at the first of them. `digest` names the saved file it continues,
    /// empty for a design never saved; then `base` is what the journal must hold before the first edit.
    void follow(std::filesystem::path journal, std::string digest, std::function<model::Delta()> base = {});
    /// No journal from now on; the file stays.
    void stop();
    void append(const model::Delta& delta);
    /// The edits are in the design's file now, or unwanted: the journal goes.
    void remove();
    /// Whether every edit so far has been fsynced.
    bool confirmed();
    bool writing() const { return writer_ != nullptr; }

Q_SIGNALS:
    void failed(const base::Error& error);

private:
    bool start();
    void run(const std::stop_token& closing);

    std::filesystem::path path_;
    std::string digest_;
    std::function<model::Delta()> base_;
    std::shared_ptr<io::JournalWriter> writer_;
    bool refused_ = false;

    std::mutex mutex_;
    std::condition_variable_any wake_;
    std::shared_ptr<io::JournalWriter> unsynced_;
    bool syncing_ = false;
    std::jthread thread_;
};

/// The journal that a fresh one displaced, kept until the fresh one holds what it held.
std::filesystem::path displaced_journal(const std::filesystem::path& journal);

}  // namespace streamwright::app
