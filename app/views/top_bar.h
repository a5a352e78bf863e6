// The bar above all views: what is open, the view tabs, the preset whose loads are shown, and the search.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"

#include <QWidget>

class QComboBox;
class QCompleter;
class QLabel;
class QLineEdit;
class QStandardItemModel;

namespace streamwright::app {

class TopBar final : public QWidget {
    Q_OBJECT

public:
    TopBar(Document& document, Selection& selection, QWidget* parent = nullptr);
    void focus_search();
    QLineEdit& search() { return *search_; }

Q_SIGNALS:
    void found(const Chosen& subject);

private:
    void refresh();
    void fill_presets();
    void fill_search();
    void jump();

    Document& document_;
    Selection& selection_;
    QLabel *title_, *revision_;
    QComboBox* presets_;
    QLineEdit* search_;
    QStandardItemModel* names_;
};

/// The first subject whose tag, room or address begins with (else holds) the text.
std::optional<Chosen> find_subject(const model::Design& design, const QString& text);

}  // namespace streamwright::app
