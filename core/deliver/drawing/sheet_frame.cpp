// The frame of a sheet, its grid reference and centring marks.
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/drawing/sheet_size.h"

namespace streamwright::deliver {

namespace frame_detail {

using base::Length;
using namespace base::literals;

constexpr Length band = 5_mm, mark_beyond = 3_mm;

struct Edges {
    Length left, top, right, bottom;
};

Edges edges_of(const Box& box) { return {box.at.x, box.at.y, box.at.x + box.width, box.at.y + box.height}; }

/// Where a field of the grid begins, the first and the last reaching to the frame.
Length field_start(int index, Length low, Length first) { return index == 0 ? low : first + (index - 1) * 50_mm; }

void draw_columns(std::vector<Shape>& shapes, const GridReference& grid, const Edges& frame) {
    for (int i = 0; i < grid.columns; ++i) {
        const auto from = field_start(i, frame.left, grid.first_x);
        const auto to = i + 1 == grid.columns ? frame.right : field_start(i + 1, frame.left, grid.first_x);
        const auto middle = from + (to - from) / 2;
        for (const auto& [inner, outer] :
             {std::pair(frame.top, frame.top - band), std::pair(frame.bottom, frame.bottom + band)}) {
            if (i > 0) shapes.emplace_back(stroke({{from, inner}, {from, outer}}, Role::rule_fine));
            const auto base_line = std::min(inner, outer) + band / 2 + lettering::small * 3 / 8;
            shapes.emplace_back(
                text_line({middle, base_line}, std::to_string(i + 1), lettering::small, Role::text, Anchor::middle));
        }
    }
}

void draw_rows(std::vector<Shape>& shapes, const GridReference& grid, const Edges& frame) {
    for (int i = 0; i < grid.rows; ++i) {
        const auto from = field_start(i, frame.top, grid.first_y);
        const auto to = i + 1 == grid.rows ? frame.bottom : field_start(i + 1, frame.top, grid.first_y);
        const auto base_line = from + (to - from) / 2 + lettering::small * 3 / 8;
        for (const auto& [inner, outer] :
             {std::pair(frame.left, frame.left - band), std::pair(frame.right, frame.right + band)}) {
            if (i > 0) shapes.emplace_back(stroke({{inner, from}, {outer, from}}, Role::rule_fine));
            const auto x = std::min(inner, outer) + band / 2;
            shapes.emplace_back(text_line({x, base_line}, std::string(1, zone_letter(i)), lettering::small, Role::text,
                                          Anchor::middle));
        }
    }
}

void draw_centring_marks(std::vector<Shape>& shapes, const SheetSize& size, const Edges& frame) {
    const auto x = size.width / 2, y = size.height / 2, reach = band + mark_beyond;
    shapes.emplace_back(stroke({{x, frame.top - reach}, {x, frame.top}}, Role::rule_heavy));
    shapes.emplace_back(stroke({{x, frame.bottom}, {x, frame.bottom + reach}}, Role::rule_heavy));
    shapes.emplace_back(stroke({{frame.left - reach, y}, {frame.left, y}}, Role::rule_heavy));
    shapes.emplace_back(stroke({{frame.right, y}, {frame.right + reach, y}}, Role::rule_heavy));
}

}  // namespace frame_detail

Fragment sheet_frame(model::PaperSize paper) {
    using namespace frame_detail;
    const auto size = sheet_size(paper);
    const auto frame = edges_of(size.frame);
    Fragment fragment;
    auto& shapes = fragment.shapes;
    shapes.emplace_back(outline(size.frame.grown(band), Role::rule_fine));
    draw_columns(shapes, grid_reference(paper), frame);
    draw_rows(shapes, grid_reference(paper), frame);
    draw_centring_marks(shapes, size, frame);
    shapes.emplace_back(outline(size.frame, Role::rule_heavy));
    fragment.bounds = {{}, size.width, size.height};
    return fragment;
}

Fragment sheet_heading(model::PaperSize paper, const std::string& words) {
    using namespace base::literals;
    const auto frame = sheet_size(paper).frame;
    const auto room = frame.width - 12_mm;
    Fragment fragment;
    fragment.shapes.emplace_back(bold_line({frame.at.x + 6_mm, frame.at.y + 10_mm},
                                           layout::elided(words, room, lettering::title, layout::Weight::bold),
                                           lettering::title));
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

std::string two_digits(int number) { return (number < 10 ? "0" : "") + std::to_string(number); }

}  // namespace streamwright::deliver
