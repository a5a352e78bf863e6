// Paper sizes and drawing areas (ISO 216, ISO 5457).
#pragma once

#include "core/layout/plate.h"
#include "core/model/rows/sheet.h"

namespace streamwright::deliver {

struct SheetSize {
    base::Length width, height;  // trimmed, landscape (A4: portrait)
    layout::Box frame;           // drawing area inside the frame: left margin 20 mm, others 10 mm
};

SheetSize sheet_size(model::PaperSize paper);

}  // namespace streamwright::deliver
