// Properties of routes on random sheets: level and upright only, clear of every box, the same each time, apart where
// there is room.
#include "core/layout/cable_route.h"

#include "core/layout/lines.h"

#include <gtest/gtest.h>

#include <random>

namespace streamwright::layout {
namespace {

using model::SheetPoint;
using namespace base::literals;

struct RandomSheet {
    std::vector<Box> boxes;
    std::vector<std::pair<RouteEnd, RouteEnd>> pairs;
};

/// Boxes on a loose grid, shifted by up to 8 mm, so that they never meet; ends on their left and right edges.
RandomSheet random_sheet(unsigned seed) {
    std::mt19937 random(seed);
    const auto upto = [&](int most) { return static_cast<int>(random() % static_cast<unsigned>(most + 1)); };
    RandomSheet sheet;
    for (int row = 0; row < 4; ++row)
        for (int column = 0; column < 5; ++column)
            sheet.boxes.push_back({{(30 + 75 * column + upto(8)) * 1_mm, (30 + 60 * row + upto(8)) * 1_mm},
                                   (30 + upto(10)) * 1_mm,
                                   (20 + upto(15)) * 1_mm});
    for (int i = 0; i < 15; ++i) {
        const auto end = [&](bool right) {
            const Box& box = sheet.boxes[static_cast<std::size_t>(upto(19))];
            const auto y = box.at.y + 5_mm + upto(2) * 5_mm;
            return RouteEnd{{right ? box.at.x + box.width : box.at.x, y}, right ? Side::right : Side::left};
        };
        sheet.pairs.emplace_back(end(upto(3) > 0), end(upto(3) == 0));
    }
    return sheet;
}

Line whole(const RouteEnd& a, const Line& bends, const RouteEnd& b) {
    Line line{a.at};
    line.insert(line.end(), bends.begin(), bends.end());
    line.push_back(b.at);
    return line;
}

bool is_orthogonal(const Line& line) {
    for (std::size_t i = 1; i < line.size(); ++i)
        if (line[i].x != line[i - 1].x && line[i].y != line[i - 1].y) return false;
    return true;
}

TEST(Route, AvoidsEveryBoxOnRandomSheets) {
    for (unsigned seed = 1; seed <= 40; ++seed) {
        const auto sheet = random_sheet(seed);
        std::vector<Line> taken;
        for (const auto& [a, b] : sheet.pairs) {
            if (a.at == b.at) continue;
            const auto line = whole(a, route(a, b, sheet.boxes, taken), b);
            EXPECT_TRUE(is_orthogonal(line)) << "seed " << seed;
            EXPECT_FALSE(line_meets(line, sheet.boxes)) << "seed " << seed;
            EXPECT_EQ(line, without_idle_points(line)) << "seed " << seed;
            taken.push_back(line);
        }
    }
}

TEST(Route, IsDeterministic) {
    const auto sheet = random_sheet(7);
    for (const auto& [a, b] : sheet.pairs) EXPECT_EQ(route(a, b, sheet.boxes, {}), route(a, b, sheet.boxes, {}));
}

TEST(Route, LeavesByItsSide) {
    const auto sheet = random_sheet(3);
    for (const auto& [a, b] : sheet.pairs) {
        const auto line = whole(a, route(a, b, sheet.boxes, {}), b);
        EXPECT_TRUE(a.side == Side::right ? line[1].x > a.at.x : line[1].x < a.at.x || line.size() == 2);
        EXPECT_EQ(line[1].y, a.at.y);
    }
}

/// Total length on which two lines run on top of each other.
std::int64_t shared(const Line& p, const Line& q) {
    std::int64_t sum = 0;
    for (std::size_t i = 1; i < p.size(); ++i)
        for (std::size_t j = 1; j < q.size(); ++j) {
            const bool level = p[i].y == p[i - 1].y && q[j].y == q[j - 1].y && p[i].y == q[j].y;
            const bool upright = p[i].x == p[i - 1].x && q[j].x == q[j - 1].x && p[i].x == q[j].x;
            if (!level && !upright) continue;
            const auto value = [&](SheetPoint s) { return level ? s.x : s.y; };
            const auto low = std::max(std::min(value(p[i - 1]), value(p[i])), std::min(value(q[j - 1]), value(q[j])));
            const auto high = std::min(std::max(value(p[i - 1]), value(p[i])), std::max(value(q[j - 1]), value(q[j])));
            sum += std::max<std::int64_t>(0, (high - low).count());
        }
    return sum;
}

int crossings(const Line& p, const Line& q) {
    int count = 0;
    for (std::size_t i = 1; i < p.size(); ++i)
        for (std::size_t j = 1; j < q.size(); ++j) {
            const auto crosses = [](SheetPoint a, SheetPoint b, SheetPoint c, SheetPoint d) {
                return a.y == b.y && c.x == d.x && std::min(a.x, b.x) < c.x && c.x < std::max(a.x, b.x) &&
                       std::min(c.y, d.y) < a.y && a.y < std::max(c.y, d.y);
            };
            count += crosses(p[i - 1], p[i], q[j - 1], q[j]) || crosses(q[j - 1], q[j], p[i - 1], p[i]);
        }
    return count;
}

TEST(Route, AFanOfCablesNestsWithoutSharingOrCrossing) {
    // Six plates below each other on the left, a hub on the right whose ports are 5 mm apart: longest first.
    std::vector<Box> boxes{{{150_mm, 140_mm}, 40_mm, 45_mm}};
    std::vector<std::pair<RouteEnd, RouteEnd>> pairs;
    for (int i = 0; i < 6; ++i) {
        boxes.push_back({{20_mm, (20 + i * 30) * 1_mm}, 40_mm, 20_mm});
        pairs.push_back({{{60_mm, (30 + i * 30) * 1_mm}, Side::right}, {{150_mm, (150 + i * 5) * 1_mm}, Side::left}});
    }
    std::vector<Line> lines;
    for (const auto& [a, b] : pairs) lines.push_back(whole(a, route(a, b, boxes, lines), b));
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            EXPECT_EQ(shared(lines[i], lines[j]), 0) << i << " " << j;
            EXPECT_EQ(crossings(lines[i], lines[j]), 0) << i << " " << j;
        }
}

TEST(QuickRoute, FacingEndsGoStraight) {
    EXPECT_TRUE(quick_route({{10_mm, 10_mm}, Side::right}, {{50_mm, 10_mm}, Side::left}, {}).empty());
}

TEST(QuickRoute, TwoBendsInTheMiddle) {
    const auto bends = quick_route({{10_mm, 10_mm}, Side::right}, {{50_mm, 40_mm}, Side::left}, {});
    EXPECT_EQ(bends, (Line{{30_mm, 10_mm}, {30_mm, 40_mm}}));
}

TEST(QuickRoute, StepsAsideForABox) {
    const std::vector<Box> boxes{{{28_mm, 20_mm}, 4_mm, 10_mm}};
    const RouteEnd a{{10_mm, 10_mm}, Side::right}, b{{50_mm, 40_mm}, Side::left};
    EXPECT_FALSE(line_meets(whole(a, quick_route(a, b, boxes), b), boxes));
}

TEST(QuickRoute, AlwaysAnswersOrthogonally) {
    for (unsigned seed = 1; seed <= 20; ++seed) {
        const auto sheet = random_sheet(seed);
        for (const auto& [a, b] : sheet.pairs)
            if (a.at != b.at) {
                EXPECT_TRUE(is_orthogonal(whole(a, quick_route(a, b, sheet.boxes), b))) << seed;
            }
    }
}

}  // namespace
}  // namespace streamwright::layout
