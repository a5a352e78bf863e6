#include "app/tools/place_tool.h"

#include "app/canvas/viewport.h"
#include "app/words/words.h"
#include "core/deliver/drawing/schematic_fragments.h"
#include "core/layout/lines.h"
#include "core/model/edits/place_device.h"

#include <algorithm>

namespace streamwright::app {

namespace place_tool_detail {

layout::Plate plate_at(const catalogue::DeviceType& type, QPointF corner) {
    model::Place place{{model::SheetId(0), model::DeviceId(0)}};
    place.at = from_mm(corner);
    return layout::plate_of(&type, {}, place);
}

/// Upper left corner of a plate whose middle is there, on the grid.
QPointF corner_for(const catalogue::DeviceType& type, QPointF middle) {
    const auto body = plate_at(type, {}).body;
    return snapped(middle - QPointF(to_mm(body.width), to_mm(body.height)) / 2);
}

bool free_at(const SheetScene& scene, const catalogue::DeviceType& type, QPointF corner) {
    const auto box = layout::obstacle(plate_at(type, corner)).grown(from_mm(2));
    return std::ranges::none_of(scene.plates(),
                                [&](const auto& plate) { return box.meets(layout::obstacle(plate.plate)); });
}

/// The nearest free corner, looked for below, then beside.
QPointF way_made(const SheetScene& scene, const catalogue::DeviceType& type, QPointF corner) {
    for (int column = 0; column < 6; ++column)
        for (int row = 0; row < 20; ++row) {
            const QPointF at = corner + QPointF(70.0 * column, 10.0 * row);
            if (free_at(scene, type, at)) return at;
        }
    return corner;
}

model::PlaceDevice edit_for(Viewport& viewport, const std::shared_ptr<const catalogue::DeviceType>& type,
                            QPointF corner) {
    const auto body = plate_at(*type, corner).body;
    const auto* frame = viewport.scene().frame_at(to_mm(body).center());
    return {viewport.document().ids().next<model::DeviceId>(),
            type,
            {},
            frame ? std::optional(frame->row.room) : std::nullopt,
            viewport.sheet(),
            from_mm(corner)};
}

/// The plate as it would be drawn, made from a design in which it stands already.
deliver::Fragment ghost_of(Viewport& viewport, const std::shared_ptr<const catalogue::DeviceType>& type) {
    const auto& design = viewport.document().design();
    const auto edit = edit_for(viewport, type, {});
    const auto delta = model::make(design, edit);
    if (!delta) return {};
    auto after = design;
    model::apply(after, *delta);
    const deliver::Scene scene{after, viewport.document().analyser().facts(), viewport.sheet(), phrasebook(after)};
    const auto* place = after.places.find({viewport.sheet(), edit.id});
    return place ? deliver::device_fragment(scene, *place) : deliver::Fragment{};
}

}  // namespace place_tool_detail

PlaceTool::PlaceTool(Viewport& viewport, std::shared_ptr<const Library> library)
    : viewport_(viewport), library_(std::move(library)) {}

bool PlaceTool::entered(const QString& type_key) {
    type_ = library_->device({type_key.toStdString()});
    if (!type_) return false;
    viewport_.overlay().ghosts = {place_tool_detail::ghost_of(viewport_, type_)};
    return true;
}

void PlaceTool::moved(QPointF mm) {
    if (!type_) return;
    viewport_.overlay().ghost_shift = place_tool_detail::corner_for(*type_, mm);
    const auto* frame = viewport_.scene().frame_at(mm);
    const auto* room = frame ? viewport_.document().design().rooms.find(frame->row.room) : nullptr;
    viewport_.tell(room
                       ? QObject::tr("%1 in room %2 %3").arg(shown(type_->name), shown(room->number), shown(room->name))
                       : shown(type_->name));
    viewport_.refresh();
}

void PlaceTool::dropped(QPointF mm) {
    const auto type = std::exchange(type_, nullptr);
    viewport_.overlay().clear_gesture();
    if (type) place_type(viewport_, type, mm, false);
    viewport_.tell({});
}

void PlaceTool::left() {
    type_.reset();
    viewport_.overlay().clear_gesture();
    viewport_.tell({});
    viewport_.refresh();
}

bool place_type(Viewport& viewport, const std::shared_ptr<const catalogue::DeviceType>& type, QPointF mm,
                bool make_way) {
    using namespace place_tool_detail;
    QPointF corner = corner_for(*type, mm);
    if (make_way) corner = way_made(viewport.scene(), *type, corner);
    const auto edit = edit_for(viewport, type, corner);
    if (!viewport.document().edit(edit, QObject::tr("Place %1").arg(shown(type->name)))) return false;
    viewport.selection().set(Chosen(edit.id));
    viewport.set_focused(Chosen(edit.id));
    return true;
}

}  // namespace streamwright::app
