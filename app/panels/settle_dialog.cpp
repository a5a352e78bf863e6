#include "app/panels/settle_dialog.h"

#include "app/words/words.h"
#include "core/analysis/report.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QMetaObject>
#include <QProgressBar>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include <algorithm>
#include <memory>

namespace streamwright::app {

namespace settle_dialog_detail {

using analysis::Settling;
enum Column { subject_column, change_column, result_column };

QString subjects_of(const analysis::Finding& finding, const base::Phrasebook& book) {
    QStringList names;
    for (const auto& subject : finding.subjects) names << shown(base::print(base::Value(analysis::ref(subject)), book));
    names.removeDuplicates();
    return names.isEmpty() ? SettleDialog::tr("the design") : names.join(QStringLiteral(", "));
}

QString raised_words(const std::vector<analysis::Finding>& raised, const base::Phrasebook& book) {
    if (raised.empty()) return {};
    const auto first = shown(analysis::sentence(raised.front(), book));
    const auto more = static_cast<int>(raised.size()) - 1;
    return more == 0 ? first : SettleDialog::tr("%1 And %2 more.").arg(first).arg(more);
}

QString result_words(const analysis::SettleStep& step, const base::Phrasebook& book) {
    switch (step.outcome) {
        case Settling::settled:
            return SettleDialog::tr("Will be settled");
        case Settling::settled_before:
            return SettleDialog::tr("Will be settled by one above");
        case Settling::no_remedy:
            return SettleDialog::tr("Cannot: no edit is known to cure it; it needs a decision");
        case Settling::refused:
            return SettleDialog::tr("Cannot: %1").arg(step.refusal ? sentence(*step.refusal) : QString());
        case Settling::stays:
            return SettleDialog::tr("Cannot: the finding would stay");
        case Settling::raises:
            return SettleDialog::tr("Would raise: %1").arg(raised_words(step.raised, book));
    }
    return {};
}

bool cured(Settling outcome) { return outcome == Settling::settled || outcome == Settling::settled_before; }

QTreeWidgetItem* line_for(const analysis::SettleStep& step, const base::Phrasebook& book) {
    auto* line = new QTreeWidgetItem;
    line->setText(subject_column, subjects_of(step.finding, book));
    line->setText(change_column, step.change ? shown(base::fill(*step.change, book)) : SettleDialog::tr("nothing"));
    line->setText(result_column, result_words(step, book));
    const auto whole = Qt::convertFromPlainText(shown(analysis::sentence(step.finding, book)) + '\n' +
                                                line->text(change_column) + '\n' + line->text(result_column));
    for (const int column : {subject_column, change_column, result_column}) line->setToolTip(column, whole);
    const bool can = cured(step.outcome) || step.outcome == Settling::raises;
    line->setCheckState(subject_column, cured(step.outcome) ? Qt::Checked : Qt::Unchecked);
    line->setFlags(Qt::ItemIsSelectable | Qt::ItemIsEnabled | (can ? Qt::ItemIsUserCheckable : Qt::NoItemFlags));
    if (!can) line->setData(subject_column, Qt::CheckStateRole, {});
    return line;
}

}  // namespace settle_dialog_detail

SettleDialog::SettleDialog(model::Design design, std::vector<std::string> keys, const QString& kind, QWidget* parent)
    : QDialog(parent),
      design_(std::move(design)),
      keys_(std::move(keys)),
      count_(new QLabel(this)),
      later_(new QLabel(this)),
      list_(new QTreeWidget(this)),
      progress_(new QProgressBar(this)),
      go_(new QPushButton(tr("Apply"), this)) {
    setWindowTitle(tr("Apply to all of this kind"));
    resize(860, 460);
    auto* title = new QLabel(kind, this);
    title->setProperty("tone", "title");
    title->setTextFormat(Qt::PlainText);
    for (auto* words : {count_, later_}) {
        words->setTextFormat(Qt::PlainText);
        words->setWordWrap(true);
        words->setProperty("tone", "muted");
    }
    later_->hide();
    list_->setHeaderLabels({tr("About"), tr("What changes"), tr("Result")});
    list_->setRootIsDecorated(false);
    list_->setUniformRowHeights(true);
    list_->setAccessibleName(tr("What would be done"));
    list_->header()->setStretchLastSection(true);
    list_->setColumnWidth(settle_dialog_detail::subject_column, 220);
    list_->setColumnWidth(settle_dialog_detail::change_column, 300);
    progress_->setAccessibleName(tr("Trying the remedies"));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    buttons->addButton(go_, QDialogButtonBox::AcceptRole);
    go_->setDefault(true);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(20, 16, 20, 16);
    layout->setSpacing(8);
    layout->addWidget(title);
    layout->addWidget(count_);
    layout->addWidget(list_, 1);
    layout->addWidget(progress_);
    layout->addWidget(later_);
    layout->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &SettleDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &SettleDialog::reject);
    connect(list_, &QTreeWidget::itemChanged, this, &SettleDialog::show_count);
    run({keys_, {}, true}, true);
}

