// Ways of links that close a ring: from the label of a link to another switch on the same sheet, through what plates,
// labels and the lines of the trees leave free. A small grid of its own: the gaps between rows are narrower than the
// lanes of cables on a schematic.
#pragma once

#include "core/deliver/drawing/fragment.h"

#include <optional>
#include <vector>

namespace streamwright::deliver {

using Way = std::vector<SheetPoint>;  // orthogonal

/// What a way must respect.
struct WayGround {
    Box room;                          // the part of the sheet to draw in
    std::vector<Box> boxes;            // plates and labels: kept clear of
    std::vector<Way> taken;            // lines already drawn: crossed square, never run along
    std::vector<base::Length> xs, ys;  // where a way may run
};

/// The shortest way with few bends and crossings that leaves and arrives level; nothing where there is none.
std::optional<Way> way_between(const WayGround& ground, SheetPoint from, const std::vector<SheetPoint>& goals);

}  // namespace streamwright::deliver
