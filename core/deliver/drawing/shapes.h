// Short makers of the primitives that fragments consist of.
#pragma once

#include "core/deliver/drawing/fragment.h"

#include <string>
#include <vector>

namespace streamwright::deliver {

/// Quarter millimetres, the unit of the canvas.
constexpr base::Length units(std::int64_t count) { return base::Length::from_count(count * 250); }

SheetPoint moved(SheetPoint point, base::Length dx, base::Length dy);

Path stroke(std::vector<SheetPoint> points, Role role);
Path outline(const Box& box, Role role, base::Length radius = {});
Path filled_box(const Box& box, Role role, base::Length radius = {});
/// A polygon close enough to a circle for a mark or a badge.
Path circle(SheetPoint centre, base::Length radius, Role role, bool filled);

TextLine text_line(SheetPoint at, std::string text, base::Length em, Role role = Role::text,
                   Anchor anchor = Anchor::left, layout::Weight weight = layout::Weight::normal);
TextLine bold_line(SheetPoint at, std::string text, base::Length em, Role role = Role::text,
                   Anchor anchor = Anchor::left);

/// The smallest box that holds all shapes, a millimetre wider on each side for strokes.
Box bounds_of(const std::vector<Shape>& shapes);

/// Appends all of `more`.
template <class Any>
void append(std::vector<Shape>& shapes, std::vector<Any> more) {
    for (auto& shape : more) shapes.emplace_back(std::move(shape));
}

}  // namespace streamwright::deliver
