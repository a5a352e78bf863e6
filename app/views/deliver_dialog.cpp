#include "app/views/deliver_dialog.h"

#include "app/words/words.h"

#include <QCheckBox>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMetaObject>
#include <QProgressBar>
#include <QPushButton>

#include <algorithm>

namespace streamwright::app {

namespace deliver_dialog_detail {

bool chosen_by(const std::vector<std::string>& stored, const std::string& name) {
    return stored.empty() || std::ranges::find(stored, name) != stored.end();
}

QCheckBox* box_for(const std::string& name, const QString& words, bool on, QWidget* parent) {
    auto* box = new QCheckBox(words, parent);
    box->setChecked(on);
    box->setProperty("key", shown(name));
    return box;
}

std::vector<std::string> checked(const std::vector<QCheckBox*>& boxes) {
    std::vector<std::string> names;
    for (const auto* box : boxes)
        if (box->isChecked()) names.push_back(box->property("key").toString().toStdString());
    return names;
}

QLabel* heading(const QString& words, QWidget* parent) {
    auto* label = new QLabel(words, parent);
    label->setProperty("tone", "strong");
    return label;
}

}  // namespace deliver_dialog_detail

DeliverDialog::DeliverDialog(model::Design design, const QString& folder, QWidget* parent)
    : QDialog(parent),
      design_(std::move(design)),
      folder_(new QLineEdit(folder, this)),
      progress_(new QProgressBar(this)),
      words_(new QLabel(this)),
      go_(new QPushButton(tr("Deliver"), this)) {
    using namespace deliver_dialog_detail;
    setWindowTitle(tr("Deliver documents"));
    setMinimumWidth(520);
    const auto& settings = design_.settings();
    auto* grid = new QGridLayout(this);
    grid->setContentsMargins(20, 16, 20, 16);
    grid->setVerticalSpacing(8);
    int row = 0;
    grid->addWidget(heading(tr("Folder"), this), row, 0);
    auto* browse = new QPushButton(tr("Choose…"), this);
    auto* where = new QHBoxLayout;
    where->addWidget(folder_, 1);
    where->addWidget(browse);
    grid->addLayout(where, row++, 1);
    grid->addWidget(heading(tr("Documents"), this), row, 0, Qt::AlignTop);
    for (const auto& kind : deliver::all_documents()) {
        const std::string name(kind.name);
        documents_.push_back(
            box_for(name, shown(translated(kind.title)), chosen_by(settings.document_set, name), this));
        grid->addWidget(documents_.back(), row++, 1);
    }
    grid->addWidget(heading(tr("Formats"), this), row, 0);
    auto* kinds = new QHBoxLayout;
    kinds->setSpacing(14);
    for (const auto& format : all_formats()) {
        formats_.push_back(
            box_for(format.name, shown(format.name).toUpper(), chosen_by(settings.formats, format.name), this));
        kinds->addWidget(formats_.back());
    }
    kinds->addStretch();
    grid->addLayout(kinds, row++, 1);
    progress_->setVisible(false);
    words_->setWordWrap(true);
    words_->setProperty("tone", "muted");
    grid->addWidget(progress_, row++, 0, 1, 2);
    grid->addWidget(words_, row++, 0, 1, 2);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    buttons->addButton(go_, QDialogButtonBox::ActionRole);
    go_->setDefault(true);
    grid->addWidget(buttons, row, 0, 1, 2);
    connect(browse, &QPushButton::clicked, this, [this] {
        const auto chosen = QFileDialog::getExistingDirectory(this, tr("Deliver to"), folder_->text());
        if (!chosen.isEmpty()) folder_->setText(chosen);
    });
    connect(go_, &QPushButton::clicked, this, &DeliverDialog::start);
    connect(buttons, &QDialogButtonBox::rejected, this, &DeliverDialog::reject);
}

DeliverDialog::~DeliverDialog() = default;

QString DeliverDialog::folder() const { return folder_->text(); }

void DeliverDialog::reject() {
    if (worker_.joinable()) {
        worker_.request_stop();
        words_->setText(tr("Stopping after the present file…"));
        return;
    }
    QDialog::reject();
}

void DeliverDialog::start() {
    DeliverRequest request{folder_->text().toStdString(), deliver_dialog_detail::checked(documents_),
                           deliver_dialog_detail::checked(formats_)};
    if (folder_->text().trimmed().isEmpty()) return words_->setText(tr("Choose a folder first."));
    if (request.documents.empty()) return words_->setText(tr("Tick at least one document."));
    if (request.formats.empty()) return words_->setText(tr("Tick at least one format."));
    go_->setEnabled(false);
    progress_->setVisible(true);
    worker_ = std::jthread([this, request = std::move(request), design = design_](const std::stop_token& stop) {
        const auto progress = [this](const std::string& next, int done, int of) {
            QMetaObject::invokeMethod(
                this, [this, next = shown(next), done, of] { step(next, done, of); }, Qt::QueuedConnection);
        };
        auto written = deliver_set(design, request, progress, stop);
        QMetaObject::invokeMethod(
            this, [this, written = std::move(written)] { finish(written); }, Qt::QueuedConnection);
    });
}

void DeliverDialog::step(const QString& next, int done, int of) {
    progress_->setRange(0, of);
    progress_->setValue(done);
    words_->setText(tr("Making %1").arg(next));
}

void DeliverDialog::finish(const base::Result<std::vector<std::filesystem::path>>& written) {
    if (worker_.joinable()) worker_.join();
    worker_ = {};
    go_->setEnabled(true);
    progress_->setVisible(false);
    if (!written) return words_->setText(sentence(written.error()));
    words_->setText(tr("%1 files written to %2.").arg(written->size()).arg(folder_->text()));
    go_->setText(tr("Deliver again"));
}

}  // namespace streamwright::app
