// A cable as primitives: its line, cut where it passes under others, its tag in the line, flags where it leaves the
// sheet.
#include "core/deliver/drawing/schematic_fragments.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/drawing/sheet_lines.h"
#include "core/deliver/drawing/sheet_size.h"
#include "core/layout/cable_route.h"

#include <algorithm>

namespace streamwright::deliver {

namespace cable_drawing {

using base::Length;
using layout::Weight;
namespace measure = layout::measure;
using namespace base::literals;

constexpr Length bend_radius = units(6), cut = 1500_um, tag_em = measure::label_em;
constexpr Length tag_height = units(14), long_run = 60_mm;

bool is_level(SheetPoint a, SheetPoint b) { return a.y == b.y; }

struct Stretch {
    Length from, to;  // along the segment's own axis, from < to
    Length size() const { return to - from; }
};

/// Where lines of other cables cross the segment, along its axis, sorted.
std::vector<Length> crossings_of(SheetPoint a, SheetPoint b, const DrawnLine& own, const std::vector<DrawnLine>& all) {
    const bool level = is_level(a, b);
    const auto along = [&](SheetPoint p) { return level ? p.x : p.y; };
    const auto across = [&](SheetPoint p) { return level ? p.y : p.x; };
    const auto [low, high] = std::minmax({along(a), along(b)});
    std::vector<Length> found;
    for (const DrawnLine& line : all) {
        if (line.cable == own.cable) continue;
        for (std::size_t i = 1; i < line.points.size(); ++i) {
            const auto &c = line.points[i - 1], &d = line.points[i];
            if (is_level(c, d) == level || along(c) != along(d)) continue;
            const auto [near, far] = std::minmax({across(c), across(d)});
            if (low < along(c) && along(c) < high && near < across(a) && across(a) < far) found.push_back(along(c));
        }
    }
    std::ranges::sort(found);
    return found;
}

Path cable_path(std::vector<SheetPoint> points, catalogue::Signal signal) {
    auto path = stroke(std::move(points), Role::cable);
    path.radius = bend_radius;
    path.signal = signal;
    return path;
}

/// The line in pieces: an upright stretch is cut 1.5 mm on each side of what it crosses.
std::vector<Path> pieces(const DrawnLine& line, const std::vector<DrawnLine>& all) {
    std::vector<Path> paths;
    std::vector<SheetPoint> piece{line.points.front()};
    for (std::size_t i = 1; i < line.points.size(); ++i) {
        const auto &a = line.points[i - 1], &b = line.points[i];
        if (!is_level(a, b)) {
            auto gaps = crossings_of(a, b, line, all);
            const bool down = a.y < b.y;
            if (!down) std::ranges::reverse(gaps);
            auto reached = a.y;  // how far the piece has come
            for (const auto y : gaps) {
                const auto stop = down ? y - cut : y + cut, go_on = down ? y + cut : y - cut;
                if (down ? stop > reached : stop < reached) {
                    piece.push_back({a.x, stop});
                    if (piece.size() > 1) paths.push_back(cable_path(piece, line.signal));
                }
                piece = {{a.x, go_on}};
                reached = go_on;
            }
            if (down ? b.y <= reached : b.y >= reached) piece = {};
        }
        piece.push_back(b);
    }
    if (piece.size() > 1) paths.push_back(cable_path(piece, line.signal));
    return paths;
}

struct TagSpot {
    SheetPoint middle;
    bool level = true;
    Length room;
};

/// The longest stretch of a segment that nothing crosses.
Stretch clear_stretch(SheetPoint a, SheetPoint b, const DrawnLine& own, const std::vector<DrawnLine>& all) {
    const bool level = is_level(a, b);
    const auto [low, high] = std::minmax({level ? a.x : a.y, level ? b.x : b.y});
    auto marks = crossings_of(a, b, own, all);
    marks.push_back(high);
    Stretch best{low, low};
    auto from = low;
    for (const auto mark : marks) {
        if (mark - from > best.size()) best = {from, mark};
        from = mark;
    }
    return best;
}

std::vector<TagSpot> tag_spots(const DrawnLine& line, const std::vector<DrawnLine>& all) {
    std::vector<TagSpot> spots;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
        const auto &a = line.points[i - 1], &b = line.points[i];
        const auto stretch = clear_stretch(a, b, line, all);
        const auto middle = stretch.from + stretch.size() / 2;
        const bool level = is_level(a, b);
        spots.push_back({level ? SheetPoint{middle, a.y} : SheetPoint{a.x, middle}, level, stretch.size()});
    }
    return spots;
}

Length run_length(const DrawnLine& line) {
    Length sum;
    for (std::size_t i = 1; i < line.points.size(); ++i) {
        const auto &a = line.points[i - 1], &b = line.points[i];
        sum += Length::from_count(std::abs((b.x - a.x).count()) + std::abs((b.y - a.y).count()));
    }
    return sum;
}

/// Installed network cable tells its length; leads do not.
std::string length_words(const Scene& scene, const model::Cable& cable) {
    const auto* type = scene.design.type_of(cable);
    if (!type || type->use == catalogue::CableUse::lead || !cable.length) return {};
    if (!is_network(type->signal)) return {};
    return print(*cable.length, scene.book.numbers);
}

void draw_tag(std::vector<Shape>& shapes, const TagSpot& spot, const std::string& tag, const std::string& length) {
    const auto width = [](const std::string& words) { return text_width(words, tag_em, Weight::normal); };
    const auto wide = std::max(width(tag), spot.level ? Length{} : width(length)) + 2 * measure::module;
    const int lines = spot.level || length.empty() ? 1 : 2;
    const auto high = tag_height + (lines - 1) * 4 * measure::module;
    const auto left = spot.middle.x - wide / 2, top = spot.middle.y - high / 2;
    shapes.emplace_back(filled_box({{left, top}, wide, high}, Role::tag_ground));
    const auto base_line = top + tag_height / 2 + tag_em * 3 / 8;
    shapes.emplace_back(text_line({spot.middle.x, base_line}, tag, tag_em, Role::text, Anchor::middle));
    if (lines == 2)
        shapes.emplace_back(
            text_line({spot.middle.x, base_line + 4 * measure::module}, length, tag_em, Role::text, Anchor::middle));
}

Length needed(const TagSpot& spot, const std::string& words) {
    if (!spot.level) return 12 * measure::module;
    return text_width(words, tag_em, Weight::normal) + 2 * measure::module;
}

/// Where a cable's tag stands, and what of it.
struct TagChoice {
    TagSpot spot;
    bool with_length = false;
};

/// The stretches that can hold the tag, from end a to end b.
std::vector<TagChoice> fitting_spots(const DrawnLine& line, const std::vector<DrawnLine>& all, const std::string& tag,
                                     const std::string& full) {
    std::vector<TagChoice> fitting;
    for (const TagSpot& spot : tag_spots(line, all)) {
        if (spot.room >= needed(spot, full) + 4 * measure::module)
            fitting.push_back({spot, true});
        else if (spot.room >= needed(spot, tag))
            fitting.push_back({spot, false});
    }
    return fitting;
}

/// Level before upright, then the longest.
const TagChoice& best_of(const std::vector<TagChoice>& fitting) {
    return *std::ranges::max_element(
        fitting, {}, [](const TagChoice& choice) { return std::pair(choice.spot.level, choice.spot.room); });
}

std::string full_words(const model::Cable& cable, const std::string& length) {
    return length.empty() ? cable.tag : cable.tag + " " + length;
}

void draw_tags(std::vector<Shape>& shapes, const Scene& scene, const DrawnLine& line,
               const std::vector<DrawnLine>& all) {
    const auto* cable = scene.design.cables.find(line.cable);
    const auto length = length_words(scene, *cable);
    const auto full = full_words(*cable, length);
    const auto fitting = fitting_spots(line, all, cable->tag, full);
    if (fitting.empty()) return;
    const auto& best = best_of(fitting);
    draw_tag(shapes, best.spot, best.with_length && best.spot.level ? full : cable->tag, length);
    if (run_length(line) <= long_run) return;
    for (const auto& [spot, with_length] : {fitting.front(), fitting.back()}) {
        const auto apart = std::abs((spot.middle.x - best.spot.middle.x).count()) +
                           std::abs((spot.middle.y - best.spot.middle.y).count());
        const bool roomy = spot.room >= needed(spot, cable->tag) + 4 * measure::module;
        if (spot.level && roomy && apart > long_run.count()) return draw_tag(shapes, spot, cable->tag, {});
    }
}

/// What fits into a flag, also where the frame of the sheet is near.
Length flag_room(const Scene& scene, SheetPoint tip, bool rightward) {
    const auto* sheet = scene.design.sheets.find(scene.sheet);
    const auto frame = sheet_size(sheet ? sheet->paper : model::PaperSize::a3).frame;
    const auto to_frame = rightward ? frame.at.x + frame.width - tip.x : tip.x - frame.at.x;
    return std::max(std::min(measure::flag_width, to_frame) - 5 * measure::module, Length{});
}

void draw_flag(std::vector<Shape>& shapes, const Scene& scene, const DrawnLine& line, bool at_start) {
    const auto tip = at_start ? line.points.front() : line.points.back();
    const auto before = at_start ? line.points[1] : line.points[line.points.size() - 2];
    const bool rightward = before.x <= tip.x;
    const auto words = flag_words(scene, line.cable, at_start);
    const auto em = measure::note_em, gap = measure::module;
    const auto room = flag_room(scene, tip, rightward);
    const auto device = layout::elided(words.device, room, em, Weight::bold);
    const auto device_width = text_width(device, em, Weight::bold);
    const auto where = layout::elided(words.where, std::max(room - device_width - gap, Length{}), em, Weight::normal);
    const auto width = 4 * measure::module + device_width + gap + text_width(where, em, Weight::normal);
    const auto sign = [&](Length x) { return rightward ? tip.x + x : tip.x - x; };
    const auto half = measure::flag_height / 2, point = 2 * measure::module;
    Path flag;
    flag.closed = flag.filled = true;
    flag.role = Role::flag;
    flag.points = {tip,
                   {sign(point), tip.y - half},
                   {sign(width), tip.y - half},
                   {sign(width), tip.y + half},
                   {sign(point), tip.y + half}};
    shapes.emplace_back(flag);
    const auto left = rightward ? tip.x + point + gap / 2 : tip.x - width + measure::module;
    const auto base_line = tip.y + em * 3 / 8;
    shapes.emplace_back(bold_line({left, base_line}, device, em));
    shapes.emplace_back(text_line({left + device_width + gap, base_line}, where, em, Role::text_muted));
}

}  // namespace cable_drawing

