// Plates and links of the network drawing as primitives. Each direction has a stroke of its own; what a stroke's width
// or pattern says, a figure in the link's label says too.
#include "core/deliver/drawing/network_fragments.h"

#include "core/deliver/drawing/network_lines.h"
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/role_mark.h"
#include "core/deliver/drawing/shapes.h"

#include <algorithm>

namespace streamwright::deliver {

namespace network_fragments_detail {

using analysis::Fill;
using base::Length;
using layout::Weight;
using namespace base::literals;

constexpr Length label_point = 4_mm;                              // how far the point of a label stands out
constexpr Length title_row = 7_mm, inset = 2_mm, apart = 900_um;  // of a stroke from the middle

Length width_of(const std::string& text, Length em, Weight weight) { return layout::text_width(text, em, weight); }

/// A short word in a small frame, its right edge at `right`; returns its left edge.
Length draw_mark(std::vector<Shape>& shapes, Length right, Length top, const std::string& text, bool filled) {
    const auto width = width_of(text, lettering::small, Weight::bold) + 2_mm;
    const Box box{{right - width, top}, width, 4600_um};
    shapes.emplace_back(filled ? filled_box(box, Role::room_tab) : outline(box, Role::rule_fine));
    shapes.emplace_back(
        bold_line(moved(box.at, 1_mm, 3500_um), text, lettering::small, filled ? Role::room_tab_text : Role::text));
    return box.at.x;
}

/// A pointed frame: what hangs here is on that sheet.
Length draw_sheet_flag(std::vector<Shape>& shapes, Length right, Length top, const std::string& text) {
    const auto width = width_of(text, lettering::small, Weight::normal) + 4_mm;
    const SheetPoint at{right - width, top};
    Path flag;
    flag.closed = flag.filled = true;
    flag.role = Role::flag;
    flag.points = {at, moved(at, width - 1800_um, {}), moved(at, width, 1800_um), moved(at, width - 1800_um, 3600_um),
                   moved(at, {}, 3600_um)};
    shapes.emplace_back(flag);
    shapes.emplace_back(text_line(moved(at, 1_mm, 3000_um), text, lettering::small));
    return at.x;
}

void draw_title(std::vector<Shape>& shapes, const NetworkSwitch& words, const Box& body) {
    append(shapes, role_mark(words.mark, {}, moved(body.at, inset, 1500_um)));
    auto right = body.at.x + body.width - 1500_um;
    for (auto mark = words.marks.rbegin(); mark != words.marks.rend(); ++mark)
        right = draw_mark(shapes, right, body.at.y + 1200_um, *mark, mark->starts_with("Root")) - 1_mm;
    const auto left = body.at.x + inset + 6_mm;
    shapes.emplace_back(bold_line({left, body.at.y + 5400_um},
                                  layout::elided(words.tag, right - left, lettering::normal, Weight::bold),
                                  lettering::normal));
    shapes.emplace_back(
        stroke({moved(body.at, {}, title_row), moved(body.at, body.width, title_row)}, Role::rule_fine));
}

std::vector<Path> heavy_edges(const Box& body) {
    const auto height = body.height - title_row;
    return {filled_box({moved(body.at, {}, title_row), 1_mm, height}, Role::heavy_edge),
            filled_box({moved(body.at, body.width - 1_mm, title_row), 1_mm, height}, Role::heavy_edge)};
}

void draw_row(std::vector<Shape>& shapes, SheetPoint at, const std::string& text, Length room, Weight weight) {
    shapes.emplace_back(text_line(at, layout::elided(text, room, lettering::small, weight), lettering::small,
                                  Role::text, Anchor::left, weight));
}

/// The rows under the type; a fifth line makes them a little closer.
void draw_rows(std::vector<Shape>& shapes, const NetworkSwitch& words, const Box& body, Length type_room) {
    const auto pitch = words.further.empty() ? 4_mm : 3700_um;
    auto at = moved(body.at, inset, title_row + 3300_um);
    draw_row(shapes, at, words.type, type_room, Weight::normal);
    const auto room = body.width - 2 * inset;
    for (const auto& text : {words.setting, words.endpoints, words.others, words.further}) {
        if (text.empty()) continue;
        at.y += pitch;
        const bool bold = text == words.others && words.port_overfull;
        draw_row(shapes, at, text, room, bold ? Weight::bold : Weight::normal);
    }
}

/// The stroke of one direction: thicker the fuller, barred where it is to carry more than it can.
std::vector<Path> direction_stroke(const std::vector<SheetPoint>& points, const Direction& direction) {
    const auto& figure = direction.greater();
    if (figure.fill == Fill::overfull) return barred(points, 1500_um, 1_mm, 1200_um);
    return {stroke(points, figure.tenths > 800   ? Role::rule_heavy
                           : figure.tenths > 500 ? Role::rule_medium
                                                 : Role::rule_fine)};
}

int sign(Length length) { return length > Length{} ? 1 : length < Length{} ? -1 : 0; }

/// The line moved to one side by `by`, upward first at the child, keeping its corners square.
std::vector<SheetPoint> beside(const NetworkLine& line, Length by) {
    const auto& way = line.way;
    const auto left = line.leftward ? by : -by;  // seen along the line
    auto points = way;
    const auto shift = [&](std::size_t from, std::size_t to, SheetPoint& point) {
        point = moved(point, left * sign(way[to].y - way[from].y), -left * sign(way[to].x - way[from].x));
    };
    for (std::size_t i = 0; i < way.size(); ++i) {
        if (i > 0) shift(i - 1, i, points[i]);
        if (i + 1 < way.size()) shift(i, i + 1, points[i]);
    }
    return points;
}

bool starts_rightward(const NetworkLine& line) { return line.way[1].x > line.way[0].x; }

/// Two short strokes across the line, at the port that blocks.
void draw_block(std::vector<Shape>& shapes, SheetPoint at, bool rightward) {
    for (const auto away : {1_mm, 2200_um}) {
        const auto x = at.x + (rightward ? away : -away);
        shapes.emplace_back(stroke({{x, at.y - 2_mm}, {x, at.y + 2_mm}}, Role::rule_heavy));
    }
}

void draw_idle_line(std::vector<Shape>& shapes, const NetworkLink& words, const NetworkLine& line) {
    const auto points = beside(line, {});
    append(shapes, words.is_up ? dashed(points, 2_mm, 1500_um, Role::rule_fine)
                               : dashed(points, 500_um, 1500_um, Role::rule_fine));
    const bool at_child = line.child_is_b ? words.b_blocks : words.a_blocks;
    const bool at_parent = line.child_is_b ? words.a_blocks : words.b_blocks;
    if (at_child) draw_block(shapes, line.way.back(), line.leftward);
    if (at_parent && !line.open) draw_block(shapes, line.way.front(), starts_rightward(line));
}

void draw_strokes(std::vector<Shape>& shapes, const NetworkLink& words, const NetworkLine& line) {
    const auto& to_child = line.child_is_b ? words.to_b : words.to_a;
    const auto& to_parent = line.child_is_b ? words.to_a : words.to_b;
    const auto upper = beside(line, -apart), lower = beside(line, apart);
    append(shapes, direction_stroke(upper, to_child));
    append(shapes, direction_stroke(lower, to_parent));
    shapes.emplace_back(arrow_head(upper.back(), !line.leftward));
    if (!line.open) shapes.emplace_back(arrow_head(lower.front(), !starts_rightward(line)));
    if (!words.group) return;
    const auto ring = moved(line.way.back(), line.leftward ? 3300_um : -3300_um, {});
    auto path = circle(ring, 2_mm, Role::rule_fine, false);
    for (auto& point : path.points) point.x = ring.x + (point.x - ring.x) * 2 / 5;
    shapes.emplace_back(path);
}

Path label_ground(const NetworkLine& line, Role role) {
    auto path = filled_box(line.label, role);
    if (!line.open) return path;
    const auto& box = line.label;
    const auto tip = box.at.x + (line.leftward ? box.width + label_point : -label_point);
    path.points.insert(line.leftward ? path.points.begin() + 2 : path.points.end(), {tip, box.at.y + box.height / 2});
    return path;
}

bool is_overfull(const NetworkLink& words) {
    return words.to_a.greater().fill == Fill::overfull || words.to_b.greater().fill == Fill::overfull;
}

/// Tag, capacity, and at the right what is wrong or blocked; the medium gives way first.
void draw_head(std::vector<Shape>& shapes, const NetworkLink& words, const Box& box) {
    const auto base_line = box.at.y + 4_mm;
    const auto state = !words.state.empty() ? words.state : is_overfull(words) ? std::string("overfull") : "";
    const auto state_width = state.empty() ? Length{} : width_of(state, lettering::small, Weight::bold) + 2_mm;
    const auto room = box.width - 2 * inset - state_width;
    const auto tag = layout::elided(words.tag, room * 2 / 3, lettering::small, Weight::bold);
    const auto tag_width = width_of(tag, lettering::small, Weight::bold) + 2_mm;
    auto capacity = words.capacity;
    if (width_of(capacity, lettering::small, Weight::normal) > room - tag_width)
        capacity = layout::elided(capacity.substr(0, capacity.find(", ")), std::max(room - tag_width, Length{}),
                                  lettering::small, Weight::normal);
    shapes.emplace_back(bold_line({box.at.x + inset, base_line}, tag, lettering::small));
    shapes.emplace_back(text_line({box.at.x + inset + tag_width, base_line}, capacity, lettering::small));
    if (!state.empty())
        shapes.emplace_back(
            bold_line({box.at.x + box.width - inset, base_line}, state, lettering::small, Role::text, Anchor::right));
}

/// Rate and percentage in their columns; a frame says above headroom, black says overfull.
void draw_figure(std::vector<Shape>& shapes, const Box& box, Length base_line, const std::string& word,
                 const LoadFigure& figure) {
    const auto right = box.at.x + box.width - inset;
    const auto weight = figure.fill == Fill::fits ? Weight::normal : Weight::bold;
    const bool over = figure.fill == Fill::overfull;
    shapes.emplace_back(text_line({box.at.x + 25_mm, base_line}, word, lettering::small));
    shapes.emplace_back(
        text_line({right - 15500_um, base_line}, figure.rate, lettering::small, Role::text, Anchor::right, weight));
    const Box frame{{right - 14700_um, base_line - 3100_um}, 15400_um, 3700_um};
    if (figure.fill != Fill::fits)
        shapes.emplace_back(over ? filled_box(frame, Role::room_tab) : outline(frame, Role::rule_fine));
    shapes.emplace_back(text_line({right, base_line}, figure.percent, lettering::small,
                                  over ? Role::room_tab_text : Role::text, Anchor::right, weight));
}

void draw_direction(std::vector<Shape>& shapes, const Box& box, int row, const Direction& direction, bool rightward,
                    const std::string& load_word) {
    const auto base_line = box.at.y + 4_mm + (row * 2 - 1) * 4400_um;
    const auto name_room = 17_mm;
    const auto middle = base_line - 1250_um;
    shapes.emplace_back(arrow_head({box.at.x + inset + (rightward ? 2_mm : Length{}), middle}, rightward));
    const auto left = box.at.x + inset + 4_mm;
    shapes.emplace_back(bold_line(
        {left, base_line}, layout::elided(direction.to, name_room, lettering::small, Weight::bold), lettering::small));
    shapes.emplace_back(text_line({left, base_line + 4400_um},
                                  layout::elided(direction.port, name_room, lettering::small, Weight::normal),
                                  lettering::small));
    draw_figure(shapes, box, base_line, load_word, direction.preset);
    draw_figure(shapes, box, base_line + 4400_um, direction.agreed ? "agreed" : "worst", direction.worst);
}

}  // namespace network_fragments_detail

Fragment switch_fragment(const NetworkSwitch& words, const Box& body, const std::string& sheet_words) {
    using namespace network_fragments_detail;
    Fragment fragment;
    fragment.subject = words.subject;
    auto& shapes = fragment.shapes;
    shapes.emplace_back(filled_box(body, Role::plate));
    append(shapes, heavy_edges(body));
    draw_title(shapes, words, body);
    auto room = body.width - 2 * inset;
    if (!sheet_words.empty())
        room = draw_sheet_flag(shapes, body.at.x + body.width - inset, body.at.y + title_row + 300_um, sheet_words) -
               1_mm - body.at.x - inset;
    draw_rows(shapes, words, body, room);
    fragment.bounds = bounds_of(shapes);
    return fragment;
}

Box pointed_label(const NetworkLine& line) {
    using network_fragments_detail::label_point;
    const auto& box = line.label;
    return {{box.at.x - (line.leftward ? base::Length{} : label_point), box.at.y}, box.width + label_point, box.height};
}

Fragment link_fragment(const NetworkLink& words, const NetworkLine& line, const std::string& load_word) {
    using namespace network_fragments_detail;
    Fragment fragment;
    fragment.subject = words.subject;
    auto& shapes = fragment.shapes;
    words.is_up&& words.carries ? draw_strokes(shapes, words, line) : draw_idle_line(shapes, words, line);
    const bool over = is_overfull(words);
    shapes.emplace_back(label_ground(line, Role::tag_ground));
    auto edge = label_ground(line, over ? Role::rule_heavy : Role::rule_fine);
    edge.filled = false;
    shapes.emplace_back(edge);
    draw_head(shapes, words, line.label);
    const auto& to_child = line.child_is_b ? words.to_b : words.to_a;
    const auto& to_parent = line.child_is_b ? words.to_a : words.to_b;
    draw_direction(shapes, line.label, 1, to_child, !line.leftward, load_word);
    draw_direction(shapes, line.label, 2, to_parent, line.leftward, load_word);
    fragment.bounds = bounds_of(shapes);
    return fragment;
}

}  // namespace streamwright::deliver
