// The search on release: A* over a grid of half lanes through the two ends. Own search rather than the library's, which
// initialises every vertex on each call and cannot take the direction into the state.
#include "core/layout/cable_route.h"

#include "core/layout/lines.h"

#include <queue>

#include <algorithm>
#include <cstdint>
#include <limits>
#include <optional>
#include <tuple>

namespace streamwright::layout {

namespace route_detail {

using base::Length;
using model::SheetPoint;

// Costs, in micrometres of way that one would go to avoid them.
constexpr std::int64_t bend_cost = 15'000, crossing_cost = 12'000, sharing_flat = 20'000;
constexpr std::int64_t sharing_factor = 20, crowding_factor = 2, hugging_factor = 15;
constexpr Length pitch = measure::lane / 2, clearance = 2 * measure::module, lane_gap = 4 * measure::module;
constexpr std::int64_t blocked = std::numeric_limits<std::int64_t>::max() / 4;

struct Grid {
    std::vector<Length> xs, ys;
    std::vector<std::int64_t> level;    // cost of the edge from (i, j) to (i + 1, j)
    std::vector<std::int64_t> upright;  // cost of the edge from (i, j) to (i, j + 1)
    std::size_t at(std::size_t i, std::size_t j) const { return j * xs.size() + i; }
};

/// Lines of the grid from low to high in half lanes, and those that must be there.
std::vector<Length> grid_lines(Length low, Length high, std::initializer_list<Length> exact) {
    std::vector<Length> lines(exact);
    const auto step = pitch.count();
    for (auto v = low.count() / step * step; v <= high.count(); v += step)
        if (std::ranges::none_of(exact, [&](Length e) { return std::abs(e.count() - v) < 1'000; }))
            lines.push_back(Length::from_count(v));
    std::ranges::sort(lines);
    lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
    return lines;
}

struct Range {
    std::size_t first, last;  // half open
};

/// Indices of edges [i, i + 1] that overlap the open stretch from low to high.
Range edges_in(const std::vector<Length>& lines, Length low, Length high) {
    const auto first = std::upper_bound(lines.begin(), lines.end(), low) - lines.begin();
    const auto last = std::lower_bound(lines.begin(), lines.end(), high) - lines.begin();
    const auto from = static_cast<std::size_t>(std::max<std::ptrdiff_t>(first - 1, 0));
    const auto to = std::min(static_cast<std::size_t>(last), lines.size() - 1);
    return {from, std::max(from, to)};
}

/// Indices of lines strictly between low and high.
Range lines_in(const std::vector<Length>& lines, Length low, Length high) {
    const auto first = static_cast<std::size_t>(std::upper_bound(lines.begin(), lines.end(), low) - lines.begin());
    const auto last = static_cast<std::size_t>(std::lower_bound(lines.begin(), lines.end(), high) - lines.begin());
    return {first, std::max(first, last)};
}

/// Calls f on the cost and length of each edge of the grid that passes through the inside of a box.
template <class F>
void each_edge_in(Grid& grid, const Box& box, F&& f) {
    const auto right = box.at.x + box.width, bottom = box.at.y + box.height;
    const auto ex = edges_in(grid.xs, box.at.x, right), ey = edges_in(grid.ys, box.at.y, bottom);
    const auto lx = lines_in(grid.xs, box.at.x, right), ly = lines_in(grid.ys, box.at.y, bottom);
    for (auto j = ly.first; j < ly.last; ++j)
        for (auto i = ex.first; i < ex.last; ++i)
            f(grid.level[grid.at(i, j)], (grid.xs[i + 1] - grid.xs[i]).count(), true);
    for (auto j = ey.first; j < ey.last; ++j)
        for (auto i = lx.first; i < lx.last; ++i)
            f(grid.upright[grid.at(i, j)], (grid.ys[j + 1] - grid.ys[j]).count(), false);
}

void add_box(Grid& grid, const Box& box) {
    each_edge_in(grid, box.grown(clearance),
                 [](std::int64_t& cost, std::int64_t length, bool) { cost += length * hugging_factor; });
    each_edge_in(grid, box, [](std::int64_t& cost, std::int64_t, bool) { cost = blocked; });
}

/// A line already drawn: sharing its lane is dear, running close to it less so, crossing it costs a little.
void add_taken(Grid& grid, SheetPoint a, SheetPoint b) {
    const bool is_level = a.y == b.y;
    const auto [left, right] = std::minmax(a.x, b.x);
    const auto [top, bottom] = std::minmax(a.y, b.y);
    const Box thin{{left, top}, right - left, bottom - top};
    const auto one = Length::from_count(1);
    each_edge_in(grid, thin.grown(one), [&](std::int64_t& cost, std::int64_t length, bool level) {
        cost += level == is_level ? length * sharing_factor + sharing_flat : crossing_cost;
    });
    each_edge_in(grid, thin.grown(lane_gap), [&](std::int64_t& cost, std::int64_t length, bool level) {
        if (level == is_level) cost += length * crowding_factor;
    });
}

Grid make_grid(const RouteEnd& a, const RouteEnd& b, SheetPoint start, SheetPoint goal, Length margin,
               std::span<const Box> boxes, std::span<const Line> taken) {
    Grid grid;
    const auto [left, right] = std::minmax({a.at.x, b.at.x, start.x, goal.x});
    const auto [top, bottom] = std::minmax(a.at.y, b.at.y);
    grid.xs = grid_lines(left - margin, right + margin, {start.x, goal.x});
    grid.ys = grid_lines(top - margin, bottom + margin, {start.y, goal.y});
    const auto nodes = grid.xs.size() * grid.ys.size();
    grid.level.assign(nodes, blocked);
    grid.upright.assign(nodes, blocked);
    for (std::size_t j = 0; j < grid.ys.size(); ++j)
        for (std::size_t i = 0; i < grid.xs.size(); ++i) {
            if (i + 1 < grid.xs.size()) grid.level[grid.at(i, j)] = (grid.xs[i + 1] - grid.xs[i]).count();
            if (j + 1 == grid.ys.size()) continue;
            const auto length = (grid.ys[j + 1] - grid.ys[j]).count();
            // A touch dearer far from b, so that a fan of cables turns close to the hub and nests.
            grid.upright[grid.at(i, j)] = length + length * std::abs((grid.xs[i] - goal.x).count()) / 100'000'000;
        }
    for (const Line& line : taken)
        for (std::size_t i = 1; i < line.size(); ++i) add_taken(grid, line[i - 1], line[i]);
    for (const Box& box : boxes) add_box(grid, box);
    return grid;
}

constexpr std::size_t way_count = 2;  // 0: came level, 1: came upright

class Search {
public:
    Search(const Grid& grid, SheetPoint start, SheetPoint goal)
        : grid_(grid),
          goal_(goal),
          best_(grid.level.size() * way_count, blocked),
          from_(best_.size(), none),
          goal_state_(state(goal, 0)) {
        offer(state(start, 0), 0, none);
    }

    std::optional<Line> run() {
        while (!open_.empty()) {
            const auto [estimate, id] = open_.top();
            open_.pop();
            if (id == goal_state_) return line_to(id);
            if (estimate > best_[id] + left_from(id)) continue;
            expand(id);
        }
        return std::nullopt;
    }

private:
    static constexpr std::size_t none = std::numeric_limits<std::size_t>::max();

    std::size_t state(SheetPoint p, std::size_t way) const {
        const auto i = std::ranges::lower_bound(grid_.xs, p.x) - grid_.xs.begin();
        const auto j = std::ranges::lower_bound(grid_.ys, p.y) - grid_.ys.begin();
        return grid_.at(static_cast<std::size_t>(i), static_cast<std::size_t>(j)) * way_count + way;
    }
    SheetPoint point(std::size_t id) const {
        const auto node = id / way_count;
        return {grid_.xs[node % grid_.xs.size()], grid_.ys[node / grid_.xs.size()]};
    }
    std::int64_t left_from(std::size_t id) const {
        const auto p = point(id);
        return std::abs((p.x - goal_.x).count()) + std::abs((p.y - goal_.y).count());
    }
    void offer(std::size_t id, std::int64_t cost, std::size_t from) {
        if (cost >= blocked || cost >= best_[id]) return;
        best_[id] = cost;
        from_[id] = from;
        open_.emplace(cost + left_from(id), id);
    }
    void expand(std::size_t id) {
        const auto node = id / way_count, way = id % way_count, columns = grid_.xs.size();
        const auto i = node % columns, j = node / columns;
        const auto cost = best_[id], turn = cost + bend_cost;
        offer(node * way_count + 1 - way, turn, id);
        const auto step = [&](std::size_t to, std::int64_t edge) { offer(to * way_count + way, cost + edge, id); };
        if (way == 0) {
            if (i + 1 < columns) step(node + 1, grid_.level[node]);
            if (i > 0) step(node - 1, grid_.level[node - 1]);
        } else {
            if (j + 1 < grid_.ys.size()) step(node + columns, grid_.upright[node]);
            if (j > 0) step(node - columns, grid_.upright[node - columns]);
        }
    }
    Line line_to(std::size_t id) const {
        Line line;
        for (auto at = id; at != none; at = from_[at]) line.push_back(point(at));
        std::ranges::reverse(line);
        return line;
    }

    const Grid& grid_;
    SheetPoint goal_;
    std::vector<std::int64_t> best_;
    std::vector<std::size_t> from_;
    std::size_t goal_state_;
    using Entry = std::pair<std::int64_t, std::size_t>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open_;
};

SheetPoint stub_end(const RouteEnd& end, Length by) {
    return {end.side == Side::right ? end.at.x + by : end.at.x - by, end.at.y};
}

/// Half a lane where the ends face each other across less than two lanes.
Length stub_length(const RouteEnd& a, const RouteEnd& b) {
    const auto gap = a.side == Side::right ? b.at.x - a.at.x : a.at.x - b.at.x;
    const bool narrow = a.side != b.side && gap > Length{} && gap < 2 * measure::lane;
    return narrow ? gap / 2 : measure::lane;
}

/// How far the search must reach to get round everything.
Length far_margin(std::span<const Box> boxes) {
    Length far = 100 * measure::module;
    for (const Box& box : boxes) far = std::max({far, box.at.x + box.width, box.at.y + box.height});
    return far;
}

bool turns_back(const RouteEnd& a, const Line& line) {
    if (line.size() < 2) return false;
    return a.side == Side::right ? line[1].x < line[0].x : line[1].x > line[0].x;
}

std::optional<Line> search(const RouteEnd& a, const RouteEnd& b, Length margin, std::span<const Box> boxes,
                           std::span<const Line> taken) {
    const auto by = stub_length(a, b);
    const auto start = stub_end(a, by), goal = stub_end(b, by);
    auto found = Search(make_grid(a, b, start, goal, margin, boxes, taken), start, goal).run();
    if (!found) return std::nullopt;
    found->insert(found->begin(), a.at);
    found->push_back(b.at);
    auto line = without_idle_points(*found);
    const Line reversed(line.rbegin(), line.rend());
    if (turns_back(a, line) || turns_back(b, reversed) || line_meets(line, boxes)) return std::nullopt;
    return line;
}

}  // namespace route_detail

std::vector<model::SheetPoint> route(const RouteEnd& a, const RouteEnd& b, std::span<const Box> boxes,
                                     std::span<const std::vector<model::SheetPoint>> taken) {
    using namespace route_detail;
    for (const auto margin : {60 * measure::module, far_margin(boxes)}) {
        const auto line = search(a, b, margin, boxes, taken);
        if (line) return {line->begin() + 1, line->end() - 1};
    }
    return quick_route(a, b, boxes);
}

}  // namespace streamwright::layout
