#include "app/views/top_bar.h"

#include "app/document/search.h"
#include "app/words/words.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QCompleter>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QLineEdit>
#include <QSet>
#include <QStandardItemModel>
#include <QToolButton>

#include <algorithm>

namespace streamwright::app {

TopBar::TopBar(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent),
      document_(document),
      selection_(selection),
      title_(new QLabel(this)),
      revision_(new QLabel(this)),
      presets_(new QComboBox(this)),
      search_(new QLineEdit(this)),
      count_(new QLabel(this)),
      names_(new QStandardItemModel(this)) {
    setObjectName(QStringLiteral("TopBar"));
    setAttribute(Qt::WA_StyledBackground);
    setFixedHeight(44);
    title_->setProperty("tone", "title");
    title_->setTextFormat(Qt::PlainText);
    title_->setMaximumWidth(420);
    title_->setMinimumWidth(60);
    revision_->setProperty("tone", "muted");
    auto* tab = new QToolButton(this);
    tab->setObjectName(QStringLiteral("ViewTab"));
    tab->setText(tr("1  Schematic"));
    tab->setCheckable(true);
    tab->setChecked(true);
    tab->setAutoExclusive(true);
    tab->setFocusPolicy(Qt::NoFocus);
    auto* preset_label = new QLabel(tr("Preset"), this);
    preset_label->setProperty("tone", "muted");
    presets_->setAccessibleName(tr("Preset"));
    presets_->setMinimumWidth(100);
    presets_->setMaximumWidth(176);
    presets_->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    make_search();
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 0, 14, 0);
    layout->addWidget(title_);
    layout->addWidget(revision_);
    layout->addStretch(1);
    layout->addWidget(tab, 0, Qt::AlignBottom);
    layout->addStretch(1);
    layout->addWidget(preset_label);
    layout->addWidget(presets_, 2);
    layout->addWidget(search_, 3);
    layout->addWidget(count_);
    for (auto* button : steps_) layout->addWidget(button);
    layout->setSpacing(10);
    connect(presets_, &QComboBox::activated, this, [this](int index) {
        selection_.set_preset(model::PresetId::parse(presets_->itemData(index).toString().toStdString()));
    });
    connect(&document_, &Document::changed, this, &TopBar::refresh);
    connect(&document_, &Document::replaced, this, [this] {
        // The first preset is what a design is usually looked at in.
        std::optional<model::PresetId> first;
        int number = 0;
        for (const auto& preset : document_.design().presets)
            if (!first || preset.number < number) {
                first = preset.id;
                number = preset.number;
            }
        selection_.set_preset(first);
        refresh();
    });
    connect(&document_, &Document::file_changed, this, &TopBar::refresh);
    connect(&selection_, &Selection::preset_changed, this, &TopBar::fill_presets);
    refresh();
}

void TopBar::make_search() {
    search_->setPlaceholderText(tr("Find a tag, type, room, address   Ctrl F"));
    search_->setAccessibleName(tr("Find a tag, type, room or address"));
    search_->setMinimumWidth(110);
    search_->setMaximumWidth(264);
    search_->setClearButtonEnabled(true);
    auto* completer = new QCompleter(names_, this);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setFilterMode(Qt::MatchContains);
    completer->setMaxVisibleItems(12);
    search_->setCompleter(completer);
    count_->setProperty("tone", "muted");
    steps_ = {step_button(tr("Previous (Shift+F3)"), QStringLiteral("‹"), -1),
              step_button(tr("Next (F3)"), QStringLiteral("›"), 1)};
    search_->installEventFilter(this);
    connect(completer, QOverload<const QString&>::of(&QCompleter::activated), this, [this](const QString& text) {
        search_->setText(text);
        at_.reset();
        step(1);
    });
    // Also reached from the open list of names, which hands its keys on without asking any filter.
    connect(search_, &QLineEdit::returnPressed, this, [this] { step(1); });
    connect(search_, &QLineEdit::textEdited, this, [this] {
        if (names_->rowCount() == 0) fill_search();
    });
    connect(search_, &QLineEdit::textChanged, this, [this] {
        at_.reset();
        show_count();
    });
    show_count();
}

