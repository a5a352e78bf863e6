// Fixed patterns, quick enough to follow the pointer: straight, two bends, four bends, tried in that order.
#include "core/layout/cable_route.h"
#include "core/layout/lines.h"

#include <algorithm>

namespace streamwright::layout {

namespace quick_route_detail {

using base::Length;
using model::SheetPoint;

constexpr Length stub = measure::lane;

Length outward(const RouteEnd& end, Length by) { return end.side == Side::right ? end.at.x + by : end.at.x - by; }

base::Length on_module(Length value) {
    const auto step = measure::module.count();
    return Length::from_count((value.count() + step / 2) / step * step);
}

bool facing(const RouteEnd& a, const RouteEnd& b) {
    if (a.side == b.side) return false;
    return a.side == Side::right ? a.at.x <= b.at.x : b.at.x <= a.at.x;
}

/// Where the upright part of a two-bend line may stand, best first.
std::vector<Length> uprights(const RouteEnd& a, const RouteEnd& b) {
    std::vector<Length> xs;
    if (a.side == b.side) {
        const bool right = a.side == Side::right;
        const auto outer = right ? std::max(a.at.x, b.at.x) : std::min(a.at.x, b.at.x);
        for (int i = 1; i <= 6; ++i) xs.push_back(right ? outer + i * stub : outer - i * stub);
    } else if (facing(a, b)) {
        const auto [low, high] = std::minmax(a.at.x, b.at.x);
        const auto middle = on_module(low + (high - low) / 2);
        xs.push_back(middle);
        for (int i = 1; i <= 6; ++i)
            for (const auto x : {middle - i * stub, middle + i * stub})
                if (x >= low + stub && x <= high - stub) xs.push_back(x);
    }
    return xs;
}

/// Heights at which a four-bend line may cross back, best first: between the ends, then past every box.
std::vector<Length> crossings(const RouteEnd& a, const RouteEnd& b, std::span<const Box> boxes) {
    auto top = std::min(a.at.y, b.at.y), bottom = std::max(a.at.y, b.at.y);
    std::vector<Length> ys{on_module(top + (bottom - top) / 2)};
    for (const Box& box : boxes) {
        top = std::min(top, box.at.y);
        bottom = std::max(bottom, box.at.y + box.height);
    }
    ys.push_back(bottom + stub);
    ys.push_back(top - stub);
    return ys;
}

Line with_ends(const RouteEnd& a, Line bends, const RouteEnd& b) {
    bends.insert(bends.begin(), a.at);
    bends.push_back(b.at);
    return bends;
}

std::vector<Line> patterns(const RouteEnd& a, const RouteEnd& b, std::span<const Box> boxes) {
    std::vector<Line> found;
    if (facing(a, b) && a.at.y == b.at.y) found.push_back({});
    for (const auto x : uprights(a, b)) found.push_back({{x, a.at.y}, {x, b.at.y}});
    for (int i = 1; i <= 2; ++i) {
        const auto from = outward(a, i * stub), to = outward(b, i * stub);
        for (const auto y : crossings(a, b, boxes)) found.push_back({{from, a.at.y}, {from, y}, {to, y}, {to, b.at.y}});
    }
    return found;
}

}  // namespace quick_route_detail

std::vector<model::SheetPoint> quick_route(const RouteEnd& a, const RouteEnd& b, std::span<const Box> boxes) {
    using namespace quick_route_detail;
    const auto tries = patterns(a, b, boxes);
    for (const Line& bends : tries)
        if (!line_meets(with_ends(a, bends, b), boxes)) return bends;
    return tries.front();
}

}  // namespace streamwright::layout
