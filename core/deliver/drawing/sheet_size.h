// Paper sizes and drawing areas (ISO 216, ISO 5457).
#pragma once

#include "core/layout/plate.h"
#include "core/model/rows/sheet.h"

#include <string>

namespace streamwright::deliver {

struct SheetSize {
    base::Length width, height;  // trimmed, landscape (A4: portrait)
    layout::Box frame;           // drawing area inside the frame: left margin 20 mm, others 10 mm
};

SheetSize sheet_size(model::PaperSize paper);

/// Fields of the grid reference: 50 mm each, counted from the centre lines (ISO 5457), numbers across, letters down.
struct GridReference {
    int columns, rows;              // even
    base::Length first_x, first_y;  // where the second field begins; the first and last fill up to the frame
};
GridReference grid_reference(model::PaperSize paper);

/// The field a point lies in, "C4"; letters leave out I and O.
std::string zone_of(model::PaperSize paper, model::SheetPoint at);
char zone_letter(int row);

}  // namespace streamwright::deliver
