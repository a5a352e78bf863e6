// Paints a sheet at any zoom: everything from 70 %, marks and tags from 35 %, numbers from 15 %, below that rooms with
// counts. Places never move with zoom; text below 70 % is set at screen size.
#pragma once

#include "app/canvas/sheet_scene.h"
#include "app/render/screen_style.h"

#include <set>

class QPainter;

namespace streamwright::app {

enum class Detail { all, marks, numbers, rooms };
Detail detail_at(double zoom);

struct PaintRequest {
    const SheetScene& scene;
    ViewTransform view;
    QSizeF size;  // of the view, pixels
    const Theme& theme;
    const std::set<Chosen>& selected;
    std::set<Chosen> hidden;          // being moved: the overlay paints them
    bool pulling = false;             // a lead is pulled: what does not fit is dimmed
    std::set<model::PortRef> bright;  // ports that fit, and the one it is pulled from
};

void paint_scene(QPainter& painter, const PaintRequest& request);

}  // namespace streamwright::app
