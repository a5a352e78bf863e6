// Moving plates, frames and notes on a sheet: one edit that carries the new bends of every cable it touches.
#pragma once

#include "app/document/selection.h"
#include "core/base/result.h"
#include "core/model/edits/move_on_sheet.h"

#include <set>
#include <vector>

namespace streamwright::app {

/// What moves along when the chosen ones move: plates and notes standing in a chosen frame.
std::set<Chosen> moving_with(const model::Design& design, model::SheetId sheet, const std::set<Chosen>& chosen);

/// Cables with an end on one of the plates.
std::vector<model::CableId> cables_at(const model::Design& design, const std::set<Chosen>& moving);

/// The whole edit: places shifted, cables routed again, pinned bends kept square.
base::Result<model::Delta> move_on_sheet(const model::Design& design, model::SheetId sheet,
                                         const std::set<Chosen>& moving, model::SheetPoint by);

/// The same for plates that move each by itself: their places as they shall be.
base::Result<model::Delta> move_plates(const model::Design& design, model::SheetId sheet,
                                       std::vector<model::Place> places);

}  // namespace streamwright::app
