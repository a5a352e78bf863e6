// Small geometry of orthogonal lines, shared by the quick patterns, the search and the drawing.
#pragma once

#include "core/layout/plate.h"

#include <span>
#include <vector>

namespace streamwright::layout {

using Line = std::vector<model::SheetPoint>;

/// Whether a level or upright segment passes through the inside of a box; running along its edge does not count.
bool passes_through(model::SheetPoint a, model::SheetPoint b, const Box& box);
bool line_meets(std::span<const model::SheetPoint> line, std::span<const Box> boxes);

/// Doubled points and points in the middle of a straight stretch removed.
Line without_idle_points(const Line& line);

/// The box of a plate with its lugs: what cables keep clear of.
Box obstacle(const Plate& plate);

}  // namespace streamwright::layout
