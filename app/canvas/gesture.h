// One gesture on the canvas, from press to release: it shows a preview in the overlay and ends in at most one edit.
#pragma once

#include "app/canvas/hit_test.h"

#include <functional>
#include <memory>

class QKeyEvent;

namespace streamwright::app {

class Viewport;

/// Where the pointer is and what is under it.
struct Pointer {
    QPointF view;
    QPointF mm;
    Hit hit;
    Qt::KeyboardModifiers modifiers;
    Qt::MouseButton button = Qt::NoButton;
};

class Gesture {
public:
    Gesture() = default;
    virtual ~Gesture() = default;
    Gesture(const Gesture&) = delete;
    Gesture& operator=(const Gesture&) = delete;

    virtual void moved(const Pointer& pointer) = 0;
    virtual void released(const Pointer& pointer) = 0;
    /// Dropped by Escape; the overlay is cleared by the viewport.
    virtual void cancelled() {}
    /// Whether the key was for this gesture.
    virtual bool key(QKeyEvent&) { return false; }
    /// Goes on after the button is released, until done() or Escape.
    virtual bool lasting() const { return false; }
};

/// Decides what a press starts.
using ChooseGesture = std::function<std::unique_ptr<Gesture>(Viewport&, const Pointer&)>;

/// Takes what is dragged in from the catalogue.
class DropTarget {
public:
    DropTarget() = default;
    virtual ~DropTarget() = default;
    DropTarget(const DropTarget&) = delete;
    DropTarget& operator=(const DropTarget&) = delete;
    virtual bool entered(const QString& type_key) = 0;
    virtual void moved(QPointF mm) = 0;
    virtual void dropped(QPointF mm) = 0;
    virtual void left() = 0;
};

/// The grid that plates and bends keep: 1 mm.
inline double snapped(double mm) { return std::round(mm); }
inline QPointF snapped(QPointF mm) { return {snapped(mm.x()), snapped(mm.y())}; }

}  // namespace streamwright::app