QToolButton* TopBar::step_button(const QString& words, const QString& mark, int by) {
    auto* button = new QToolButton(this);
    button->setText(mark);
    button->setToolTip(words);
    button->setAccessibleName(words);
    button->setFocusPolicy(Qt::TabFocus);
    connect(button, &QToolButton::clicked, this, [this, by] { step(by); });
    return button;
}

bool TopBar::eventFilter(QObject* watched, QEvent* event) {
    if (watched != search_ || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    const bool enter = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
    if (enter && key->modifiers().testFlag(Qt::ShiftModifier)) {
        step(-1);
        return true;
    }
    if (key->key() != Qt::Key_Escape) return QWidget::eventFilter(watched, event);
    Q_EMIT left();
    return true;
}

void TopBar::focus_search() {
    search_->setFocus(Qt::ShortcutFocusReason);
    search_->selectAll();
}

void TopBar::refresh() {
    const QFontMetrics metrics(title_->font());
    title_->setText(metrics.elidedText(document_.title(), Qt::ElideRight, 400) + (document_.modified() ? " *" : ""));
    const model::Revision* latest = nullptr;
    for (const auto& revision : document_.design().revisions)
        if (!latest || revision.number > latest->number) latest = &revision;
    revision_->setText(latest ? tr("revision %1").arg(shown(latest->letter)) : QString());
    fill_presets();
    names_->clear();
    // A count that nobody looks at is not worth a search at every edit.
    if (search_->hasFocus())
        show_count();
    else
        count_->hide();
}

void TopBar::fill_presets() {
    const QSignalBlocker quiet(presets_);
    presets_->clear();
    presets_->addItem(tr("Nothing subscribed"), QString());
    std::vector<model::Preset> presets(document_.design().presets.begin(), document_.design().presets.end());
    std::ranges::sort(presets, {}, [](const auto& preset) { return std::pair(preset.number, preset.id); });
    for (const auto& preset : presets) {
        presets_->addItem(shown(preset.name), shown(preset.id.text()));
        if (selection_.preset() == preset.id) presets_->setCurrentIndex(presets_->count() - 1);
    }
}

void TopBar::fill_search() {
    QSet<QString> seen;
    for (const auto& each : findables(document_.design()))
        for (const auto& words : QStringList(each.name) + each.also) seen << words;
    auto all = seen.values();
    all.removeAll(QString());
    all.sort(Qt::CaseInsensitive);
    for (const auto& words : all) names_->appendRow(new QStandardItem(words));
}

void TopBar::step(int by) {
    search_->completer()->popup()->hide();
    const auto hits = found_in(document_.design(), search_->text());
    if (hits.empty()) return show_count();
    const auto count = static_cast<std::ptrdiff_t>(hits.size());
    const auto stood = at_ ? std::ranges::find(hits, *at_) : hits.end();
    std::ptrdiff_t next = by > 0 ? 0 : count - 1;
    if (stood != hits.end()) next = (stood - hits.begin() + by + count) % count;
    at_ = hits[static_cast<std::size_t>(next)];
    show_count();
    Q_EMIT found(*at_);
}

void TopBar::show_count() {
    const bool any = !search_->text().trimmed().isEmpty();
    count_->setVisible(any);
    for (auto* button : steps_) button->setVisible(any);
    if (!any) return;
    const auto hits = found_in(document_.design(), search_->text());
    const auto stood = at_ ? std::ranges::find(hits, *at_) : hits.end();
    for (auto* button : steps_) button->setEnabled(!hits.empty());
    if (hits.empty())
        count_->setText(tr("nothing found"));
    else if (stood == hits.end())
        count_->setText(tr("%1 found").arg(hits.size()));
    else
        count_->setText(tr("%1 of %2").arg(stood - hits.begin() + 1).arg(hits.size()));
}

}  // namespace streamwright::app
