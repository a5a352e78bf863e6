// The findings of the design: counts by severity, one row each. A click selects the subject, Enter applies the best
// remedy, which is one undoable edit; buttons, context menu and keys offer the rest.
#pragma once

#include "app/panels/findings_model.h"
#include "app/style/theme.h"

#include <QWidget>

class QLabel;
class QListView;
class QToolButton;

namespace streamwright::app {

class FindingActions;
class FindingDelegate;

class FindingsPanel final : public QWidget {
    Q_OBJECT

public:
    explicit FindingsPanel(Document& document, QWidget* parent = nullptr);
    void set_theme(const Theme& theme);
    FindingsModel& model() { return *model_; }
    FindingDelegate& delegate() { return *delegate_; }
    FindingActions& actions() { return *actions_; }
    QListView& list() { return *list_; }
    void focus_list();

Q_SIGNALS:
    void subject_chosen(const analysis::Subject& subject);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* make_head();
    void show_counts();
    void show_buttons();
    void choose(const QModelIndex& row);

    Document& document_;
    Theme theme_;
    FindingsModel* model_;
    FindingDelegate* delegate_;
    QListView* list_;
    FindingActions* actions_;
    QLabel* quiet_;
    std::vector<QToolButton*> counts_, buttons_;
};

/// "1 error", "2 errors"; "1 warning"; "3 advice".
QString count_words(analysis::Severity severity, int count);

}  // namespace streamwright::app
