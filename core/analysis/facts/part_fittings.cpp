// Small things that racks and cables need and offers forget: fixings, shelves, blanks, earthing kits, labels.
#include "core/analysis/facts/part_list.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis {

namespace part_fittings_detail {

using model::RackFace;

/// What stands in one rack.
struct Fill {
    std::vector<model::DeviceId> devices;        // with rack ears
    std::set<std::pair<int, RackFace>> shelves;  // for devices without
    std::set<int> front;                         // units whose front is covered
};

void fill_with(Fill& fill, const graph::WiredDevice& device) {
    const auto& size = device.type->size;
    const auto& place = *device.row->rack;
    const bool shelf = size.rack_units < 1;
    if (shelf)
        fill.shelves.emplace(place.unit, place.face);
    else
        fill.devices.push_back(device.row->id);
    if (place.face == RackFace::rear && !size.full_depth.value_or(false)) return;
    for (int unit = place.unit; unit < place.unit + std::max(1, size.rack_units); ++unit) fill.front.insert(unit);
}

std::map<model::RackId, Fill> fills_of(const graph::Wiring& wiring) {
    std::map<model::RackId, Fill> fills;
    for (const auto& device : wiring.devices)
        if (device.type && device.row->rack) fill_with(fills[device.row->rack->rack], device);
    return fills;
}

int open_units(const model::Rack& rack, const Fill& fill) {
    const auto first = fill.front.lower_bound(1), end = fill.front.upper_bound(rack.units);
    return std::max(0, rack.units) - static_cast<int>(std::distance(first, end));
}

void add_to_rack(PartList& parts, PartKind kind, const model::Rack& rack, int pieces) {
    if (pieces <= 0) return;
    auto& part = parts.fitting(kind);
    part.quantity += pieces;
    part.racks.push_back(rack.id);
}

}  // namespace part_fittings_detail

void add_fittings(const graph::Wiring& wiring, PartList& parts) {
    using namespace part_fittings_detail;
    const auto fills = fills_of(wiring);
    for (const auto& rack : wiring.design.racks) {
        add_to_rack(parts, PartKind::earthing_kit, rack, 1);
        const auto found = fills.find(rack.id);
        if (found == fills.end()) continue;  // nothing is planned in it yet, so nothing is left open
        const auto& fill = found->second;
        const int shelves = static_cast<int>(fill.shelves.size()), blanks = open_units(rack, fill);
        add_to_rack(parts, PartKind::rack_shelf, rack, shelves);
        add_to_rack(parts, PartKind::blank_panel, rack, blanks);
        add_to_rack(parts, PartKind::fixing_set, rack, static_cast<int>(fill.devices.size()) + shelves + blanks);
    }
    if (!wiring.cables.empty())
        parts.fitting(PartKind::cable_label).quantity = 2 * static_cast<int>(wiring.cables.size());
}

}  // namespace streamwright::analysis
