#include "app/views/file_actions.h"

#include "app/words/words.h"

#include <QAction>
#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QFileInfo>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QSettings>

namespace streamwright::app {

namespace file_actions_detail {

constexpr int most_recent = 8;

QString name_filter() { return FileActions::tr("Designs (*.streamwright)"); }

std::filesystem::path path_of(const QString& text) { return text.toStdString(); }

/// "2 devices, 1 cable, 4 other records": what the unsaved edits touch.
QString touched_words(const model::Delta& delta) {
    const auto devices = static_cast<int>(delta.of<model::Device>().size());
    const auto cables = static_cast<int>(delta.of<model::Cable>().size());
    const auto streams = static_cast<int>(delta.of<model::Stream>().size());
    const auto all = std::apply([](const auto&... list) { return static_cast<int>((list.size() + ...)); }, delta.lists);
    const int others = all - devices - cables - streams;
    QStringList words;
    if (devices > 0) words << (devices == 1 ? FileActions::tr("1 device") : FileActions::tr("%1 devices").arg(devices));
    if (cables > 0) words << (cables == 1 ? FileActions::tr("1 cable") : FileActions::tr("%1 cables").arg(cables));
    if (streams > 0) words << (streams == 1 ? FileActions::tr("1 stream") : FileActions::tr("%1 streams").arg(streams));
    if (others > 0)
        words << (others == 1 ? FileActions::tr("1 other record") : FileActions::tr("%1 other records").arg(others));
    return words.join(QStringLiteral(", "));
}

QString kept_words(const std::filesystem::path& journal) {
    return FileActions::tr("What you leave out is kept as %1.").arg(shown(kept_path(journal).string()));
}

}  // namespace file_actions_detail

QString examples_folder() {
    for (const auto& folder : {QCoreApplication::applicationDirPath() + QStringLiteral("/../share/streamwright/demo"),
                               QStringLiteral(STREAMWRIGHT_EXAMPLES)})
        if (QDir(folder).exists()) return QDir(folder).absolutePath();
    return QDir::homePath();
}

FileActions::FileActions(Document& document, QWidget& window)
    : QObject(&window), document_(document), window_(window) {}

void FileActions::complain(const QString& words) { QMessageBox::warning(&window_, tr("Streamwright"), words); }

void FileActions::start_new() {
    if (!may_leave()) return;
    document_.close();
    document_.start_new();
}

void FileActions::ask_open(const QString& folder) {
    QSettings settings;
    const auto from = folder.isEmpty() ? settings.value(QStringLiteral("folder"), QDir::homePath()).toString() : folder;
    const auto path =
        QFileDialog::getOpenFileName(&window_, tr("Open a design"), from, file_actions_detail::name_filter());
    if (!path.isEmpty()) open(path);
}

bool FileActions::open(const QString& path) {
    if (!may_leave()) return false;
    auto opened = document_.open(file_actions_detail::path_of(QFileInfo(path).absoluteFilePath()));
    if (!opened) {
        complain(sentence(opened.error()));
        return false;
    }
    remember(path);
    if (opened->copy)
        complain(tr("%1 is open in another window or program. You see a copy; save it under another name to keep "
                    "what you change.")
                     .arg(path));
    if (opened->recovery) offer(*opened->recovery);
    return true;
}

void FileActions::offer(const io::Recovery& recovery) {
    QMessageBox box(&window_);
    box.setWindowTitle(tr("Unsaved work found"));
    box.setText(recovery.records == 1 ? tr("The program ended before the last edit was saved.")
                                      : tr("The program ended before %1 edits were saved.").arg(recovery.records));
    QString more = recovery.other_file ? tr("The file was changed since, so they are offered as a design of their own.")
                                       : tr("Restoring is one edit; Undo takes it back.");
    if (recovery.cut_short) more += ' ' + tr("The last of them was damaged and is left out.");
    const auto touched = file_actions_detail::touched_words(model::difference(document_.design(), recovery.design));
    if (!touched.isEmpty()) more = tr("They change %1.").arg(touched) + ' ' + more;
    if (document_.path()) more += ' ' + file_actions_detail::kept_words(io::journal_path(*document_.path()));
    box.setInformativeText(more);
    auto* restore = box.addButton(tr("Restore"), QMessageBox::AcceptRole);
    box.addButton(tr("Leave them out"), QMessageBox::RejectRole);
    box.setDefaultButton(restore);
    box.exec();
    if (box.clickedButton() == restore)
        document_.restore(recovery);
    else
        document_.decline_recovery();
}

void FileActions::offer_orphans(const std::filesystem::path& state_folder) {
    for (auto& orphan : orphans_in(state_folder)) {
        const auto& settings = orphan.recovery.design.settings();
        const auto title = settings.title.empty() ? tr("Untitled design") : shown(settings.title);
        const auto devices = orphan.recovery.design.devices.size();
        QMessageBox box(&window_);
        box.setWindowTitle(tr("Unsaved design found"));
        box.setText(tr("'%1', with %2, was never saved before the program ended.")
                        .arg(title)
                        .arg(devices == 1 ? tr("1 device") : tr("%1 devices").arg(devices)));
        auto* restore = box.addButton(tr("Restore"), QMessageBox::AcceptRole);
        box.setInformativeText(file_actions_detail::kept_words(orphan.journal));
        auto* leave = box.addButton(tr("Leave it out"), QMessageBox::DestructiveRole);
        box.addButton(tr("Ask again later"), QMessageBox::RejectRole);
        box.setDefaultButton(restore);
        box.exec();
        if (box.clickedButton() == leave) set_aside(orphan.journal);
        if (box.clickedButton() != restore) continue;
        document_.restore(std::move(orphan));
        return;  // others are offered at the next start
    }
}

bool FileActions::save() {
    if (!document_.path()) return save_as();
    if (document_.changed_on_disk()) {
        const auto answer = QMessageBox::question(
            &window_, tr("The file was changed"),
            tr("%1 was changed by another program since you opened it. Overwrite it with what you see here?")
                .arg(shown(document_.path()->string())),
            QMessageBox::Save | QMessageBox::Cancel, QMessageBox::Cancel);
        if (answer != QMessageBox::Save) return false;
    }
    const auto saved = document_.save_as(*document_.path());
    if (!saved) complain(sentence(saved.error()));
    return saved.ok();
}

bool FileActions::save_as() {
    QSettings settings;
    const auto folder = document_.path() ? shown(document_.path()->string())
                                         : settings.value(QStringLiteral("folder"), QDir::homePath()).toString() + '/' +
                                               document_.title() + QStringLiteral(".streamwright");
    auto path =
        QFileDialog::getSaveFileName(&window_, tr("Save the design as"), folder, file_actions_detail::name_filter());
    if (path.isEmpty()) return false;
    if (!path.endsWith(QLatin1String(".streamwright"))) path += QStringLiteral(".streamwright");
    const auto saved = document_.save_as(file_actions_detail::path_of(path));
    if (!saved) {
        complain(sentence(saved.error()));
        return false;
    }
    remember(path);
    return true;
}

bool FileActions::may_leave() {
    if (!document_.modified()) return true;
    QMessageBox box(&window_);
    box.setWindowTitle(tr("Unsaved edits"));
    box.setText(tr("'%1' has edits that are not saved.").arg(document_.title()));
    box.setStandardButtons(QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel);
    box.setDefaultButton(QMessageBox::Save);
    switch (box.exec()) {
        case QMessageBox::Save:
            if (!save()) return false;
            break;
        case QMessageBox::Discard:
            break;
        default:
            return false;
    }
    document_.close();
    return true;
}

void FileActions::remember(const QString& path) {
    QSettings settings;
    const QFileInfo info(path);
    settings.setValue(QStringLiteral("folder"), info.absolutePath());
    auto recent = settings.value(QStringLiteral("recent")).toStringList();
    recent.removeAll(info.absoluteFilePath());
    recent.prepend(info.absoluteFilePath());
    settings.setValue(QStringLiteral("recent"), recent.mid(0, file_actions_detail::most_recent));
}

void FileActions::fill_recent(QMenu& menu) {
    menu.clear();
    for (const auto& path : QSettings().value(QStringLiteral("recent")).toStringList()) {
        if (!QFileInfo::exists(path)) continue;
        auto* action = menu.addAction(QFileInfo(path).fileName());
        action->setToolTip(path);
        connect(action, &QAction::triggered, this, [this, path] { open(path); });
    }
    if (menu.isEmpty()) menu.addAction(tr("No design opened yet"))->setEnabled(false);
}

}  // namespace streamwright::app
