// What lies over the drawing for the moment: hover, focus, handles, previews of gestures, the reason of a refusal.
#pragma once

#include "app/canvas/painter.h"

#include <QString>

#include <optional>
#include <vector>

namespace streamwright::app {

/// A line being pulled or rerouted.
struct PreviewLine {
    std::vector<model::SheetPoint> points;
    catalogue::Signal signal = catalogue::Signal::copper;
    bool refused = false;  // vermillion dots
};

/// A boxed note near the pointer: what is refused and why, or what a drop would do.
struct PointerNote {
    QPointF at;  // view pixels
    QString head, why, hint;
    bool refused = true;
};

struct Overlay {
    std::optional<Chosen> hover, focus;
    std::vector<PreviewLine> lines;
    std::vector<deliver::Fragment> ghosts;  // painted shifted by ghost_shift
    QPointF ghost_shift;                    // millimetres
    std::optional<QRectF> marquee;          // millimetres
    bool pulling = false;
    std::set<model::PortRef> fitting;
    std::optional<model::PortRef> pulled_from, refusing;
    std::optional<PointerNote> note;
    std::set<Chosen> hidden;  // not painted in the scene, because the overlay shows them elsewhere

    void clear_gesture();
};

void paint_overlay(QPainter& painter, const Overlay& overlay, const PaintRequest& request);

}  // namespace streamwright::app
