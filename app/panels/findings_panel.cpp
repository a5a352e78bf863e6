#include "app/panels/findings_panel.h"

#include "app/panels/finding_actions.h"
#include "app/panels/finding_delegate.h"
#include "app/render/role_icon.h"
#include "app/words/words.h"

#include <QAction>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QListView>
#include <QPainter>
#include <QShortcut>
#include <QStackedLayout>
#include <QToolButton>
#include <QVBoxLayout>

namespace streamwright::app {

namespace findings_panel_detail {

using analysis::Severity;
constexpr int head_height = 34, room_for_buttons = 900;
constexpr Severity severities[] = {Severity::error, Severity::warning, Severity::advice};

QIcon severity_icon(Severity severity, const Theme& theme) {
    QIcon icon;
    for (const int ratio : {1, 2}) {
        QPixmap picture(QSize(18, 18) * ratio);
        picture.setDevicePixelRatio(ratio);
        picture.fill(Qt::transparent);
        QPainter painter(&picture);
        paint_severity(painter, severity, theme, {9, 9});
        painter.end();
        icon.addPixmap(picture);
    }
    return icon;
}

int count_of(const analysis::Counts& counts, Severity severity) {
    return severity == Severity::error ? counts.error : severity == Severity::warning ? counts.warning : counts.advice;
}

}  // namespace findings_panel_detail

QString count_words(analysis::Severity severity, int count) {
    switch (severity) {
        case analysis::Severity::error:
            return count == 1 ? FindingsPanel::tr("1 error") : FindingsPanel::tr("%1 errors").arg(count);
        case analysis::Severity::warning:
            return count == 1 ? FindingsPanel::tr("1 warning") : FindingsPanel::tr("%1 warnings").arg(count);
        case analysis::Severity::advice:
            return FindingsPanel::tr("%1 advice").arg(count);
    }
    return {};
}

FindingsPanel::FindingsPanel(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      theme_(bundled_theme(ThemeChoice::light)),
      model_(new FindingsModel(document, this)),
      delegate_(new FindingDelegate(*model_, this)),
      list_(new QListView(this)),
      actions_(nullptr),
      quiet_(new QLabel(this)) {
    setObjectName(QStringLiteral("FindingsPanel"));
    setAttribute(Qt::WA_StyledBackground);
    list_->setModel(model_);
    list_->setItemDelegate(delegate_);
    list_->setMouseTracking(true);
    list_->setUniformItemSizes(true);
    list_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    list_->setAccessibleName(tr("Findings"));
    actions_ = new FindingActions(document_, *model_, *list_);
    quiet_->setProperty("tone", "muted");
    quiet_->setContentsMargins(16, 8, 16, 8);
    quiet_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(make_head());
    layout->addWidget(list_, 1);
    layout->addWidget(quiet_, 1);
    connect(model_, &FindingsModel::refreshed, this, &FindingsPanel::show_counts);
    connect(delegate_, &FindingDelegate::remedy_clicked, actions_, &FindingActions::apply);
    connect(list_->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex& now) {
        // Only what the user does selects subjects; a list that changes under her does not.
        if (now.isValid() && list_->hasFocus()) choose(now);
    });
    connect(list_, &QListView::clicked, this, &FindingsPanel::choose);
    for (const auto key : {Qt::Key_Return, Qt::Key_Enter}) {
        auto* enter = new QShortcut(key, list_, nullptr, nullptr, Qt::WidgetShortcut);
        connect(enter, &QShortcut::activated, this, [this] {
            if (list_->currentIndex().isValid()) actions_->apply(list_->currentIndex().row(), 0);
        });
    }
    show_counts();
}

QWidget* FindingsPanel::make_head() {
    auto* holder = new QWidget(this);
    auto* head = new QHBoxLayout(holder);
    // On a small screen the row gives way rather than the window growing beyond it.
    head->setSizeConstraint(QLayout::SetNoConstraint);
    holder->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    holder->setFixedHeight(findings_panel_detail::head_height);
    head->setContentsMargins(16, 4, 12, 4);
    auto* title = new QLabel(tr("Findings"), holder);
    title->setProperty("tone", "strong");
    head->addWidget(title);
    head->addSpacing(16);
    for (const auto severity : findings_panel_detail::severities) {
        auto* button = new QToolButton(holder);
        button->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
        button->setCheckable(true);
        button->setToolTip(tr("Show only these"));
        connect(button, &QToolButton::clicked, this,
                [this, severity](bool on) { model_->set_filter(on ? std::optional(severity) : std::nullopt); });
        counts_.push_back(button);
        head->addWidget(button);
    }
    head->addStretch();
    for (auto* action : actions_->all()) {
        auto* button = new QToolButton(holder);
        button->setDefaultAction(action);
        button->setToolButtonStyle(Qt::ToolButtonTextOnly);
        button->setFocusPolicy(Qt::TabFocus);
        connect(action, &QAction::changed, this, &FindingsPanel::show_buttons);
        buttons_.push_back(button);
        head->addWidget(button);
    }
    show_buttons();
    return holder;
}

void FindingsPanel::show_buttons() {
    const bool room = width() >= findings_panel_detail::room_for_buttons;
    for (auto* button : buttons_) button->setVisible(room && button->defaultAction()->isVisible());
}

void FindingsPanel::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    show_buttons();
}

void FindingsPanel::set_theme(const Theme& theme) {
    theme_ = theme;
    delegate_->set_theme(theme);
    show_counts();
    list_->viewport()->update();
}

void FindingsPanel::focus_list() {
    list_->setFocus(Qt::ShortcutFocusReason);
    if (!list_->currentIndex().isValid() && model_->rowCount() > 0) list_->setCurrentIndex(model_->index(0));
}

void FindingsPanel::show_counts() {
    using namespace findings_panel_detail;
    const auto counts = model_->counts();
    for (std::size_t i = 0; i < counts_.size(); ++i) {
        const auto severity = severities[i];
        counts_[i]->setIcon(severity_icon(severity, theme_));
        counts_[i]->setText(count_words(severity, count_of(counts, severity)));
        counts_[i]->setChecked(model_->filter() == severity);
    }
    const bool empty = model_->rowCount() == 0;
    list_->setVisible(!empty);
    quiet_->setVisible(empty);
    const auto took = static_cast<double>(document_.check_time().count()) / 1000.0;
    const auto& deferred = document_.analyser().deferred_pending();
    quiet_->setText(deferred ? tr("Nothing to report so far; the worst case is still being worked out.")
                             : tr("Nothing to report. All rules checked in %1 ms.").arg(took, 0, 'g', 2));
}

void FindingsPanel::choose(const QModelIndex& row) {
    const auto& subjects = model_->row(row.row()).reported.finding.subjects;
    if (!subjects.empty()) Q_EMIT subject_chosen(subjects.front());
}

}  // namespace streamwright::app
