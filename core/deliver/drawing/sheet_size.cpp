// ISO 216 sizes, and the frame and grid reference of ISO 5457.
#include "core/deliver/drawing/sheet_size.h"

#include <algorithm>
#include <string_view>

namespace streamwright::deliver {

namespace sheet_detail {

using base::Length;
using namespace base::literals;

constexpr Length field = 50_mm;

std::pair<Length, Length> trimmed(model::PaperSize paper) {
    switch (paper) {
        case model::PaperSize::a0:
            return {1189_mm, 841_mm};
        case model::PaperSize::a1:
            return {841_mm, 594_mm};
        case model::PaperSize::a2:
            return {594_mm, 420_mm};
        case model::PaperSize::a4:
            return {210_mm, 297_mm};
        default:
            return {420_mm, 297_mm};
    }
}

/// Fields between the centre line and the frame; a narrow rest joins the last one (ISO 5457: A0 16 x 24 ... A4 4 x 6).
int half_count(Length size, Length margin) {
    const auto half = (size / 2 - margin).count();
    return static_cast<int>(std::max<std::int64_t>(1, half / field.count() + (half % field.count() > 20'000 ? 1 : 0)));
}

int field_index(Length at, Length first, int count) {
    if (at < first) return 0;
    return static_cast<int>(std::min<std::int64_t>((at - first).count() / field.count() + 1, count - 1));
}

}  // namespace sheet_detail

SheetSize sheet_size(model::PaperSize paper) {
    using namespace base::literals;
    const auto [width, height] = sheet_detail::trimmed(paper);
    return {width, height, {{20_mm, 10_mm}, width - 30_mm, height - 20_mm}};
}

GridReference grid_reference(model::PaperSize paper) {
    using namespace sheet_detail;
    const auto size = sheet_size(paper);
    const int across = half_count(size.width, 10_mm), down = half_count(size.height, 10_mm);
    return {2 * across, 2 * down, size.width / 2 - (across - 1) * field, size.height / 2 - (down - 1) * field};
}

char zone_letter(int row) {
    static constexpr std::string_view letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    return letters[static_cast<std::size_t>(row) % letters.size()];
}

std::string zone_of(model::PaperSize paper, model::SheetPoint at) {
    const auto grid = grid_reference(paper);
    const int column = sheet_detail::field_index(at.x, grid.first_x, grid.columns);
    const int row = sheet_detail::field_index(at.y, grid.first_y, grid.rows);
    return std::string(1, zone_letter(row)) + std::to_string(column + 1);
}

}  // namespace streamwright::deliver
