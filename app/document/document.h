// The open design: its value, its history, its findings, its file. All changes pass through commit(); everyone else
// listens to changed().
#pragma once

#include "app/document/analysis_worker.h"
#include "app/document/journal_keeper.h"
#include "app/document/recovery.h"
#include "core/analysis/analyser.h"
#include "core/analysis/report.h"
#include "core/base/id.h"
#include "core/base/result.h"
#include "core/model/edits/all_edits.h"

#include <QObject>
#include <QUndoStack>

#include <chrono>
#include <filesystem>
#include <memory>
#include <optional>

namespace streamwright::app {

class Document final : public QObject {
    Q_OBJECT

public:
    /// `state_folder` keeps the journals of designs never saved; empty: none are kept.
    explicit Document(std::filesystem::path state_folder = {}, QObject* parent = nullptr);
    ~Document() override;

    const model::Design& design() const { return design_; }
    const analysis::Analyser& analyser() const { return *analyser_; }
    std::vector<analysis::Reported> reported() const;
    QUndoStack& history() { return history_; }
    base::IdSource& ids() { return ids_; }
    JournalKeeper& journal() { return journal_; }
    std::chrono::microseconds check_time() const { return check_time_; }

    /// Makes the change undoable and applies it. A refusal is announced by refused() and changes nothing; a delta that
    /// changes nothing is dropped. Whether the design is as asked.
    bool commit(const base::Result<model::Delta>& delta, const QString& words);
    template <class Edit>
    bool edit(const Edit& edit, const QString& words) {
        return commit(model::make_edit(design_, model::AnyEdit(edit)), words);
    }

    void start_new();
    /// Opens a file, or leaves everything as it was. `copy`: another program holds the file, so this is a copy of it.
    struct Opened {
        bool copy = false;
        std::optional<io::Recovery> recovery;  // offered, not applied
    };
    base::Result<Opened> open(const std::filesystem::path& path);
    /// Applies a recovery of the open file as one undoable edit, or as a design of its own where it continues another
    /// version of the file.
    void restore(const io::Recovery& recovery);
    /// A design never saved that was left behind becomes the open one.
    void restore(Orphan orphan);
    void decline_recovery();
    base::Result<void> save_as(const std::filesystem::path& path);
    /// Whether the file was changed by something else since it was opened or saved here.
    bool changed_on_disk() const;

    const std::optional<std::filesystem::path>& path() const { return path_; }
    bool modified() const { return !history_.isClean(); }
    QString title() const;

    /// Ends well: the journal of edits that the user gave up, or that are saved, goes.
    void close();

Q_SIGNALS:
    void changed(const model::Delta& delta, const analysis::FindingsChange& findings);
    void replaced();      // another design is open
    void file_changed();  // path, saved state
    void refused(const QString& why);
    void journal_failed(const QString& why);

private:
    void apply(const model::Delta& delta);
    void replace(model::Design design);
    void ask_worker();
    void take_answer(quint64 revision, const std::shared_ptr<analysis::Deferred>& deferred);
    void follow_unsaved();

    std::filesystem::path state_folder_;
    base::IdSource ids_;
    model::Design design_;
    std::unique_ptr<analysis::Analyser> analyser_;
    QUndoStack history_;
    AnalysisWorker worker_;
    JournalKeeper journal_;
    std::chrono::microseconds check_time_{0};
    std::optional<std::filesystem::path> path_;
    std::string digest_;
    std::unique_ptr<io::FileLock> lock_;
};

/// An empty design with one sheet.
model::Design fresh_design(base::IdSource& ids);

}  // namespace streamwright::app
