// Small geometry of orthogonal lines.
#include "core/layout/lines.h"

#include <algorithm>

namespace streamwright::layout {

bool passes_through(model::SheetPoint a, model::SheetPoint b, const Box& box) {
    const auto [left, right] = std::minmax(a.x, b.x);
    const auto [top, bottom] = std::minmax(a.y, b.y);
    return left < box.at.x + box.width && right > box.at.x && top < box.at.y + box.height && bottom > box.at.y;
}

bool line_meets(std::span<const model::SheetPoint> line, std::span<const Box> boxes) {
    for (std::size_t i = 1; i < line.size(); ++i)
        for (const Box& box : boxes)
            if (passes_through(line[i - 1], line[i], box)) return true;
    return false;
}

Line without_idle_points(const Line& line) {
    Line kept;
    for (const auto& point : line) {
        if (!kept.empty() && kept.back() == point) continue;
        if (kept.size() >= 2) {
            const auto& before = kept[kept.size() - 2];
            const auto& last = kept.back();
            const bool upright = before.x == last.x && last.x == point.x;
            const bool level = before.y == last.y && last.y == point.y;
            if (upright || level) kept.pop_back();
        }
        kept.push_back(point);
    }
    return kept;
}

Box obstacle(const Plate& plate) {
    auto left = plate.body.at.x, right = plate.body.at.x + plate.body.width;
    for (const PortSpot& spot : plate.spots) {
        left = std::min(left, spot.lug.at.x);
        right = std::max(right, spot.lug.at.x + spot.lug.width);
    }
    return {{left, plate.body.at.y}, right - left, plate.body.height};
}

}  // namespace streamwright::layout
