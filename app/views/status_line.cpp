#include "app/views/status_line.h"

#include "app/panels/findings_panel.h"
#include "app/render/role_icon.h"

#include <QAccessible>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QTime>

namespace streamwright::app {

namespace status_line_detail {

/// A count with the shape of its severity before it.
class CountLabel final : public QLabel {
public:
    CountLabel(analysis::Severity severity, QWidget* parent) : QLabel(parent), severity_(severity) {
        setContentsMargins(20, 0, 0, 0);
    }
    void set_theme(const Theme& theme) {
        theme_ = theme;
        update();
    }

protected:
    void paintEvent(QPaintEvent* event) override {
        QLabel::paintEvent(event);
        QPainter painter(this);
        paint_severity(painter, severity_, theme_, {9, height() / 2.0});
    }

private:
    analysis::Severity severity_;
    Theme theme_ = bundled_theme(ThemeChoice::light);
};

}  // namespace status_line_detail

StatusLine::StatusLine(Document& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      theme_(bundled_theme(ThemeChoice::light)),
      words_(new QLabel(this)),
      errors_(new status_line_detail::CountLabel(analysis::Severity::error, this)),
      warnings_(new status_line_detail::CountLabel(analysis::Severity::warning, this)),
      advice_(new status_line_detail::CountLabel(analysis::Severity::advice, this)),
      checked_(new QLabel(this)),
      saved_(new QLabel(this)),
      grid_(new QLabel(tr("Grid 1 mm"), this)),
      zoom_(new QLabel(this)) {
    setObjectName(QStringLiteral("StatusLine"));
    setAttribute(Qt::WA_StyledBackground);
    setFixedHeight(28);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 0, 16, 0);
    layout->setSpacing(24);
    words_->setTextFormat(Qt::PlainText);
    layout->setSizeConstraint(QLayout::SetNoConstraint);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    words_->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    layout->addWidget(words_, 1);
    for (auto* label : {errors_, warnings_, advice_, checked_, saved_, grid_, zoom_}) {
        label->setProperty("tone", "muted");
        layout->addWidget(label);
    }
    connect(&document_, &Document::changed, this, [this](const model::Delta& delta) {
        refresh();
        // What was said about an edit stands while only the worst case comes in.
        if (!delta.empty() && !refusal_) tell({}, false);
    });
    connect(&document_, &Document::replaced, this, [this] {
        refresh();
        if (!refusal_) tell({}, false);
    });
    connect(&document_, &Document::file_changed, this, &StatusLine::refresh);
    connect(&document_, &Document::refused, this, [this](const QString& why) { tell(why, true); });
    refresh();
}

void StatusLine::set_theme(const Theme& theme) {
    theme_ = theme;
    for (auto* label : {errors_, warnings_, advice_})
        static_cast<status_line_detail::CountLabel*>(label)->set_theme(theme);
    tell(told_, refusal_);
}

void StatusLine::tell(const QString& words, bool refusal) {
    // What was refused stands until something else is said, so that it can be read after the release.
    if (words.isEmpty() && refusal_ && !refusal) {
        refusal_ = false;
        return;
    }
    told_ = words;
    refusal_ = refusal;
    words_->setText(told_.isEmpty() ? hovered_ : told_);
    words_->setStyleSheet(refusal ? QStringLiteral("color: %1; font-weight: bold;").arg(theme_.text("error").name())
                                  : QString());
    if (refusal && QAccessible::isActive()) {
        words_->setAccessibleName(words);
        QAccessibleEvent event(words_, QAccessible::Alert);
        QAccessible::updateAccessibility(&event);
    }
}

void StatusLine::hover(const QString& words) {
    hovered_ = words;
    if (told_.isEmpty()) words_->setText(words);
}

void StatusLine::show_zoom(double zoom) { zoom_->setText(tr("%1 %").arg(qRound(zoom * 100))); }

QString StatusLine::words() const { return words_->text(); }

void StatusLine::refresh() {
    const auto counts = analysis::count(document_.reported());
    errors_->setText(count_words(analysis::Severity::error, counts.error));
    warnings_->setText(count_words(analysis::Severity::warning, counts.warning));
    advice_->setText(count_words(analysis::Severity::advice, counts.advice));
    const auto took = static_cast<double>(document_.check_time().count()) / 1000.0;
    checked_->setText(document_.analyser().deferred_pending()
                          ? tr("Checking…")
                          : tr("Checked in %1 ms").arg(took, 0, 'f', took < 10 ? 1 : 0));
    saved_->setText(!document_.path() ? tr("Not saved yet") : document_.modified() ? tr("Unsaved edits") : tr("Saved"));
}

}  // namespace streamwright::app
