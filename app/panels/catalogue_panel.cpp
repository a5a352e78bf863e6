#include "app/panels/catalogue_panel.h"

#include "app/render/role_icon.h"
#include "app/words/words.h"

#include <QCoreApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QMimeData>
#include <QStandardItemModel>
#include <QTreeView>
#include <QVBoxLayout>

#include <algorithm>
#include <array>

namespace streamwright::app {

namespace catalogue_panel_detail {

using catalogue::DeviceKind;

constexpr int key_role = Qt::UserRole + 1;

struct Group {
    const char* title;
    std::vector<DeviceKind> kinds;
};

const std::vector<Group>& groups() {
    static const std::vector<Group> all{
        {QT_TRANSLATE_NOOP("catalogue", "Encoders and decoders"),
         {DeviceKind::encoder, DeviceKind::decoder, DeviceKind::endpoint, DeviceKind::card, DeviceKind::chassis}},
        {QT_TRANSLATE_NOOP("catalogue", "Switches"), {DeviceKind::network_switch}},
        {QT_TRANSLATE_NOOP("catalogue", "Sources"), {DeviceKind::source, DeviceKind::camera}},
        {QT_TRANSLATE_NOOP("catalogue", "Displays"),
         {DeviceKind::display, DeviceKind::projector, DeviceKind::wall_tile, DeviceKind::video_processor}},
        {QT_TRANSLATE_NOOP("catalogue", "Extenders"), {DeviceKind::extender_sender, DeviceKind::extender_receiver}},
        {QT_TRANSLATE_NOOP("catalogue", "Sound"),
         {DeviceKind::microphone, DeviceKind::audio_processor, DeviceKind::amplifier, DeviceKind::speaker}},
        {QT_TRANSLATE_NOOP("catalogue", "Control and servers"),
         {DeviceKind::control_processor, DeviceKind::touch_panel, DeviceKind::management_server,
          DeviceKind::authentication_server}},
        {QT_TRANSLATE_NOOP("catalogue", "Patching"), {DeviceKind::patch_panel}},
        {QT_TRANSLATE_NOOP("catalogue", "Power"), {DeviceKind::ups}},
        {QT_TRANSLATE_NOOP("catalogue", "Other"), {DeviceKind::other}}};
    return all;
}

/// Transceivers go into cages and racks hold devices: neither is placed on the Schematic.
bool placeable(const catalogue::DeviceType& type) {
    return type.kind != DeviceKind::transceiver && type.kind != DeviceKind::rack;
}

/// Every word must be found in the name, the maker, the kind or a port.
bool matches(const catalogue::DeviceType& type, const QString& search) {
    QString all = shown(type.name + ' ' + type.maker + ' ' + type.family + ' ' + type.key.text + ' ');
    all += QString::fromUtf8(base::enum_text(type.kind).data());
    for (const auto& port : type.ports) all += ' ' + shown(port.label);
    const auto words = search.split(' ', Qt::SkipEmptyParts);
    return std::ranges::all_of(words, [&](const QString& word) { return all.contains(word, Qt::CaseInsensitive); });
}

using Types = std::vector<std::shared_ptr<const catalogue::DeviceType>>;

/// How well the name itself answers: 0 it begins so, 1 it has these words together, 2 they are found here and there.
int distance_of(const catalogue::DeviceType& type, const QString& search) {
    const auto place = shown(type.name).indexOf(search.trimmed(), 0, Qt::CaseInsensitive);
    return place == 0 ? 0 : place > 0 ? 1 : 2;
}

struct Answer {
    QString title;
    Types types;  // nearest first
    int distance = 0;
};

/// The groups that hold what is searched for, that of the nearest name first; in their usual order without a search.
std::vector<Answer> answers(const Library& library, const QString& search) {
    std::vector<Answer> found;
    const auto distance = [&](const auto& type) { return distance_of(*type, search); };
    for (const auto& group : groups()) {
        Answer answer{QCoreApplication::translate("catalogue", group.title), {}, 0};
        for (const auto kind : group.kinds)
            for (const auto& type : library.devices)
                if (type->kind == kind && placeable(*type) && matches(*type, search)) answer.types.push_back(type);
        if (answer.types.empty()) continue;
        if (!search.trimmed().isEmpty()) {
            std::ranges::stable_sort(answer.types, {}, distance);
            answer.distance = distance(answer.types.front());
        }
        found.push_back(std::move(answer));
    }
    std::ranges::stable_sort(found, {}, &Answer::distance);
    return found;
}

class TypesModel final : public QStandardItemModel {
public:
    using QStandardItemModel::QStandardItemModel;
    QStringList mimeTypes() const override { return {QLatin1String(type_mime)}; }
    QMimeData* mimeData(const QModelIndexList& rows) const override {
        for (const auto& row : rows) {
            const auto key = row.data(key_role).toString();
            if (key.isEmpty()) continue;
            auto* data = new QMimeData;
            data->setData(QLatin1String(type_mime), key.toUtf8());
            return data;
        }
        return nullptr;
    }
};

}  // namespace catalogue_panel_detail

CataloguePanel::CataloguePanel(std::shared_ptr<const Library> library, QWidget* parent)
    : QWidget(parent),
      library_(std::move(library)),
      theme_(bundled_theme(ThemeChoice::light)),
      count_(new QLabel(this)),
      search_(new QLineEdit(this)),
      list_(new QTreeView(this)),
      model_(new catalogue_panel_detail::TypesModel(this)) {
    setObjectName(QStringLiteral("CataloguePanel"));
    setAttribute(Qt::WA_StyledBackground);
    auto* title = new QLabel(tr("Catalogue"), this);
    title->setProperty("tone", "strong");
    count_->setProperty("tone", "faint");
    auto* head = new QHBoxLayout;
    head->addWidget(title);
    head->addStretch();
    head->addWidget(count_);
    search_->setPlaceholderText(tr("Name, port or kind"));
    search_->setAccessibleName(tr("Search the catalogue"));
    search_->setClearButtonEnabled(true);
    list_->setModel(model_);
    list_->setHeaderHidden(true);
    list_->setRootIsDecorated(false);
    list_->setIndentation(0);
    list_->setIconSize({16, 16});
    list_->setDragEnabled(true);
    list_->setDragDropMode(QAbstractItemView::DragOnly);
    list_->setEditTriggers(QAbstractItemView::NoEditTriggers);
    list_->setExpandsOnDoubleClick(false);
    list_->setTextElideMode(Qt::ElideRight);
    list_->setAccessibleName(tr("Types"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(12, 12, 4, 4);
    layout->setSpacing(8);
    layout->addLayout(head);
    layout->addWidget(search_);
    layout->addWidget(list_);
    head->setContentsMargins(0, 0, 8, 0);
    connect(search_, &QLineEdit::textChanged, this, [this] { fill(); });
    connect(search_, &QLineEdit::returnPressed, this, [this] { list_->setFocus(); });
    connect(list_, &QTreeView::activated, this, &CataloguePanel::place);
    fill();
}

void CataloguePanel::set_theme(const Theme& theme) {
    theme_ = theme;
    fill();
}

void CataloguePanel::focus_search() {
    search_->setFocus(Qt::ShortcutFocusReason);
    search_->selectAll();
}

void CataloguePanel::fill() {
    using namespace catalogue_panel_detail;
    const auto chosen = list_->currentIndex().data(key_role).toString();
    model_->clear();
    int count = 0;
    for (const auto& [title, types, distance] : answers(*library_, search_->text())) {
        auto* head = new QStandardItem(title + QStringLiteral("  %1").arg(types.size()));
        QFont bold = font();
        bold.setBold(true);
        head->setFont(bold);
        head->setFlags(Qt::ItemIsEnabled);
        head->setSizeHint({100, 30});
        for (const auto& type : types) {
            auto* row = new QStandardItem(role_icon(*type, theme_), shown(type->name));
            row->setData(shown(type->key.text), key_role);
            row->setToolTip(shown(type->name + "\n" + type->maker + (type->family.empty() ? "" : " " + type->family)));
            row->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsDragEnabled);
            head->appendRow(row);
            ++count;
        }
        model_->appendRow(head);
    }
    list_->expandAll();
    count_->setText(count == 1 ? tr("1 type") : tr("%1 types").arg(count));
    for (int g = 0; g < model_->rowCount(); ++g)
        for (int r = 0; r < model_->item(g)->rowCount(); ++r)
            if (model_->item(g)->child(r)->data(key_role).toString() == chosen && !chosen.isEmpty())
                list_->setCurrentIndex(model_->item(g)->child(r)->index());
    if (!list_->currentIndex().isValid() && model_->rowCount() > 0)
        list_->setCurrentIndex(model_->item(0)->child(0)->index());
}

void CataloguePanel::place(const QModelIndex& row) {
    const auto key = row.data(catalogue_panel_detail::key_role).toString().toStdString();
    if (const auto type = library_->device({key})) Q_EMIT place_requested(type);
}

}  // namespace streamwright::app
