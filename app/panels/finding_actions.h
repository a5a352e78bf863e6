// What can be done about the finding that the list stands at: its remedies, accepting it, curing all of its kind,
// showing it. The same actions are in the buttons above the list, in its context menu and on its keys.
#pragma once

#include "app/panels/findings_model.h"

#include <QObject>

class QAction;
class QListView;
class QMenu;

namespace streamwright::app {

class FindingActions final : public QObject {
    Q_OBJECT

public:
    /// Lives as long as the list.
    FindingActions(Document& document, FindingsModel& model, QListView& list);

    /// In the order of the buttons: show, accept, withdraw, all of this kind.
    QList<QAction*> all() const { return {show_, accept_, withdraw_, all_}; }
    void fill(QMenu& menu);
    void apply(int row, int remedy);

Q_SIGNALS:
    void show_requested(const analysis::Finding& finding);
    void told(const QString& words);

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QAction* add(const QString& words, const QKeySequence& keys, void (FindingActions::*todo)());
    const FindingRow* current() const;
    void refresh();
    void show();
    void accept();
    void withdraw();
    void settle_all();
    void open_menu(const QPoint& at);

    Document& document_;
    FindingsModel& model_;
    QListView& list_;
    QAction *show_, *accept_, *withdraw_, *all_;
};

}  // namespace streamwright::app
