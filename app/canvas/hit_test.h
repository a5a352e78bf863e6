// What is under a point of the sheet. The nearer to the eye, the earlier: badges, lugs, plates, cables, notes, frames.
#pragma once

#include "app/canvas/sheet_scene.h"

#include <optional>
#include <set>

namespace streamwright::app {

struct Hit {
    enum class Part { nothing, frame, note, cable, plate, port, badge };
    Part part = Part::nothing;
    std::optional<Chosen> subject;  // what a click selects
    int segment = -1;               // of a cable

    std::optional<model::PortRef> port() const {
        const auto* ref = subject ? std::get_if<model::PortRef>(&*subject) : nullptr;
        return ref ? std::optional(*ref) : std::nullopt;
    }
    friend bool operator==(const Hit&, const Hit&) = default;
};

/// `zoom` decides how far off a lug or a cable may be: lugs have a catch area of 24 px, cables one of 4 px a side.
Hit hit_test(const SheetScene& scene, QPointF mm, double zoom);

/// What a marquee catches: plates it meets, cables, notes and frames it holds whole.
std::set<Chosen> caught_by(const SheetScene& scene, const QRectF& mm);

}  // namespace streamwright::app
