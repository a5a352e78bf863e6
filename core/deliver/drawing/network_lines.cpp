// Walks orthogonal lines in steps.
#include "core/deliver/drawing/network_lines.h"

#include "core/deliver/drawing/shapes.h"

#include <algorithm>
#include <cstdlib>

namespace streamwright::deliver {

namespace network_lines_detail {

using base::Length;
using namespace base::literals;

struct Piece {
    SheetPoint from, to;
};

std::vector<Piece> pieces(const std::vector<SheetPoint>& points, Length on, Length off) {
    std::vector<Piece> found;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const auto &a = points[i - 1], &b = points[i];
        const auto dx = (b.x - a.x).count(), dy = (b.y - a.y).count();
        const auto length = std::abs(dx) + std::abs(dy);
        const auto spot = [&](std::int64_t along) {
            return moved(a, Length::from_count(dx * along / length), Length::from_count(dy * along / length));
        };
        for (std::int64_t along = 0; along < length; along += (on + off).count())
            found.push_back({spot(along), spot(std::min(along + on.count(), length))});
    }
    return found;
}

}  // namespace network_lines_detail

std::vector<Path> dashed(const std::vector<SheetPoint>& points, base::Length on, base::Length off, Role role) {
    std::vector<Path> paths;
    for (const auto& [from, to] : network_lines_detail::pieces(points, on, off))
        paths.push_back(stroke({from, to}, role));
    return paths;
}

std::vector<Path> barred(const std::vector<SheetPoint>& points, base::Length on, base::Length off, base::Length width) {
    std::vector<Path> paths;
    for (const auto& [from, to] : network_lines_detail::pieces(points, on, off)) {
        const bool level = from.y == to.y;
        const auto left = std::min(from.x, to.x), top = std::min(from.y, to.y);
        const auto along = base::Length::from_count(std::abs((to.x - from.x).count() + (to.y - from.y).count()));
        paths.push_back(
            filled_box(level ? Box{{left, top - width / 2}, along, width} : Box{{left - width / 2, top}, width, along},
                       Role::solid));
    }
    return paths;
}

Path arrow_head(SheetPoint tip, bool rightward) {
    using namespace base::literals;
    const auto back = rightward ? -2_mm : 2_mm;
    Path path = stroke({tip, moved(tip, back, -800_um), moved(tip, back, 800_um)}, Role::solid);
    path.closed = path.filled = true;
    return path;
}

}  // namespace streamwright::deliver
