// Orthogonal routes of cables round plates: fixed patterns while dragging, a search on release. Deterministic: ties are
// broken by cost, bends, then position.
#pragma once

#include "core/layout/plate.h"
#include "core/model/design.h"

#include <set>
#include <span>
#include <vector>

namespace streamwright::layout {

struct RouteEnd {
    model::SheetPoint at;
    Side side = Side::right;  // the cable leaves this way first
};

/// Bends without the two ends. While dragging: the first of a few patterns that meets no box, else the plain one.
std::vector<model::SheetPoint> quick_route(const RouteEnd& a, const RouteEnd& b, std::span<const Box> boxes);

/// On release: the cheapest route by length and bends that stays clear of the boxes and off the lanes already taken
/// where it can. Falls back to quick_route where there is no way.
std::vector<model::SheetPoint> route(const RouteEnd& a, const RouteEnd& b, std::span<const Box> boxes,
                                     std::span<const std::vector<model::SheetPoint>> taken);

/// New lines, sorted by key, for the given cables on a sheet as the design stands (pinned lines are left out); what a
/// move or a connection stores with itself.
std::vector<model::CableLine> reroute(const model::Design& design, model::SheetId sheet,
                                      std::span<const model::CableId> cables);

/// Cables with an end on one of the devices, by id.
std::vector<model::CableId> cables_at(const model::Design& design, const std::set<model::DeviceId>& devices);

/// The box of the flag that ends a cable whose far end is not on the sheet. Its line's last bend is the flag's tip.
Box flag_box(model::SheetPoint tip, Side side);

}  // namespace streamwright::layout
