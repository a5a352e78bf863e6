// Setting plates in line, or at equal gaps: where each shall stand. The edges are those of the plates without lugs.
#pragma once

#include "core/model/design.h"

#include <vector>

namespace streamwright::layout {

/// Edges and middles come to one line; spread_across and spread_down make the gaps between the outermost plates equal.
enum class Alignment { left, centre, right, top, middle, bottom, spread_across, spread_down };

/// The places that change, on the grid. Of the devices, those drawn on the sheet count; fewer than two are in line as
/// they stand, fewer than three have equal gaps.
std::vector<model::Place> aligned(const model::Design& design, model::SheetId sheet,
                                  const std::vector<model::DeviceId>& devices, Alignment alignment);

}  // namespace streamwright::layout
