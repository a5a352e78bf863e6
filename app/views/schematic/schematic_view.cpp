#include "app/views/schematic/schematic_view.h"

#include "app/tools/cable_tool.h"
#include "app/tools/place_tool.h"
#include "app/tools/select_tool.h"
#include "app/words/words.h"
#include "core/layout/cable_route.h"

#include <QAction>
#include <QActionGroup>
#include <QComboBox>
#include <QFrame>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QVBoxLayout>

#include <algorithm>

namespace streamwright::app {

namespace schematic_view_detail {

QToolButton* button_for(QAction* action, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setDefaultAction(action);
    button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    button->setFocusPolicy(Qt::TabFocus);
    return button;
}

/// Sheets that the subject is drawn on, the shown one first.
std::optional<model::SheetId> sheet_of(const model::Design& design, const Chosen& subject, model::SheetId present) {
    const auto holds = [&](model::SheetId sheet) {
        struct On {
            const model::Design& design;
            model::SheetId sheet;
            bool operator()(model::DeviceId id) const { return design.places.contains({sheet, id}); }
            bool operator()(const model::PortRef& ref) const { return (*this)(ref.device); }
            bool operator()(model::CableId id) const {
                const auto* cable = design.cables.find(id);
                if (!cable) return false;
                return (cable->a && (*this)(cable->a->port.device)) || (cable->b && (*this)(cable->b->port.device));
            }
            bool operator()(model::StreamId id) const {
                const auto* stream = design.streams.find(id);
                return stream && (*this)(stream->encoder);
            }
            bool operator()(model::FrameId id) const {
                const auto* frame = design.room_frames.find(id);
                return frame && frame->sheet == sheet;
            }
            bool operator()(model::NoteId id) const {
                const auto* note = design.notes.find(id);
                return note && note->sheet == sheet;
            }
            bool operator()(model::VlanId) const { return false; }  // no sheet draws a VLAN
        };
        return std::visit(On{design, sheet}, subject);
    };
    if (holds(present)) return present;
    for (const auto& sheet : design.sheets)
        if (holds(sheet.id)) return sheet.id;
    return std::nullopt;
}

std::vector<model::Sheet> by_number(const model::Design& design) {
    std::vector<model::Sheet> sheets(design.sheets.begin(), design.sheets.end());
    std::ranges::sort(sheets, {}, [](const auto& sheet) { return std::pair(sheet.number, sheet.id); });
    return sheets;
}

}  // namespace schematic_view_detail

SchematicView::SchematicView(Document& document, Selection& selection, std::shared_ptr<const Library> library,
                             QWidget* parent)
    : QWidget(parent), document_(document), selection_(selection), viewport_(new Viewport(document, selection, this)) {
    box_.library = std::move(library);
    viewport_->set_chooser(
        [this](Viewport& viewport, const Pointer& at) { return choose_gesture(box_, viewport, at); });
    viewport_->set_nudge(nudge_selection);
    viewport_->set_drop_target(std::make_unique<PlaceTool>(*viewport_, box_.library));
    make_tool_bar();
    make_empty_state();
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(bar_->parentWidget());
    layout->addWidget(viewport_, 1);
    connect(viewport_, &Viewport::scene_changed, this, [this] {
        fill_sheets();
        show_empty_state();
    });
    connect(viewport_, &Viewport::view_changed, this, &SchematicView::show_empty_state);
    connect(viewport_, &Viewport::delete_requested, this, &SchematicView::delete_selection);
    connect(viewport_, &Viewport::activated, this, [this](const Chosen& subject) {
        if (const auto* port = std::get_if<model::PortRef>(&subject))
            viewport_->start(keyboard_pull(box_, *viewport_, *port));
        else
            selection_.set(subject);
    });
    connect(&document_, &Document::changed, this, [this] { selection_.keep_only_rows_of(document_.design()); });
}

void SchematicView::make_tool_bar() {
    using schematic_view_detail::button_for;
    auto* holder = new QWidget(this);
    holder->setObjectName(QStringLiteral("ToolBar"));
    holder->setAttribute(Qt::WA_StyledBackground);
    holder->setFixedHeight(36);
    bar_ = new QHBoxLayout(holder);
    // On a small screen the bar gives way rather than the window growing beyond it.
    bar_->setSizeConstraint(QLayout::SetNoConstraint);
    holder->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    bar_->setContentsMargins(14, 4, 14, 4);
    bar_->setSpacing(4);
    tools_ = new QActionGroup(this);
    const std::tuple<QString, QString, Tool> tools[] = {{tr("Select"), QStringLiteral("V"), Tool::select},
                                                        {tr("Cable"), QStringLiteral("C"), Tool::cable}};
    for (const auto& [words, key, tool] : tools) {
        auto* action = new QAction(words, tools_);
        action->setCheckable(true);
        action->setChecked(tool == Tool::select);
        action->setShortcut(key);
        action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
        action->setToolTip(tr("%1 (%2)").arg(words, key));
        addAction(action);
        connect(action, &QAction::triggered, this, [this, tool = tool] { set_tool(tool); });
        auto* button = button_for(action, holder);
        button->setSizePolicy(QSizePolicy::Minimum, QSizePolicy::Fixed);  // words of a tool are never cut
        bar_->addWidget(button);
    }
    auto* room = new QAction(tr("Room"), this);
    room->setToolTip(tr("Draw a new room round the selection, or in the middle"));
    connect(room, &QAction::triggered, this, &SchematicView::add_room);
    extras_.push_back(button_for(room, holder));
    bar_->addWidget(extras_.back());
    auto* note = new QAction(tr("Note"), this);
    note->setToolTip(tr("Write a note in the middle of the view"));
    connect(note, &QAction::triggered, this, &SchematicView::add_note);
    extras_.push_back(button_for(note, holder));
    bar_->addWidget(extras_.back());
    bar_->addSpacing(12);
    bar_->addStretch(1);
    sheets_ = new QComboBox(holder);
    sheets_->setAccessibleName(tr("Sheet"));
    sheets_->setMinimumWidth(90);
    sheets_->setMaximumWidth(380);
    sheets_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    connect(sheets_, &QComboBox::activated, this, [this](int index) {
        const auto id = model::SheetId::parse(sheets_->itemData(index).toString().toStdString());
        if (id)
            viewport_->show_sheet(*id);
        else
            add_sheet();
    });
    bar_->addWidget(sheets_);
}

void SchematicView::add_actions(const QList<QAction*>& actions) {
    int at = bar_->count() - 2;
    for (auto* action : actions) {
        if (!action) {
            bar_->insertSpacing(at++, 12);
            continue;
        }
        extras_.push_back(schematic_view_detail::button_for(action, bar_->parentWidget()));
        bar_->insertWidget(at++, extras_.back());
    }
}

void SchematicView::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    constexpr int tools_and_sheets = 330, between = 10;
    int left = width() - tools_and_sheets;
    for (auto* button : extras_) {
        left -= button->sizeHint().width() + between;
        button->setVisible(left >= 0);
    }
}

