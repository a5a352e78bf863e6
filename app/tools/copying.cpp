#include "app/tools/copying.h"

#include "app/canvas/viewport.h"
#include "app/tools/sheet_move.h"
#include "app/words/words.h"
#include "core/io/clipping_json.h"
#include "core/model/clipping.h"
#include "core/model/edits/paste.h"

#include <QClipboard>
#include <QGuiApplication>

#include <algorithm>

namespace streamwright::app {

namespace copying_detail {

constexpr double step_mm = 10;  // between a plate and its copy

model::Design selected_rows(Viewport& viewport) {
    const auto devices = viewport.selection().of<model::DeviceId>();
    return model::copied(viewport.document().design(), devices, viewport.sheet());
}

/// Whether a plate of the clipping, so shifted, would lie exactly on one that stands there.
bool covers(const model::Design& design, model::SheetId sheet, const model::Design& clipping, model::SheetPoint by) {
    return std::any_of(design.places.begin(), design.places.end(), [&](const model::Place& held) {
        return held.on.sheet == sheet &&
               std::any_of(clipping.places.begin(), clipping.places.end(), [&](const model::Place& place) {
                   return model::SheetPoint{place.at.x + by.x, place.at.y + by.y} == held.at;
               });
    });
}

/// The shift asked for, and on by steps down and right until no copy hides a plate.
model::SheetPoint free_shift(Viewport& viewport, const model::Design& clipping, model::SheetPoint by) {
    const auto step = from_mm(step_mm);
    const auto& design = viewport.document().design();
    while (covers(design, viewport.sheet(), clipping, by)) by = {by.x + step, by.y + step};
    return by;
}

/// From the upper left corner of all plates of the clipping to the pointer, on the grid.
model::SheetPoint to_pointer(const model::Design& clipping, QPointF pointer) {
    auto corner = clipping.places.begin()->at;
    for (const auto& place : clipping.places) corner = {std::min(corner.x, place.at.x), std::min(corner.y, place.at.y)};
    const auto to = from_mm(snapped(pointer));
    return {to.x - corner.x, to.y - corner.y};
}

void paste(Viewport& viewport, model::Design clipping, model::SheetPoint by, const QString& words) {
    auto& document = viewport.document();
    const auto shift = free_shift(viewport, clipping, by);
    const auto delta =
        model::make(document.design(), model::Paste{std::make_shared<const model::Design>(std::move(clipping)),
                                                    viewport.sheet(), shift, document.ids().next_bits()});
    if (!document.commit(delta, words)) return;
    std::set<Chosen> fresh;
    for (const auto& change : delta->of<model::Device>()) fresh.insert(Chosen(change.key()));
    viewport.selection().set(std::move(fresh));
}

QString nothing_selected() { return QObject::tr("Select the devices first."); }

}  // namespace copying_detail

bool copy_selection(Viewport& viewport) {
    using namespace copying_detail;
    const auto clipping = selected_rows(viewport);
    if (clipping.devices.empty()) {
        viewport.tell(nothing_selected(), true);
        return false;
    }
    QGuiApplication::clipboard()->setText(QString::fromStdString(io::write_clipping(clipping)));
    viewport.tell(QObject::tr("%n device(s) copied.", nullptr, static_cast<int>(clipping.devices.size())));
    return true;
}

void cut_selection(Viewport& viewport) {
    if (!copy_selection(viewport)) return;
    model::Remove edit;
    for (const auto id : viewport.selection().of<model::DeviceId>()) edit.rows.emplace_back(id);
    viewport.document().edit(edit, QObject::tr("Cut"));
}

void paste_clipboard(Viewport& viewport) {
    using namespace copying_detail;
    auto clipping = io::read_clipping(QGuiApplication::clipboard()->text().toStdString());
    if (!clipping) {
        viewport.tell(sentence(clipping.error()), true);
        return;
    }
    const auto pointer = viewport.pointer_mm();
    const auto by = pointer && !clipping->places.empty() ? to_pointer(*clipping, *pointer) : model::SheetPoint{};
    paste(viewport, std::move(*clipping), by, QObject::tr("Paste"));
}

void duplicate_selection(Viewport& viewport) {
    using namespace copying_detail;
    auto clipping = selected_rows(viewport);
    if (clipping.devices.empty()) {
        viewport.tell(nothing_selected(), true);
        return;
    }
    const auto step = from_mm(step_mm);
    paste(viewport, std::move(clipping), {step, step}, QObject::tr("Duplicate"));
}

void select_similar(Viewport& viewport) {
    const auto& design = viewport.document().design();
    std::set<model::TypeKey> devices;
    std::set<model::CableTypeKey> cables;
    for (const auto id : viewport.selection().of<model::DeviceId>())
        if (const auto* row = design.devices.find(id)) devices.insert(row->type);
    for (const auto id : viewport.selection().of<model::CableId>())
        if (const auto* row = design.cables.find(id)) cables.insert(row->type);
    std::set<Chosen> similar;
    for (const auto& plate : viewport.scene().plates())
        if (const auto* row = design.devices.find(plate.device); row && devices.contains(row->type))
            similar.insert(Chosen(row->id));
    for (const auto& cable : viewport.scene().cables())
        if (const auto* row = design.cables.find(cable.line.cable); row && cables.contains(row->type))
            similar.insert(Chosen(row->id));
    if (similar.empty())
        viewport.tell(QObject::tr("Select a device or a cable first."), true);
    else
        viewport.selection().set(std::move(similar));
}

void align_selection(Viewport& viewport, layout::Alignment alignment, const QString& words) {
    const auto& design = viewport.document().design();
    const auto devices = viewport.selection().of<model::DeviceId>();
    auto places = layout::aligned(design, viewport.sheet(), devices, alignment);
    if (!places.empty())
        viewport.document().commit(move_plates(design, viewport.sheet(), std::move(places)), words);
    else if (devices.size() < 2)
        viewport.tell(QObject::tr("Select two devices or more to align them."), true);
}

}  // namespace streamwright::app
