// The legend of the network drawing and its table of VLANs.
#include "core/deliver/drawing/network_fragments.h"
#include "core/deliver/drawing/network_lines.h"
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/shapes.h"

#include <algorithm>
#include <array>

namespace streamwright::deliver {

namespace network_legend_detail {

using base::Length;
using layout::Weight;
using namespace base::literals;

constexpr Length row_pitch = 4600_um, words_at = 24_mm, sample = 20_mm;

void strokes(std::vector<Shape>& shapes, SheetPoint at) {
    shapes.emplace_back(stroke({moved(at, {}, -900_um), moved(at, sample, -900_um)}, Role::rule_fine));
    shapes.emplace_back(stroke({moved(at, {}, 900_um), moved(at, sample, 900_um)}, Role::rule_heavy));
    shapes.emplace_back(arrow_head(moved(at, sample, -900_um), true));
    shapes.emplace_back(arrow_head(moved(at, {}, 900_um), false));
}

void over(std::vector<Shape>& shapes, SheetPoint at) {
    append(shapes, barred({at, moved(at, 6500_um, {})}, 1500_um, 1_mm, 1200_um));
    shapes.emplace_back(filled_box({moved(at, 7500_um, -1850_um), 12500_um, 3700_um}, Role::room_tab));
    shapes.emplace_back(
        bold_line(moved(at, 19500_um, 1250_um), "106 %", lettering::small, Role::room_tab_text, Anchor::right));
}

void above(std::vector<Shape>& shapes, SheetPoint at) {
    shapes.emplace_back(outline({moved(at, 7500_um, -1850_um), 12500_um, 3700_um}, Role::rule_fine));
    shapes.emplace_back(bold_line(moved(at, 19500_um, 1250_um), "93 %", lettering::small, Role::text, Anchor::right));
}

void blocked(std::vector<Shape>& shapes, SheetPoint at) {
    append(shapes, dashed({at, moved(at, sample, {})}, 2_mm, 1500_um, Role::rule_fine));
    for (const auto x : {17800_um, 19_mm})
        shapes.emplace_back(stroke({moved(at, x, -2_mm), moved(at, x, 2_mm)}, Role::rule_heavy));
}

void no_link(std::vector<Shape>& shapes, SheetPoint at) {
    append(shapes, dashed({at, moved(at, sample, {})}, 500_um, 1500_um, Role::rule_fine));
}

void group(std::vector<Shape>& shapes, SheetPoint at) {
    for (const auto y : {-900_um, 900_um})
        shapes.emplace_back(stroke({moved(at, {}, y), moved(at, sample, y)}, Role::rule_fine));
    const auto ring = moved(at, 10_mm, {});
    auto path = circle(ring, 2_mm, Role::rule_fine, false);
    for (auto& point : path.points) point.x = ring.x + (point.x - ring.x) * 2 / 5;
    shapes.emplace_back(path);
}

void pointed(std::vector<Shape>& shapes, SheetPoint at) {
    shapes.emplace_back(
        stroke({moved(at, {}, {}), moved(at, 4_mm, -1800_um), moved(at, sample, -1800_um)}, Role::rule_fine));
    shapes.emplace_back(
        stroke({moved(at, {}, {}), moved(at, 4_mm, 1800_um), moved(at, sample, 1800_um)}, Role::rule_fine));
}

struct Entry {
    void (*draw)(std::vector<Shape>&, SheetPoint);
    std::string words;
};

std::vector<Entry> entries(const NetworkView& view) {
    const auto load = view.load_word == "idle" ? std::string("idle: nothing routed") : view.load_title;
    const bool agreed = std::any_of(view.links.begin(), view.links.end(),
                                    [](const NetworkLink& link) { return !link.agreement.empty(); });
    return {{strokes, "one stroke a direction, thicker above 50 and 80 %"},
            {over, "overfull: more than the direction carries"},
            {above, "above the headroom of " + std::to_string(view.headroom_percent) + " %"},
            {blocked, "blocked by the spanning tree at the bars"},
            {no_link, "no link: the ends agree on no speed"},
            {group, "aggregation group, drawn as one link"},
            {pointed, "goes on to the switch named; sheet flags likewise"},
            {nullptr, load + (agreed ? "; worst: any routing; agreed: as noted" : "; worst: any allowed routing")}};
}

struct TableColumn {
    const char* title;
    Length width;
    std::string VlanWords::*field;
};

constexpr std::array<TableColumn, 5> table_columns{{{"VLAN", 11_mm, &VlanWords::number},
                                                    {"Name", 20_mm, &VlanWords::name},
                                                    {"Root", 27_mm, &VlanWords::root},
                                                    {"Querier", 19_mm, &VlanWords::querier},
                                                    {"Blocked", 15_mm, &VlanWords::blocked}}};

void draw_cells(std::vector<Shape>& shapes, SheetPoint at, Length width, const VlanWords* row) {
    const auto all = 92_mm;
    for (const auto& column : table_columns) {
        const auto room = column.width * width.count() / all.count();
        const auto weight = row ? Weight::normal : Weight::bold;
        shapes.emplace_back(text_line(
            at, layout::elided(row ? row->*column.field : column.title, room - 1_mm, lettering::small, weight),
            lettering::small, Role::text, Anchor::left, weight));
        at.x += room;
    }
}

/// Lines of text below the VLANs, with what does not fit counted.
std::vector<std::string> note_lines(const NetworkView& view, Length width) {
    std::vector<std::string> lines;
    for (const auto& note : view.notes)
        for (auto& line : wrapped(note, width, lettering::small, Weight::normal)) lines.push_back(std::move(line));
    return lines;
}

}  // namespace network_legend_detail

Fragment network_legend(SheetPoint at, const NetworkView& view) {
    using namespace network_legend_detail;
    Fragment fragment;
    auto& shapes = fragment.shapes;
    shapes.emplace_back(bold_line(moved(at, {}, 4_mm), "How to read a link", lettering::normal));
    auto row = moved(at, {}, 8_mm);
    for (const auto& [draw, words] : entries(view)) {
        if (draw) draw(shapes, row);
        shapes.emplace_back(text_line(moved(row, draw ? words_at : Length{}, 1250_um),
                                      layout::elided(words, draw ? 82_mm : 106_mm, lettering::small, Weight::normal),
                                      lettering::small));
        row.y += row_pitch;
    }
    fragment.bounds = bounds_of(shapes);
    return fragment;
}

Fragment network_table(const Box& room, const NetworkView& view) {
    using namespace network_legend_detail;
    Fragment fragment;
    auto& shapes = fragment.shapes;
    shapes.emplace_back(bold_line(moved(room.at, {}, 4_mm), "VLANs", lettering::normal));
    auto row = moved(room.at, {}, 9500_um);
    draw_cells(shapes, row, room.width, nullptr);
    shapes.emplace_back(stroke({moved(row, {}, 1200_um), moved(row, room.width, 1200_um)}, Role::rule_hair));
    const auto notes = note_lines(view, room.width);
    const auto fit = static_cast<std::size_t>((room.height - 10_mm).count() / row_pitch.count());
    std::size_t drawn = 0;
    const auto total = view.vlans.size() + notes.size();
    for (std::size_t i = 0; i < total; ++i) {
        row.y += row_pitch;
        if (drawn + 1 == fit && i + 1 < total) {
            shapes.emplace_back(text_line(row, "and " + std::to_string(total - i) + " more lines", lettering::small));
            break;
        }
        if (i < view.vlans.size())
            draw_cells(shapes, row, room.width, &view.vlans[i]);
        else
            shapes.emplace_back(text_line(row, notes[i - view.vlans.size()], lettering::small));
        ++drawn;
    }
    fragment.bounds = bounds_of(shapes);
    return fragment;
}

}  // namespace streamwright::deliver