void SchematicView::make_empty_state() {
    empty_ = new QFrame(viewport_);
    empty_->setAttribute(Qt::WA_StyledBackground);
    auto* words = new QLabel(tr("Nothing placed yet. Drag a type from the catalogue onto the sheet."), empty_);
    words->setProperty("tone", "title");
    auto* open = new QPushButton(tr("Open a design…"), empty_);
    auto* example = new QPushButton(tr("Open an example…"), empty_);
    auto* buttons = new QHBoxLayout;
    buttons->addStretch();
    buttons->addWidget(open);
    buttons->addWidget(example);
    buttons->addStretch();
    auto* layout = new QVBoxLayout(empty_);
    layout->addWidget(words, 0, Qt::AlignHCenter);
    layout->addLayout(buttons);
    connect(open, &QPushButton::clicked, this, &SchematicView::open_requested);
    connect(example, &QPushButton::clicked, this, &SchematicView::example_requested);
    empty_->hide();
}

void SchematicView::show_empty_state() {
    const auto& scene = viewport_->scene();
    const bool empty = scene.plates().empty() && scene.frames().empty() && scene.notes().empty();
    empty_->setVisible(empty);
    if (!empty) return;
    empty_->adjustSize();
    empty_->move((viewport_->width() - empty_->width()) / 2, (viewport_->height() - empty_->height()) / 2);
}

void SchematicView::set_theme(const Theme& theme) { viewport_->set_theme(theme); }

void SchematicView::set_tool(Tool tool) {
    box_.tool = tool;
    tools_->actions()[tool == Tool::select ? 0 : 1]->setChecked(true);
    viewport_->setCursor(tool == Tool::cable ? Qt::CrossCursor : Qt::ArrowCursor);
    viewport_->tell(tool == Tool::cable ? tr("Press on a port and pull the cable to another.") : QString());
}

void SchematicView::fill_sheets() {
    const QSignalBlocker quiet(sheets_);
    sheets_->clear();
    const auto sheets = schematic_view_detail::by_number(document_.design());
    for (const auto& sheet : sheets) {
        const auto paper = base::enum_text(sheet.paper);
        sheets_->addItem(tr("Page %1 of %2 · %3 · %4")
                             .arg(sheet.number)
                             .arg(sheets.size())
                             .arg(shown(sheet.title), QString::fromUtf8(paper.data(), int(paper.size()))),
                         shown(sheet.id.text()));
        if (sheet.id == viewport_->sheet()) sheets_->setCurrentIndex(sheets_->count() - 1);
    }
    sheets_->addItem(tr("Add a sheet"), QString());
}

void SchematicView::add_sheet() {
    model::Sheet sheet{.id = document_.ids().next<model::SheetId>()};
    for (const auto& each : document_.design().sheets) sheet.number = std::max(sheet.number, each.number + 1);
    sheet.title = tr("Schematic %1").arg(sheet.number).toStdString();
    if (document_.edit(model::AddRows{{sheet}}, tr("Add sheet"))) viewport_->show_sheet(sheet.id);
}