SettleDialog::~SettleDialog() = default;

void SettleDialog::run(analysis::SettleAsk ask, bool preview) {
    go_->setEnabled(false);
    list_->setEnabled(false);
    progress_->setRange(0, static_cast<int>(ask.keys.size()));
    progress_->setValue(0);
    progress_->show();
    count_->setText(preview ? tr("Trying the remedies on a copy of the design…") : tr("Applying what was chosen…"));
    worker_ = std::jthread([this, preview, ask = std::move(ask), design = design_](const std::stop_token& stop) {
        const auto progress = [this](std::size_t done, std::size_t of) {
            QMetaObject::invokeMethod(
                progress_,
                [this, done, of] {
                    progress_->setMaximum(static_cast<int>(of));
                    progress_->setValue(static_cast<int>(done));
                },
                Qt::QueuedConnection);
        };
        auto settled =
            std::make_shared<std::optional<analysis::Settled>>(analysis::settle_all(design, ask, progress, stop));
        QMetaObject::invokeMethod(
            this, [this, preview, settled] { finish(std::move(*settled), preview); }, Qt::QueuedConnection);
    });
}

void SettleDialog::finish(std::optional<analysis::Settled> settled, bool preview) {
    if (worker_.joinable()) worker_.join();
    worker_ = {};
    if (!settled) return;  // stopped: the dialog is closing
    progress_->hide();
    list_->setEnabled(true);
    if (!preview) {
        settled_ = std::move(settled);
        return QDialog::accept();
    }
    preview_ = std::move(settled);
    show_preview();
}

void SettleDialog::show_preview() {
    using namespace settle_dialog_detail;
    const auto before = phrasebook(design_);
    const QSignalBlocker quiet(list_);
    QList<QTreeWidgetItem*> lines;
    for (const auto& step : preview_->steps) lines << line_for(step, before);
    list_->addTopLevelItems(lines);
    if (!lines.isEmpty()) list_->setCurrentItem(lines.front());
    if (!preview_->raised_later.empty()) {
        later_->setText(tr("Together they would raise: %1")
                            .arg(raised_words(preview_->raised_later, phrasebook(preview_->design))));
        later_->show();
    }
    show_count();
    list_->setFocus();
}

std::vector<std::string> SettleDialog::chosen() const {
    std::vector<std::string> keys;
    for (int i = 0; preview_ && i < list_->topLevelItemCount(); ++i)
        if (list_->topLevelItem(i)->checkState(settle_dialog_detail::subject_column) == Qt::Checked)
            keys.push_back(preview_->steps[static_cast<std::size_t>(i)].key);
    return keys;
}

void SettleDialog::show_count() {
    const auto count = chosen().size();
    count_->setText(
        tr("%1 of %2 chosen. All of it is one edit; Undo takes it back.").arg(count).arg(list_->topLevelItemCount()));
    go_->setText(count == 0 ? tr("Apply") : tr("Apply %1").arg(count));
    go_->setEnabled(count > 0);
}

void SettleDialog::accept() {
    if (!preview_ || working()) return;
    analysis::SettleAsk ask{chosen(), {}, false};  // those that follow have lines, and were chosen or not
    if (ask.keys.empty()) return;
    bool as_shown = true;
    for (const auto& step : preview_->steps) {
        const bool wanted = std::ranges::find(ask.keys, step.key) != ask.keys.end();
        as_shown = as_shown && wanted == settle_dialog_detail::cured(step.outcome);
        if (wanted && step.outcome == analysis::Settling::raises) ask.even_if_it_raises.insert(step.key);
    }
    if (!as_shown) return run(std::move(ask), false);
    settled_ = preview_;
    QDialog::accept();
}

void SettleDialog::reject() {
    worker_.request_stop();
    QDialog::reject();
}

}  // namespace streamwright::app
