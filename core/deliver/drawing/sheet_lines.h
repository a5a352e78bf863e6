// The plates and cable lines of one sheet, resolved once: what cable fragments, crossings and flags are drawn from.
#pragma once

#include "core/deliver/drawing/schematic_fragments.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::deliver {

/// A cable as it lies on the sheet, from end a to end b.
struct DrawnLine {
    model::CableId cable;
    catalogue::Signal signal = catalogue::Signal::video;
    std::vector<SheetPoint> points;
    bool flag_at_start = false, flag_at_end = false;  // that end is not on this sheet
};

using Plates = std::map<model::DeviceId, layout::Plate>;

Plates plates_of(const Scene& scene);
layout::Plate plate_in(const Scene& scene, const model::Place& place);
/// Type and roles as the facts know them; for a device newer than the facts, as its row says.
const catalogue::DeviceType* type_in(const Scene& scene, const model::Device& device);
std::vector<catalogue::Role> roles_in(const Scene& scene, const model::Device& device);

std::optional<DrawnLine> drawn_line(const Scene& scene, const Plates& plates, const model::CableLine& line);
/// Every cable with an end on the sheet, by id; a cable without a stored line gets a plain pattern.
std::vector<DrawnLine> drawn_lines(const Scene& scene, const Plates& plates);

/// What a flag says of the end that is elsewhere.
struct FlagWords {
    std::string device, where;
};
FlagWords flag_words(const Scene& scene, model::CableId cable, bool end_a);

/// Where a badge of the cable stands: in its line, past its tag.
std::optional<SheetPoint> spot_beside_tag(const Scene& scene, const DrawnLine& line, const std::vector<DrawnLine>& all);

/// Where the badge of a subject stands; none if it is not drawn on this sheet.
std::optional<SheetPoint> badge_spot(const Scene& scene, const std::string& subject,
                                     const std::vector<DrawnLine>& lines);

Fragment cable_fragment_among(const Scene& scene, const DrawnLine& line, const std::vector<DrawnLine>& all);

}  // namespace streamwright::deliver
