// New, open, save: the questions asked around them, so that nothing is lost unasked.
#pragma once

#include "app/document/document.h"

#include <QObject>

class QMenu;
class QWidget;

namespace streamwright::app {

class FileActions final : public QObject {
    Q_OBJECT

public:
    FileActions(Document& document, QWidget& window);

    void start_new();
    void ask_open(const QString& folder = {});
    bool open(const QString& path);
    bool save();
    bool save_as();
    /// Asks about unsaved edits; whether to go on.
    bool may_leave();
    /// Offers designs that a crash left behind.
    void offer_orphans(const std::filesystem::path& state_folder);
    void fill_recent(QMenu& menu);

private:
    void offer(const io::Recovery& recovery);
    void remember(const QString& path);
    void complain(const QString& words);

    Document& document_;
    QWidget& window_;
};

/// The design files shipped with the program.
QString examples_folder();

}  // namespace streamwright::app
