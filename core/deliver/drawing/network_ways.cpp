// Dijkstra's search over the crossings of the lines where a way may run; a state is a crossing and how it was reached.
#include "core/deliver/drawing/network_ways.h"

#include <queue>

#include <algorithm>
#include <limits>

namespace streamwright::deliver {

namespace network_ways_detail {

using base::Length;
using namespace base::literals;

// Costs in micrometres of way that one would go to avoid them.
constexpr std::int64_t bend_cost = 8'000, crossing_cost = 20'000, unreached = std::numeric_limits<std::int64_t>::max();
constexpr Length half_width = 1200_um;  // of the strokes of both directions
constexpr Length apart = 2700_um;       // between the middles of two lines side by side

Box between(SheetPoint a, SheetPoint b) {
    const auto [left, right] = std::minmax(a.x, b.x);
    const auto [top, bottom] = std::minmax(a.y, b.y);
    return {{left, top}, right - left, bottom - top};
}

/// The stretch as broad as its strokes; across only, for it may end at a plate's edge.
Box broad(SheetPoint a, SheetPoint b, Length by) {
    auto box = between(a, b);
    if (a.y == b.y) return {{box.at.x, box.at.y - by}, box.width, 2 * by};
    return {{box.at.x - by, box.at.y}, 2 * by, box.height};
}

bool overlaps(Length a_low, Length a_high, Length b_low, Length b_high) { return a_low < b_high && b_low < a_high; }

class WaySearch {
public:
    WaySearch(const WayGround& ground, SheetPoint from, const std::vector<SheetPoint>& goals)
        : ground_(ground), xs_(ground.xs), ys_(ground.ys) {
        for (const auto& point : goals) xs_.push_back(point.x), ys_.push_back(point.y);
        xs_.push_back(from.x), ys_.push_back(from.y);
        for (auto* lines : {&xs_, &ys_}) {
            std::ranges::sort(*lines);
            lines->erase(std::unique(lines->begin(), lines->end()), lines->end());
        }
        cost_.assign(xs_.size() * ys_.size() * 2, unreached);
        from_.assign(cost_.size(), cost_.size());
        for (const auto& point : goals) goals_.push_back(node(point) * 2);
        offer(node(from) * 2, 0, cost_.size());
    }

    std::optional<Way> run() {
        while (!open_.empty()) {
            const auto [cost, state] = open_.top();
            open_.pop();
            if (cost > cost_[state]) continue;
            if (std::ranges::find(goals_, state) != goals_.end()) return way_to(state);
            expand(state);
        }
        return std::nullopt;
    }

private:
    std::size_t node(SheetPoint p) const {
        const auto i = std::ranges::lower_bound(xs_, p.x) - xs_.begin();
        const auto j = std::ranges::lower_bound(ys_, p.y) - ys_.begin();
        return static_cast<std::size_t>(j) * xs_.size() + static_cast<std::size_t>(i);
    }
    SheetPoint point(std::size_t state) const {
        const auto at = state / 2;
        return {xs_[at % xs_.size()], ys_[at / xs_.size()]};
    }

    void offer(std::size_t state, std::int64_t cost, std::size_t from) {
        if (cost >= cost_[state]) return;
        cost_[state] = cost;
        from_[state] = from;
        open_.emplace(cost, state);
    }

    void expand(std::size_t state) {
        const auto at = state / 2, columns = xs_.size();
        const bool upright = state % 2 == 1;
        offer(at * 2 + (upright ? 0 : 1), cost_[state] + bend_cost, state);
        if (upright) {
            if (at / columns > 0) step(state, (at - columns) * 2 + 1);
            if (at / columns + 1 < ys_.size()) step(state, (at + columns) * 2 + 1);
        } else {
            if (at % columns > 0) step(state, (at - 1) * 2);
            if (at % columns + 1 < columns) step(state, (at + 1) * 2);
        }
    }

    void step(std::size_t state, std::size_t to) {
        const auto a = point(state), b = point(to);
        if (const auto cost = cost_of(a, b)) offer(to, cost_[state] + *cost, state);
    }

    /// Nothing where the stretch must not run.
    std::optional<std::int64_t> cost_of(SheetPoint a, SheetPoint b) const {
        if (!ground_.room.holds(a) || !ground_.room.holds(b)) return std::nullopt;
        const auto body = broad(a, b, half_width);
        if (std::ranges::any_of(ground_.boxes, [&](const Box& box) { return body.meets(box); })) return std::nullopt;
        const auto length = between(a, b).width + between(a, b).height;
        auto cost = length.count();
        for (const auto& line : ground_.taken)
            for (std::size_t i = 1; i < line.size(); ++i) {
                const auto meeting = cost_of_meeting(a, b, line[i - 1], line[i]);
                if (!meeting) return std::nullopt;
                cost += *meeting;
            }
        return cost;
    }

    static std::optional<std::int64_t> cost_of_meeting(SheetPoint a, SheetPoint b, SheetPoint c, SheetPoint d) {
        const auto ours = between(a, b), theirs = between(c, d);
        const bool level = a.y == b.y, crosses = level != (c.y == d.y);
        if (!crosses) {
            const auto near = broad(a, b, apart);
            const bool side_by_side = overlaps(near.at.x, near.at.x + near.width, theirs.at.x - half_width,
                                               theirs.at.x + theirs.width + half_width) &&
                                      overlaps(near.at.y, near.at.y + near.height, theirs.at.y - half_width,
                                               theirs.at.y + theirs.height + half_width);
            return side_by_side ? std::nullopt : std::optional<std::int64_t>(0);
        }
        const bool met = ours.at.x <= theirs.at.x + theirs.width && theirs.at.x <= ours.at.x + ours.width &&
                         ours.at.y <= theirs.at.y + theirs.height && theirs.at.y <= ours.at.y + ours.height;
        return met ? crossing_cost : 0;
    }

    Way way_to(std::size_t state) const {
        Way way;
        for (; state != cost_.size(); state = from_[state])
            if (const auto here = point(state); way.empty() || way.back() != here) way.push_back(here);
        Way bends;
        for (std::size_t i = 0; i < way.size(); ++i) {
            const bool straight = i > 0 && i + 1 < way.size() &&
                                  ((way[i - 1].x == way[i].x && way[i].x == way[i + 1].x) ||
                                   (way[i - 1].y == way[i].y && way[i].y == way[i + 1].y));
            if (!straight) bends.push_back(way[i]);
        }
        return {bends.rbegin(), bends.rend()};
    }

    const WayGround& ground_;
    std::vector<Length> xs_, ys_;
    std::vector<std::int64_t> cost_;  // per crossing, come level and come upright
    std::vector<std::size_t> from_, goals_;
    using Entry = std::pair<std::int64_t, std::size_t>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open_;
};

}  // namespace network_ways_detail

std::optional<Way> way_between(const WayGround& ground, SheetPoint from, const std::vector<SheetPoint>& goals) {
    return network_ways_detail::WaySearch(ground, from, goals).run();
}

}  // namespace streamwright::deliver
