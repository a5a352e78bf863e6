#include "app/panels/accept_dialog.h"

#include <QDialogButtonBox>
#include <QGridLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

namespace streamwright::app {

namespace accept_dialog_detail {

QLabel* label_for(const QString& words, QWidget* field, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setBuddy(field);
    return label;
}

}  // namespace accept_dialog_detail

AcceptDialog::AcceptDialog(const QString& finding, const Answer& before, Commit commit, QWidget* parent)
    : QDialog(parent),
      commit_(std::move(commit)),
      reason_(new QPlainTextEdit(before.reason, this)),
      by_(new QLineEdit(before.by, this)),
      error_(new QLabel(this)) {
    using accept_dialog_detail::label_for;
    setWindowTitle(tr("Accept a finding"));
    setMinimumWidth(520);
    auto* words = new QLabel(finding, this);
    words->setProperty("tone", "strong");
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    reason_->setAccessibleName(tr("Reason"));
    reason_->setObjectName(QStringLiteral("reason"));
    reason_->setPlaceholderText(tr("Why it may stay as it is; this is printed in the documents"));
    reason_->setTabChangesFocus(true);
    reason_->setFixedHeight(76);
    by_->setAccessibleName(tr("Accepted by"));
    by_->setObjectName(QStringLiteral("by"));
    by_->setPlaceholderText(tr("A role, such as Head of AV"));
    error_->setObjectName(QStringLiteral("error"));
    error_->setProperty("tone", "error");
    error_->setTextFormat(Qt::PlainText);
    error_->setWordWrap(true);
    error_->hide();
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* accept = buttons->addButton(tr("Accept"), QDialogButtonBox::AcceptRole);
    accept->setDefault(true);
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(20, 16, 20, 16);
    grid->setVerticalSpacing(10);
    grid->setHorizontalSpacing(12);
    grid->addWidget(words, 0, 0, 1, 2);
    grid->addWidget(label_for(tr("&Reason"), reason_, this), 1, 0, Qt::AlignTop);
    grid->addWidget(reason_, 1, 1);
    grid->addWidget(label_for(tr("Accepted &by"), by_, this), 2, 0);
    grid->addWidget(by_, 2, 1);
    grid->addWidget(error_, 3, 1);
    grid->addWidget(buttons, 4, 0, 1, 2);
    connect(buttons, &QDialogButtonBox::accepted, this, &AcceptDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &AcceptDialog::reject);
    reason_->setFocus();
}

void AcceptDialog::accept() {
    // One line in the file and in the tables of the documents, however it was typed.
    const auto why = commit_({reason_->toPlainText().simplified(), by_->text().simplified()});
    if (!why) return QDialog::accept();
    error_->setText(*why);
    error_->show();
    reason_->setFocus();
}

}  // namespace streamwright::app
