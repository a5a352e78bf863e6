#include "app/panels/address_dialog.h"

#include "app/words/words.h"

#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QTreeWidget>
#include <QVBoxLayout>

#include <algorithm>

namespace streamwright::app {

namespace address_dialog_detail {

enum Column { about_column, given_column, room_column, cannot_column, column_count };

QTreeWidgetItem* line_for(const analysis::PlanLine& line, const base::Phrasebook& book) {
    auto* item = new QTreeWidgetItem;
    const auto words = [&](const base::Text& text) {
        return text.pattern.empty() ? QString() : shown(base::fill(text, book));
    };
    item->setText(about_column, words(line.about));
    item->setText(given_column, words(line.given));
    item->setText(room_column, words(line.room));
    if (line.cannot) item->setText(cannot_column, words(*line.cannot));
    QStringList whole;
    for (int column = 0; column < column_count; ++column)
        if (!item->text(column).isEmpty()) whole << item->text(column);
    for (int column = 0; column < column_count; ++column)
        item->setToolTip(column, Qt::convertFromPlainText(whole.join('\n')));
    return item;
}

}  // namespace address_dialog_detail

AddressDialog::AddressDialog(const model::Design& design, QWidget* parent)
    : QDialog(parent), plan_(analysis::plan_addresses(design)), list_(new QTreeWidget(this)) {
    using namespace address_dialog_detail;
    setWindowTitle(tr("Plan addresses"));
    resize(940, 360);
    auto* words =
        new QLabel(plan_.delta.empty() ? tr("Nothing is given: all have theirs, or cannot have any.")
                                       : tr("What is typed stays. All of it is one edit; Undo takes it back."),
                   this);
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    words->setProperty("tone", "muted");
    list_->setHeaderLabels({tr("About"), tr("What is given"), tr("Room to grow"), tr("What cannot be given")});
    list_->setRootIsDecorated(false);
    list_->setUniformRowHeights(true);
    list_->setAccessibleName(tr("What would be given"));
    list_->header()->setStretchLastSection(true);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    auto* go = buttons->addButton(tr("Give addresses"), QDialogButtonBox::AcceptRole);
    go->setDefault(true);
    go->setEnabled(!plan_.delta.empty());
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(20, 16, 20, 16);
    layout->setSpacing(8);
    layout->addWidget(words);
    layout->addWidget(list_, 1);
    layout->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    fill(design);
}

void AddressDialog::fill(const model::Design& design) {
    using namespace address_dialog_detail;
    const auto book = phrasebook(design);
    QList<QTreeWidgetItem*> lines;
    for (const auto& line : analysis::plan_lines(plan_)) lines << line_for(line, book);
    list_->addTopLevelItems(lines);
    const auto fails = [](const auto* line) { return !line->text(cannot_column).isEmpty(); };
    list_->setColumnHidden(cannot_column, std::ranges::none_of(lines, fails));
    for (int column = 0; column < cannot_column; ++column) list_->resizeColumnToContents(column);
    list_->setCurrentItem(list_->topLevelItem(0));
    list_->setFocus();
}

}  // namespace streamwright::app
