#include "app/views/top_bar.h"

#include "app/words/words.h"

#include <QComboBox>
#include <QCompleter>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QStandardItemModel>
#include <QToolButton>

#include <algorithm>

namespace streamwright::app {

namespace top_bar_detail {

struct Name {
    QString text;
    Chosen subject;
};

std::vector<Name> names_of(const model::Design& design) {
    std::vector<Name> names;
    for (const auto& device : design.devices) {
        names.push_back({shown(device.tag), Chosen(device.id)});
        if (!device.host_name.empty()) names.push_back({shown(device.host_name), Chosen(device.id)});
        for (const auto& host : device.addresses)
            if (host.address) names.push_back({shown(base::print(*host.address)), Chosen(device.id)});
    }
    for (const auto& cable : design.cables) names.push_back({shown(cable.tag), Chosen(cable.id)});
    for (const auto& stream : design.streams) {
        names.push_back({shown(stream.tag), Chosen(stream.id)});
        if (stream.group) names.push_back({shown(base::print(*stream.group)), Chosen(stream.id)});
    }
    for (const auto& frame : design.room_frames)
        if (const auto* room = design.rooms.find(frame.room))
            names.push_back({shown(room->number + " " + room->name).trimmed(), Chosen(frame.id)});
    return names;
}

}  // namespace top_bar_detail

std::optional<Chosen> find_subject(const model::Design& design, const QString& text) {
    const auto wanted = text.trimmed();
    if (wanted.isEmpty()) return std::nullopt;
    const auto names = top_bar_detail::names_of(design);
    const auto first = [&](auto fits) -> std::optional<Chosen> {
        const auto found = std::ranges::find_if(names, fits);
        return found == names.end() ? std::nullopt : std::optional(found->subject);
    };
    using top_bar_detail::Name;
    if (auto same = first([&](const Name& n) { return n.text.compare(wanted, Qt::CaseInsensitive) == 0; })) return same;
    if (auto begins = first([&](const Name& n) { return n.text.startsWith(wanted, Qt::CaseInsensitive); }))
        return begins;
    return first([&](const Name& n) { return n.text.contains(wanted, Qt::CaseInsensitive); });
}

TopBar::TopBar(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent),
      document_(document),
      selection_(selection),
      title_(new QLabel(this)),
      revision_(new QLabel(this)),
      presets_(new QComboBox(this)),
      search_(new QLineEdit(this)),
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
    search_->setPlaceholderText(tr("Find a tag, room, address   Ctrl F"));
    search_->setAccessibleName(tr("Find a tag, room or address"));
    search_->setMinimumWidth(110);
    search_->setMaximumWidth(264);
    search_->setClearButtonEnabled(true);
    auto* completer = new QCompleter(names_, this);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setFilterMode(Qt::MatchContains);
    completer->setMaxVisibleItems(12);
    search_->setCompleter(completer);
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(16, 0, 14, 0);
    layout->setSpacing(12);
    layout->addWidget(title_);
    layout->addWidget(revision_);
    layout->addStretch(1);
    layout->addWidget(tab, 0, Qt::AlignBottom);
    layout->addStretch(1);
    layout->addWidget(preset_label);
    layout->addWidget(presets_, 2);
    layout->addWidget(search_, 3);
    connect(presets_, &QComboBox::activated, this, [this](int index) {
        selection_.set_preset(model::PresetId::parse(presets_->itemData(index).toString().toStdString()));
    });
    connect(search_, &QLineEdit::returnPressed, this, &TopBar::jump);
    connect(completer, QOverload<const QString&>::of(&QCompleter::activated), this, [this] { jump(); });
    connect(search_, &QLineEdit::textEdited, this, [this] {
        if (names_->rowCount() == 0) fill_search();
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
    for (const auto& name : top_bar_detail::names_of(document_.design()))
        names_->appendRow(new QStandardItem(name.text));
}

void TopBar::jump() {
    if (const auto subject = find_subject(document_.design(), search_->text())) Q_EMIT found(*subject);
}

}  // namespace streamwright::app
