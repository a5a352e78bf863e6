#include "core/standards/wall_tiles.h"

#include <cassert>

namespace streamwright::standards {

namespace wall_tiles_detail {

__extension__ using Wide = __int128;

/// over / under, halves up.
std::int64_t nearest(Wide over, Wide under) { return static_cast<std::int64_t>((2 * over + under) / (2 * under)); }

}  // namespace wall_tiles_detail

std::int64_t hidden_thousandths(base::Length gap, base::Length image, int pixels) {
    assert(image.count() > 0);
    using wall_tiles_detail::Wide;
    return wall_tiles_detail::nearest(Wide{gap.count()} * pixels * 1000, image.count());
}

int hidden_pixels(base::Length gap, base::Length image, int pixels) {
    assert(image.count() > 0);
    using wall_tiles_detail::Wide;
    return static_cast<int>(wall_tiles_detail::nearest(Wide{gap.count()} * pixels, image.count()));
}

PixelSize wall_canvas(const WallTiles& wall) {
    const auto side = [](std::int64_t tiles, std::int64_t pixels, std::int64_t hidden) {
        return tiles * pixels + (tiles - 1) * hidden;
    };
    return {side(wall.columns, wall.tile_width, wall.hidden_columns),
            side(wall.rows, wall.tile_height, wall.hidden_rows)};
}

PixelRectangle tile_on_canvas(const WallTiles& wall, int column, int row) {
    return {std::int64_t{column} * (wall.tile_width + wall.hidden_columns),
            std::int64_t{row} * (wall.tile_height + wall.hidden_rows), wall.tile_width, wall.tile_height};
}

PixelRectangle tile_of_source(const WallTiles& wall, int column, int row, const PixelSize& source) {
    using wall_tiles_detail::nearest;
    using wall_tiles_detail::Wide;
    const auto canvas = wall_canvas(wall);
    const auto on = tile_on_canvas(wall, column, row);
    const auto left = nearest(Wide{on.left} * source.width, canvas.width);
    const auto top = nearest(Wide{on.top} * source.height, canvas.height);
    const auto right = nearest(Wide{on.left + on.width} * source.width, canvas.width);
    const auto bottom = nearest(Wide{on.top + on.height} * source.height, canvas.height);
    return {left, top, right - left, bottom - top};
}

WallTiles led_wall(int columns, int rows, int cabinet_width, int cabinet_height) {
    return {columns, rows, cabinet_width, cabinet_height, 0, 0};
}

}  // namespace streamwright::standards
