#include "app/panels/properties/commit_field.h"

#include <QLabel>
#include <QLineEdit>
#include <QShortcut>
#include <QStyle>
#include <QVBoxLayout>

namespace streamwright::app {

namespace commit_field_detail {

void mark_wrong(QLineEdit& line, bool wrong) {
    line.setProperty("wrong", wrong);
    line.style()->unpolish(&line);
    line.style()->polish(&line);
}

}  // namespace commit_field_detail

CommitField::CommitField(const QString& name, Read read, Commit commit, QWidget* parent)
    : QWidget(parent),
      read_(std::move(read)),
      commit_(std::move(commit)),
      line_(new QLineEdit(this)),
      error_(new QLabel(this)) {
    line_->setAccessibleName(name);
    line_->setObjectName(name);
    line_->setProperty("quiet", true);
    error_->setProperty("tone", "error");
    error_->setWordWrap(true);
    error_->setTextFormat(Qt::PlainText);
    error_->hide();
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(2);
    layout->addWidget(line_);
    layout->addWidget(error_);
    connect(line_, &QLineEdit::editingFinished, this, &CommitField::take);
    auto* escape = new QShortcut(Qt::Key_Escape, line_, nullptr, nullptr, Qt::WidgetShortcut);
    connect(escape, &QShortcut::activated, this, [this] {
        line_->setModified(false);
        refresh();
    });
    refresh();
}

void CommitField::refresh() {
    if (line_->isModified() && line_->hasFocus()) return;
    const auto text = read_();
    if (line_->text() != text) line_->setText(text);
    line_->setModified(false);
    line_->setCursorPosition(0);
    error_->hide();
    commit_field_detail::mark_wrong(*line_, false);
}

void CommitField::take() {
    if (!line_->isModified()) return;
    line_->setModified(false);
    const auto text = line_->text().trimmed();
    if (text == read_()) return refresh();
    const auto why = commit_(text);
    if (!why) return refresh();
    error_->setText(*why);
    error_->show();
    commit_field_detail::mark_wrong(*line_, true);
}

}  // namespace streamwright::app
