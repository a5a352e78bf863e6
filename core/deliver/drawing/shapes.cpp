// Makers of primitives.
#include "core/deliver/drawing/shapes.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace streamwright::deliver {

namespace shapes_detail {

struct Extent {
    base::Length left, top, right, bottom;
    bool any = false;

    void add(SheetPoint p) {
        if (!any) *this = {p.x, p.y, p.x, p.y, true};
        left = std::min(left, p.x);
        right = std::max(right, p.x);
        top = std::min(top, p.y);
        bottom = std::max(bottom, p.y);
    }
};

void add_text(Extent& extent, const TextLine& line) {
    const auto width = layout::text_width(line.text, line.em, line.weight);
    const auto back = line.anchor == Anchor::left ? base::Length{} : line.anchor == Anchor::right ? width : width / 2;
    const auto low = line.em / 4;  // below the baseline
    if (line.upright) {
        extent.add({line.at.x - line.em, line.at.y + back});
        extent.add({line.at.x + low, line.at.y + back - width});
    } else {
        extent.add({line.at.x - back, line.at.y - line.em});
        extent.add({line.at.x - back + width, line.at.y + low});
    }
}

}  // namespace shapes_detail

SheetPoint moved(SheetPoint point, base::Length dx, base::Length dy) { return {point.x + dx, point.y + dy}; }

Path stroke(std::vector<SheetPoint> points, Role role) {
    Path path;
    path.points = std::move(points);
    path.role = role;
    return path;
}

Path outline(const Box& box, Role role, base::Length radius) {
    auto path = stroke(
        {box.at, moved(box.at, box.width, {}), moved(box.at, box.width, box.height), moved(box.at, {}, box.height)},
        role);
    path.closed = true;
    path.radius = radius;
    return path;
}

Path filled_box(const Box& box, Role role, base::Length radius) {
    auto path = outline(box, role, radius);
    path.filled = true;
    return path;
}

Path circle(SheetPoint centre, base::Length radius, Role role, bool filled) {
    constexpr int corners = 24;
    Path path;
    path.closed = true;
    path.filled = filled;
    path.role = role;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * 3.14159265358979323846 * i / corners;
        const auto along = [&](double part) {
            return base::Length::from_count(std::llround(static_cast<double>(radius.count()) * part));
        };
        path.points.push_back(moved(centre, along(std::cos(angle)), along(std::sin(angle))));
    }
    return path;
}

TextLine text_line(SheetPoint at, std::string text, base::Length em, Role role, Anchor anchor, layout::Weight weight) {
    TextLine line;
    line.at = at;
    line.text = std::move(text);
    line.em = em;
    line.weight = weight;
    line.anchor = anchor;
    line.role = role;
    return line;
}

TextLine bold_line(SheetPoint at, std::string text, base::Length em, Role role, Anchor anchor) {
    return text_line(at, std::move(text), em, role, anchor, layout::Weight::bold);
}

Box bounds_of(const std::vector<Shape>& shapes) {
    shapes_detail::Extent extent;
    for (const Shape& shape : shapes) {
        if (const auto* path = std::get_if<Path>(&shape)) {
            for (const auto& point : path->points) extent.add(point);
        } else {
            shapes_detail::add_text(extent, std::get<TextLine>(shape));
        }
    }
    if (!extent.any) return {};
    return Box{{extent.left, extent.top}, extent.right - extent.left, extent.bottom - extent.top}.grown(
        layout::measure::module);
}

}  // namespace streamwright::deliver
