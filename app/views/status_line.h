// The line at the foot: what is under the pointer or why it was refused, counts, time of the check, saved, zoom.
#pragma once

#include "app/document/document.h"
#include "app/style/theme.h"

#include <QWidget>

class QLabel;

namespace streamwright::app {

class StatusLine final : public QWidget {
    Q_OBJECT

public:
    explicit StatusLine(Document& document, QWidget* parent = nullptr);
    void set_theme(const Theme& theme);
    /// Stands until the next; a refusal is marked and stands longer than what hovering says.
    void tell(const QString& words, bool refusal);
    void hover(const QString& words);
    void show_zoom(double zoom);
    QString words() const;

private:
    void refresh();

    Document& document_;
    Theme theme_;
    QString told_, hovered_;
    bool refusal_ = false;
    QLabel *words_, *errors_, *warnings_, *advice_, *checked_, *saved_, *grid_, *zoom_;
};

}  // namespace streamwright::app
