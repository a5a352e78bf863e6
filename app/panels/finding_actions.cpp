#include "app/panels/finding_actions.h"

#include "app/panels/accept_dialog.h"
#include "app/panels/settle_dialog.h"
#include "app/words/words.h"
#include "core/analysis/rule.h"
#include "core/analysis/settle_all.h"

#include <QAction>
#include <QContextMenuEvent>
#include <QListView>
#include <QMenu>
#include <QShortcut>

#include <algorithm>

namespace streamwright::app {

namespace finding_actions_detail {

std::vector<std::string> subjects_of(const analysis::Finding& finding) {
    std::vector<std::string> texts;
    for (const auto& subject : finding.subjects) texts.push_back(analysis::subject_text(subject));
    return texts;
}

/// The acceptance as it stands, or a blank one for this finding; always of the rule as it is now.
model::Waiver waiver_for(Document& document, const analysis::Reported& reported) {
    const auto* held = reported.waiver ? document.design().waivers.find(*reported.waiver) : nullptr;
    auto waiver = held ? *held : model::Waiver::blank(document.ids().next<model::WaiverId>());
    waiver.rule = std::string(reported.finding.rule);
    waiver.subjects = subjects_of(reported.finding);
    if (const auto* rule = analysis::find_rule(reported.finding.rule)) waiver.rule_revision = rule->words.revision;
    if (!held) waiver.by = document.design().settings().created_by;
    return waiver;
}

bool any_remedy(const Document& document, std::string_view rule) {
    return std::ranges::any_of(document.analyser().findings(),
                               [&](const auto& each) { return each.rule == rule && !each.remedies.empty(); });
}

}  // namespace finding_actions_detail

FindingActions::FindingActions(Document& document, FindingsModel& model, QListView& list)
    : QObject(&list),
      document_(document),
      model_(model),
      list_(list),
      show_(add(tr("Show on the canvas"), QKeySequence(Qt::Key_Space), &FindingActions::show)),
      accept_(add(tr("Accept with a reason…"), QKeySequence(Qt::CTRL | Qt::Key_E), &FindingActions::accept)),
      withdraw_(add(tr("Withdraw acceptance"), QKeySequence(Qt::Key_Delete), &FindingActions::withdraw)),
      all_(
          add(tr("Apply to all of this kind…"), QKeySequence(Qt::CTRL | Qt::Key_Return), &FindingActions::settle_all)) {
    list_.installEventFilter(this);
    list_.viewport()->installEventFilter(this);
    auto* menu_key = new QShortcut(QKeySequence(Qt::SHIFT | Qt::Key_F10), &list_, nullptr, nullptr, Qt::WidgetShortcut);
    connect(menu_key, &QShortcut::activated, this,
            [this] { open_menu(list_.visualRect(list_.currentIndex()).bottomLeft() + QPoint(46, 0)); });
    connect(&model_, &FindingsModel::refreshed, this, &FindingActions::refresh);
    connect(list_.selectionModel(), &QItemSelectionModel::currentChanged, this, &FindingActions::refresh);
    refresh();
}

QAction* FindingActions::add(const QString& words, const QKeySequence& keys, void (FindingActions::*todo)()) {
    auto* action = new QAction(words, this);
    action->setShortcut(keys);
    action->setShortcutContext(Qt::WidgetShortcut);
    action->setToolTip(tr("%1 (%2)").arg(words, keys.toString(QKeySequence::NativeText)));
    list_.addAction(action);
    // Queued: the list may still be at work on the key, and the edit may take the row away.
    connect(action, &QAction::triggered, this, todo, Qt::QueuedConnection);
    return action;
}

const FindingRow* FindingActions::current() const {
    const auto index = list_.currentIndex();
    return index.isValid() && index.row() < model_.rowCount() ? &model_.row(index.row()) : nullptr;
}

void FindingActions::refresh() {
    const auto* row = current();
    show_->setEnabled(row && !row->reported.finding.subjects.empty());
    accept_->setEnabled(row);
    accept_->setText(row && row->waived() ? tr("Change the reason…") : tr("Accept with a reason…"));
    withdraw_->setVisible(row && row->reported.waiver);
    withdraw_->setEnabled(row && row->reported.waiver);
    all_->setEnabled(row && !row->waived() &&
                     finding_actions_detail::any_remedy(document_, row->reported.finding.rule));
}

void FindingActions::show() {
    if (const auto* row = current()) Q_EMIT show_requested(row->reported.finding);
}

void FindingActions::accept() {
    const auto* row = current();
    if (!row) return;
    const auto waiver = finding_actions_detail::waiver_for(document_, row->reported);
    AcceptDialog dialog(
        row->sentence, {shown(waiver.reason), shown(waiver.by)},
        [this, waiver](const AcceptDialog::Answer& answer) -> std::optional<QString> {
            model::Waive edit{waiver};
            edit.row.reason = answer.reason.toStdString();
            edit.row.by = answer.by.toStdString();
            const auto delta = model::make_edit(document_.design(), model::AnyEdit(edit));
            if (!delta) return sentence(delta.error());
            document_.commit(delta, tr("Accept a finding"));
            return std::nullopt;
        },
        list_.window());
    dialog.exec();
}

void FindingActions::withdraw() {
    const auto* row = current();
    if (!row || !row->reported.waiver) return;
    // A file may hold several for one finding; what is withdrawn must not live on in an older one.
    const auto subjects = finding_actions_detail::subjects_of(row->reported.finding);
    model::Remove edit;
    for (const auto& waiver : document_.design().waivers)
        if (waiver.rule == row->reported.finding.rule && waiver.subjects == subjects) edit.rows.emplace_back(waiver.id);
    document_.edit(edit, tr("Withdraw an acceptance"));
}

void FindingActions::settle_all() {
    using namespace finding_actions_detail;
    const auto* row = current();
    if (!row || !all_->isEnabled()) return;
    const auto rule = row->reported.finding.rule;
    const auto* known = analysis::find_rule(rule);
    auto keys = analysis::open_keys(document_.design(), document_.analyser().findings(), rule);
    const auto asked = static_cast<int>(keys.size());
    const auto start = document_.design();
    const auto kind = known ? shown(translated(known->words.title)) : shown(std::string(rule));
    SettleDialog dialog(start, std::move(keys), kind, list_.window());
    if (dialog.exec() != QDialog::Accepted || !dialog.settled()) return;
    const auto& settled = *dialog.settled();
    if (!document_.commit(model::difference(start, settled.design), tr("Apply to all: %1").arg(kind))) return;
    const auto remain = static_cast<int>(analysis::open_keys(settled.design, settled.findings, rule).size());
    const int count = std::max(0, asked - remain);
    Q_EMIT told(remain == 0 ? tr("%1 settled; none of this kind remain.").arg(count)
                            : tr("%1 settled; %2 of this kind remain.").arg(count).arg(remain));
}

void FindingActions::apply(int row, int remedy) {
    const auto& finding = model_.row(row);
    const auto& remedies = finding.reported.finding.remedies;
    if (static_cast<std::size_t>(remedy) >= remedies.size()) return;
    // Queued: the list is still at work on the click, and the edit may take the row away.
    QMetaObject::invokeMethod(
        this,
        [this, edit = remedies[static_cast<std::size_t>(remedy)].edit, words = finding.remedies[remedy]] {
            document_.commit(model::make_edit(document_.design(), edit), words);
        },
        Qt::QueuedConnection);
}

void FindingActions::fill(QMenu& menu) {
    const auto* row = current();
    if (!row) return;
    for (int i = 0; i < row->remedies.size(); ++i) {
        // A name with an ampersand is no shortcut.
        auto* remedy = menu.addAction(QString(row->remedies[i]).replace('&', QStringLiteral("&&")));
        connect(remedy, &QAction::triggered, this, [this, key = row->key, i] {
            if (const auto at = model_.row_of(key)) apply(*at, i);
        });
    }
    menu.addActions({all_});
    menu.addSeparator();
    menu.addActions({accept_, withdraw_});
    menu.addSeparator();
    menu.addActions({show_});
}

void FindingActions::open_menu(const QPoint& at) {
    if (!current()) return;
    auto* menu = new QMenu(&list_);
    menu->setObjectName(QStringLiteral("FindingMenu"));
    menu->setAttribute(Qt::WA_DeleteOnClose);
    fill(*menu);
    menu->popup(list_.viewport()->mapToGlobal(at));
}

bool FindingActions::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::ContextMenu) return QObject::eventFilter(watched, event);
    const auto* asked = static_cast<QContextMenuEvent*>(event);
    if (asked->reason() == QContextMenuEvent::Keyboard) {
        open_menu(list_.visualRect(list_.currentIndex()).bottomLeft() + QPoint(46, 0));
        return true;
    }
    const auto at = list_.viewport()->mapFromGlobal(asked->globalPos());
    const auto index = list_.indexAt(at);
    if (!index.isValid()) return true;
    list_.setCurrentIndex(index);
    open_menu(at);
    return true;
}

}  // namespace streamwright::app
