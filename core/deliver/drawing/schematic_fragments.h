// The fragments of the Schematic: devices, cables, room frames, notes, each from the design and its facts alone.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/analysis/report.h"
#include "core/deliver/drawing/fragment.h"
#include "core/model/design.h"

#include <vector>

namespace streamwright::deliver {

/// What fragments are made from; the design is the one the facts were derived from or one that differs in names,
/// notes and drawing only.
struct Scene {
    const model::Design& design;
    const analysis::Facts& facts;
    model::SheetId sheet;
    base::Phrasebook book;
};

Fragment device_fragment(const Scene& scene, const model::Place& place);
Fragment cable_fragment(const Scene& scene, const model::CableLine& line);
Fragment room_fragment(const Scene& scene, const model::RoomFrame& frame);
Fragment note_fragment(const Scene& scene, const model::Note& note);
/// The badge at a plate's corner or in a cable's line; empty shapes if there is nothing to say.
Fragment badge_fragment(const Scene& scene, const std::string& subject, analysis::Severity gravest, int count);

/// Every fragment of a sheet: rooms, cables, devices, notes, in painting order. `crossings` cuts upright cables.
std::vector<Fragment> schematic_fragments(const Scene& scene);

/// The whole line of a cable on a sheet, ends included; empty if neither end is placed there.
std::vector<SheetPoint> cable_points(const Scene& scene, const model::CableLine& line);

}  // namespace streamwright::deliver