void SchematicView::add_room() {
    QRectF box;
    for (const auto id : selection_.of<model::DeviceId>())
        if (const auto* plate = viewport_->scene().plate(id)) box |= plate->whole();
    if (box.isEmpty()) box = QRectF(viewport_->centre_mm() - QPointF(30, 20), QSizeF(60, 40));
    box.adjust(-6, -12, 6, 6);
    model::Room room{document_.ids().next<model::RoomId>()};
    room.number = std::to_string(document_.design().rooms.size() + 1);
    room.name = tr("New room").toStdString();
    auto frame = model::RoomFrame::blank(document_.ids().next<model::FrameId>());
    frame.sheet = viewport_->sheet();
    frame.room = room.id;
    frame.at = from_mm(snapped(box.topLeft()));
    frame.width = from_mm(snapped(box.width()));
    frame.height = from_mm(snapped(box.height()));
    auto delta = model::make(document_.design(), model::AddRows{{room, frame}});
    const auto devices = selection_.of<model::DeviceId>();
    if (delta && !devices.empty()) {
        auto after = document_.design();
        model::apply(after, *delta);
        const auto moved = model::make(after, model::StandInRoom{devices, room.id, {}, {}, {}});
        if (moved) delta = model::joined(*delta, *moved);
    }
    if (document_.commit(delta, tr("Add room"))) selection_.set(Chosen(frame.id));
}

void SchematicView::add_note() {
    auto note = model::Note::blank(document_.ids().next<model::NoteId>());
    note.sheet = viewport_->sheet();
    note.at = from_mm(snapped(viewport_->centre_mm()));
    note.text = tr("New note").toStdString();
    if (document_.edit(model::AddRows{{note}}, tr("Add note"))) selection_.set(Chosen(note.id));
}

void SchematicView::place(const std::shared_ptr<const catalogue::DeviceType>& type) {
    const auto at = viewport_->pointer_mm();
    place_type(*viewport_, type, at.value_or(viewport_->centre_mm()), true);
}

bool SchematicView::go_to(const Chosen& subject) {
    const auto sheet = schematic_view_detail::sheet_of(document_.design(), subject, viewport_->sheet());
    if (sheet && *sheet != viewport_->sheet()) viewport_->show_sheet(*sheet);
    selection_.set(subject);
    if (sheet) viewport_->find(subject);
    return sheet.has_value();
}

void SchematicView::delete_selection() {
    model::Remove edit;
    for (const auto& subject : selection_.all()) {
        if (const auto* device = std::get_if<model::DeviceId>(&subject)) edit.rows.emplace_back(*device);
        if (const auto* cable = std::get_if<model::CableId>(&subject)) edit.rows.emplace_back(*cable);
        if (const auto* stream = std::get_if<model::StreamId>(&subject)) edit.rows.emplace_back(*stream);
        if (const auto* frame = std::get_if<model::FrameId>(&subject)) edit.rows.emplace_back(*frame);
        if (const auto* note = std::get_if<model::NoteId>(&subject)) edit.rows.emplace_back(*note);
        if (const auto* vlan = std::get_if<model::VlanId>(&subject)) edit.rows.emplace_back(*vlan);
    }
    if (edit.rows.empty()) return;
    const auto words = edit.rows.size() == 1 ? tr("Delete") : tr("Delete %1 things").arg(edit.rows.size());
    document_.edit(edit, words);
}

void SchematicView::select_all() {
    std::set<Chosen> all;
    for (const auto& plate : viewport_->scene().plates()) all.insert(Chosen(plate.device));
    for (const auto& cable : viewport_->scene().cables()) all.insert(Chosen(cable.line.cable));
    for (const auto& frame : viewport_->scene().frames()) all.insert(Chosen(frame.row.id));
    for (const auto& note : viewport_->scene().notes()) all.insert(Chosen(note.note));
    selection_.set(std::move(all));
}

void SchematicView::change_places(const QString& words, const std::function<void(model::Place&)>& change) {
    const auto& design = document_.design();
    model::MoveOnSheet edit;
    std::vector<model::CableId> cables;
    for (const auto id : selection_.of<model::DeviceId>()) {
        const auto* place = design.places.find({viewport_->sheet(), id});
        if (!place) continue;
        edit.places.push_back(*place);
        change(edit.places.back());
        for (const auto& cable : design.cables)
            if ((cable.a && cable.a->port.device == id) || (cable.b && cable.b->port.device == id))
                cables.push_back(cable.id);
    }
    const auto plain = model::make(design, edit);
    if (!plain || edit.places.empty()) return;
    auto after = design;
    model::apply(after, *plain);
    edit.lines = layout::reroute(after, viewport_->sheet(), cables);
    document_.edit(edit, words);
}

void SchematicView::turn_selection() {
    change_places(tr("Turn over"), [](model::Place& place) { place.turned = !place.turned; });
}

void SchematicView::fold_selection() {
    change_places(tr("Fold"), [](model::Place& place) { place.folded = !place.folded; });
}

}  // namespace streamwright::app