Fragment cable_fragment_among(const Scene& scene, const DrawnLine& line, const std::vector<DrawnLine>& all) {
    using namespace cable_drawing;
    Fragment fragment;
    fragment.subject = "cable:" + line.cable.text();
    append(fragment.shapes, pieces(line, all));
    const bool leaves = line.flag_at_start || line.flag_at_end;
    if (!leaves) draw_tags(fragment.shapes, scene, line, all);
    if (line.flag_at_start) draw_flag(fragment.shapes, scene, line, true);
    if (line.flag_at_end) draw_flag(fragment.shapes, scene, line, false);
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

std::optional<SheetPoint> spot_beside_tag(const Scene& scene, const DrawnLine& line,
                                          const std::vector<DrawnLine>& all) {
    using namespace cable_drawing;
    const auto* cable = scene.design.cables.find(line.cable);
    if (!cable || line.points.size() < 2) return std::nullopt;
    const auto full = full_words(*cable, length_words(scene, *cable));
    const auto fitting = fitting_spots(line, all, cable->tag, full);
    constexpr auto badge = 4 * measure::module;
    if (line.flag_at_start || line.flag_at_end || fitting.empty()) {
        const auto at = line.flag_at_start ? line.points.size() - 1 : 1;  // next to the lug
        const auto &a = line.points[at - 1], &b = line.points[at];
        return SheetPoint{a.x + (b.x - a.x) / 2, a.y + (b.y - a.y) / 2};
    }
    const auto& best = best_of(fitting);
    const auto& words = best.with_length ? full : cable->tag;
    if (!best.spot.level) return moved(best.spot.middle, {}, -(tag_height / 2 + 2 * measure::module + badge / 2));
    return moved(best.spot.middle, text_width(words, tag_em, Weight::normal) / 2 + badge, {});
}

Fragment cable_fragment(const Scene& scene, const model::CableLine& line) {
    const auto plates = plates_of(scene);
    const auto drawn = drawn_line(scene, plates, line);
    if (!drawn) return {"cable:" + line.on.cable.text(), {}, {}};
    return cable_fragment_among(scene, *drawn, drawn_lines(scene, plates));
}

std::vector<SheetPoint> cable_points(const Scene& scene, const model::CableLine& line) {
    const auto drawn = drawn_line(scene, plates_of(scene), line);
    return drawn ? drawn->points : std::vector<SheetPoint>{};
}

}  // namespace streamwright::deliver
