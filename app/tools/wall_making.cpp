#include "app/tools/wall_making.h"

#include "app/canvas/viewport.h"
#include "app/words/words.h"

#include <QObject>

namespace streamwright::app {

void make_wall_of_selection(Viewport& viewport) {
    auto& document = viewport.document();
    const auto& design = document.design();
    const auto displays = model::tiles_among(design, viewport.selection().of<model::DeviceId>());
    if (displays.size() < 2) {
        viewport.tell(QObject::tr("Select two displays or more that stand in no wall yet."), true);
        return;
    }
    const auto wall = model::new_wall(design, document.ids().next<model::WallId>(), displays, viewport.sheet());
    const auto delta = model::make(design, model::SetWall{wall});
    if (!delta) {
        viewport.tell(sentence(delta.error()), true);
        return;
    }
    if (!document.commit(*delta, QObject::tr("Make a wall"))) return;
    viewport.tell(QObject::tr("%1 is made of %2 displays, %3 across and %4 down.")
                      .arg(shown(wall.name))
                      .arg(displays.size())
                      .arg(wall.columns)
                      .arg(wall.rows));
    viewport.selection().set(Chosen(*wall.tiles.front()));
}

void take_out_of_wall(Document& document, model::DeviceId display) {
    const auto* wall = model::wall_of(document.design(), display);
    if (!wall) return;
    if (auto less = model::without_tile(*wall, display))
        document.edit(model::SetWall{std::move(*less)}, QObject::tr("Take out of the wall"));
    else
        document.edit(model::Remove{{wall->id}, false}, QObject::tr("Dissolve the wall"));
}

}  // namespace streamwright::app
