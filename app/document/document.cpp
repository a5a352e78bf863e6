#include "app/document/document.h"

#include "app/undo/edit_command.h"
#include "app/words/words.h"
#include "core/layout/turned_plates.h"

#include <fstream>
#include <iterator>

namespace streamwright::app {

namespace fs = std::filesystem;

model::Design fresh_design(base::IdSource& ids) {
    model::Design design;
    model::Settings settings;
    settings.title = QObject::tr("Untitled design").toStdString();
    settings.status = QObject::tr("in preparation").toStdString();
    design.settings_table.put(settings);
    model::Sheet sheet{.id = ids.next<model::SheetId>()};
    sheet.title = QObject::tr("Schematic").toStdString();
    design.sheets.put(sheet);
    return design;
}

Document::Document(fs::path state_folder, QObject* parent)
    : QObject(parent), state_folder_(std::move(state_folder)), ids_(base::IdSource::from_entropy()) {
    connect(&worker_, &AnalysisWorker::answered, this, &Document::take_answer);
    connect(&history_, &QUndoStack::cleanChanged, this, &Document::file_changed);
    connect(&journal_, &JournalKeeper::failed, this,
            [this](const base::Error& error) { Q_EMIT journal_failed(sentence(error)); });
    start_new();
}

Document::~Document() {
    worker_.cancel();
    history_.disconnect(this);
}

std::vector<analysis::Reported> Document::reported() const { return analysis::report(design_, analyser_->findings()); }

bool Document::commit(const base::Result<model::Delta>& delta, const QString& words) {
    if (!delta) {
        Q_EMIT refused(sentence(delta.error()));
        return false;
    }
    if (delta->empty()) return true;
    history_.push(new EditCommand(layout::with_turned_plates(design_, *delta), words,
                                  [this](const model::Delta& each) { apply(each); }));
    return true;
}

void Document::apply(const model::Delta& delta) {
    const auto start = std::chrono::steady_clock::now();
    model::apply(design_, delta);
    journal_.append(delta);
    const auto findings = analyser_->update(design_, delta);
    check_time_ = std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - start);
    ask_worker();
    Q_EMIT changed(delta, findings);
}

void Document::ask_worker() {
    if (analyser_->deferred_pending())
        worker_.ask(analyser_->frozen(), analyser_->revision());
    else
        worker_.cancel();
}

void Document::take_answer(quint64 revision, const std::shared_ptr<analysis::Deferred>& deferred) {
    if (revision != analyser_->revision()) return;
    const auto findings = analyser_->take_deferred(revision, std::move(*deferred));
    Q_EMIT changed(model::Delta(), findings);
}

void Document::replace(model::Design design) {
    worker_.cancel();
    history_.clear();
    design_ = std::move(design);
    const auto start = std::chrono::steady_clock::now();
    analyser_ = std::make_unique<analysis::Analyser>(design_);
    check_time_ = std::chrono::duration_cast<std::chrono::microseconds>(std::chrono::steady_clock::now() - start);
    ask_worker();
}

void Document::follow_unsaved() {
    if (state_folder_.empty()) {
        journal_.stop();
        return;
    }
    const auto file = unsaved_folder(state_folder_) / (ids_.next<model::DeviceId>().text() + ".streamwright");
    std::error_code ignored;
    fs::create_directories(file.parent_path(), ignored);
    lock_ = io::FileLock::take(file);
    journal_.follow(io::journal_path(file), {}, [base = design_] { return model::difference(model::Design(), base); });
}

void Document::start_new() {
    journal_.stop();
    replace(fresh_design(ids_));
    path_.reset();
    digest_.clear();
    follow_unsaved();
    Q_EMIT replaced();
    Q_EMIT file_changed();
}

base::Result<Document::Opened> Document::open(const fs::path& path) {
    auto opened = io::open_design(path);
    if (!opened) return opened.error();
    auto lock = path_ == path && lock_ ? std::move(lock_) : io::FileLock::take(path);
    Opened outcome;
    outcome.copy = !lock;
    journal_.stop();
    replace(std::move(opened->design));
    if (lock) {
        path_ = path;
        digest_ = opened->digest;
        lock_ = std::move(lock);
        if (auto recovery = recovery_for(path)) outcome.recovery = std::move(*recovery);
        journal_.follow(io::journal_path(path), digest_);
    } else {
        path_.reset();
        digest_.clear();
        follow_unsaved();
        history_.resetClean();
    }
    Q_EMIT replaced();
    Q_EMIT file_changed();
    return outcome;
}

void Document::restore(const io::Recovery& recovery) {
    if (!recovery.other_file) {
        commit(model::difference(design_, recovery.design), tr("Restore unsaved work"));
        return;
    }
    // The file has moved on: what was not saved becomes a design of its own, and the file stays as it is.
    const auto journal = path_ ? io::journal_path(*path_) : fs::path();
    journal_.stop();
    replace(recovery.design);
    path_.reset();
    digest_.clear();
    follow_unsaved();
    journal_.append(model::Delta());
    if (!journal.empty()) set_aside(journal);
    history_.resetClean();
    Q_EMIT replaced();
    Q_EMIT file_changed();
}

void Document::restore(Orphan orphan) {
    journal_.stop();
    replace(orphan.recovery.design);
    path_.reset();
    digest_.clear();
    follow_unsaved();
    journal_.append(model::Delta());
    if (state_folder_.empty() || journal_.writing()) {
        std::error_code ignored;
        fs::remove(orphan.journal, ignored);
        fs::remove(displaced_journal(orphan.journal), ignored);
    }
    history_.resetClean();
    Q_EMIT replaced();
    Q_EMIT file_changed();
}

void Document::decline_recovery() {
    if (path_) set_aside(io::journal_path(*path_));
}

base::Result<void> Document::save_as(const fs::path& path) {
    std::unique_ptr<io::FileLock> lock;
    if (path_ != path) {
        lock = io::FileLock::take(path);
        if (!lock) return base::Error{"%1 is open in another program; save under another name.", {path.string()}};
    }
    const auto digest = io::save_design(path, design_);
    if (!digest) return digest.error();
    journal_.remove();
    if (lock) lock_ = std::move(lock);
    path_ = path;
    digest_ = *digest;
    journal_.follow(io::journal_path(path), digest_);
    history_.setClean();
    Q_EMIT file_changed();
    return {};
}

bool Document::changed_on_disk() const {
    if (!path_) return false;
    std::ifstream in(*path_, std::ios::binary);
    if (!in) return false;  // gone: saving makes it again
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    return io::sha256_hex(text) != digest_;
}

QString Document::title() const {
    const auto& title = design_.settings().title;
    if (!title.empty()) return shown(title);
    return path_ ? shown(path_->stem().string()) : tr("Untitled design");
}

void Document::close() {
    worker_.cancel();
    journal_.remove();
    lock_.reset();
}

}  // namespace streamwright::app
