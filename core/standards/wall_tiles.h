// A picture over several displays: how many pixels hide behind each seam, the canvas that results, and the rectangle of
// it that each tile shows. Walls of LED cabinets are the same without seams.
#pragma once

#include "core/base/units.h"

#include <cstdint>

namespace streamwright::standards {

struct WallTiles {
    int columns = 1, rows = 1;
    int tile_width = 1920, tile_height = 1080;  // pixels of one tile
    int hidden_columns = 0, hidden_rows = 0;    // pixels behind each seam, across and down
    friend bool operator==(const WallTiles&, const WallTiles&) = default;
};

/// Pixels of the pitch that a gap between two images would hold, in thousandths, rounded to the nearest; whole pixels
/// alike. image is the lit width (or height) of one tile, pixels their number on it.
std::int64_t hidden_thousandths(base::Length gap, base::Length image, int pixels);
int hidden_pixels(base::Length gap, base::Length image, int pixels);

struct PixelSize {
    std::int64_t width, height;
    friend bool operator==(const PixelSize&, const PixelSize&) = default;
};
/// Tiles and hidden pixels together.
PixelSize wall_canvas(const WallTiles& wall);

struct PixelRectangle {
    std::int64_t left, top, width, height;
    friend bool operator==(const PixelRectangle&, const PixelRectangle&) = default;
};
/// What the tile in that column and row (from 0, left and top first) shows of the canvas.
PixelRectangle tile_on_canvas(const WallTiles& wall, int column, int row);
/// The same in pixels of a source that fills the whole canvas, each edge at its nearest pixel.
PixelRectangle tile_of_source(const WallTiles& wall, int column, int row, const PixelSize& source);

/// A wall of LED cabinets.
WallTiles led_wall(int columns, int rows, int cabinet_width, int cabinet_height);

}  // namespace streamwright::standards
