// Tables set for print: a TablePart becomes pages of fragments, with heads on every page and the stamp at the foot.
#pragma once

#include "core/deliver/format.h"

#include <vector>

namespace streamwright::app {

/// A4 landscape where the columns fit, else A3 landscape, columns drawn in where they are still too wide. Text wraps in
/// its column; heads wider than their column are turned upright.
std::vector<deliver::PagePart> table_pages(const deliver::TablePart& table, const deliver::Stamp& stamp);

/// What a cell shows, with the unit left to the column's head.
std::string cell_text(const deliver::Cell& cell, deliver::ColumnKind kind);

}  // namespace streamwright::app
