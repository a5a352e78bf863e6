// The bar above all views: what is open, the view tabs, the preset whose loads are shown, and the search.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"

#include <QWidget>

#include <optional>
#include <vector>

class QComboBox;
class QCompleter;
class QLabel;
class QLineEdit;
class QStandardItemModel;
class QToolButton;

namespace streamwright::app {

class TopBar final : public QWidget {
    Q_OBJECT

public:
    TopBar(Document& document, Selection& selection, QWidget* parent = nullptr);
    void focus_search();
    QLineEdit& search() { return *search_; }
    QLabel& count() { return *count_; }
    /// To the next (1) or the one before (-1) of what the text finds; the first or last where none is stood on.
    void step(int by);

Q_SIGNALS:
    void found(const Chosen& subject);
    void left();  // Escape in the search: the keyboard goes back to the drawing

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void refresh();
    void fill_presets();
    void fill_search();
    void show_count();
    void make_search();
    QToolButton* step_button(const QString& words, const QString& mark, int by);

    Document& document_;
    Selection& selection_;
    QLabel *title_, *revision_;
    QComboBox* presets_;
    QLineEdit* search_;
    QLabel* count_;
    QStandardItemModel* names_;
    std::vector<QToolButton*> steps_;
    std::optional<Chosen> at_;  // what the search stands on
};

}  // namespace streamwright::app
