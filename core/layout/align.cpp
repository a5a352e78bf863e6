#include "core/layout/align.h"

#include "core/layout/plate.h"

#include <algorithm>
#include <set>

namespace streamwright::layout {

namespace align_detail {

using base::Length;

/// A plate as a stretch of the one axis that changes.
struct Stretch {
    model::Place place;
    Length from, size;
    Length to() const { return from + size; }
};

bool is_across(Alignment alignment) {
    return alignment == Alignment::left || alignment == Alignment::centre || alignment == Alignment::right ||
           alignment == Alignment::spread_across;
}

/// To the nearest line of the grid.
Length on_grid(Length length) {
    const auto step = measure::module.count();
    const auto count = length.count() + step / 2;
    return Length::from_count((count >= 0 ? count / step : -((step - 1 - count) / step)) * step);
}

std::vector<Stretch> stretches(const model::Design& design, model::SheetId sheet,
                               const std::vector<model::DeviceId>& devices, bool across) {
    std::vector<Stretch> found;
    for (const auto id : std::set<model::DeviceId>(devices.begin(), devices.end())) {
        const auto* place = design.places.find({sheet, id});
        const auto* device = design.devices.find(id);
        if (!place || !device) continue;
        const auto body = plate_of(design.type_of(*device), device->roles, *place).body;
        if (across)
            found.push_back({*place, body.at.x, body.width});
        else
            found.push_back({*place, body.at.y, body.height});
    }
    std::ranges::stable_sort(found, {}, &Stretch::from);
    return found;
}

/// The outermost stay; the room that the others leave is parted into equal gaps, each plate rounded by itself.
void spread(std::vector<Stretch>& plates) {
    const auto count = static_cast<std::int64_t>(plates.size());
    if (count < 3) return;
    const auto last = std::ranges::max_element(plates.begin() + 1, plates.end(), {}, &Stretch::to);
    std::rotate(last, last + 1, plates.end());
    Length free = plates.back().to() - plates.front().from;
    for (const auto& plate : plates) free = free - plate.size;
    Length taken = plates.front().size;
    for (std::int64_t i = 1; i + 1 < count; ++i) {
        auto& plate = plates[static_cast<std::size_t>(i)];
        plate.from = on_grid(plates.front().from + taken + free * i / (count - 1));
        taken += plate.size;
    }
}

void set_in_line(std::vector<Stretch>& plates, Alignment alignment) {
    if (plates.size() < 2) return;
    const auto first = plates.front().from;
    const auto last = std::ranges::max(plates, {}, &Stretch::to).to();
    for (auto& plate : plates) {
        switch (alignment) {
            case Alignment::right:
            case Alignment::bottom:
                plate.from = on_grid(last - plate.size);
                break;
            case Alignment::centre:
            case Alignment::middle:
                plate.from = on_grid((first + last - plate.size) / 2);
                break;
            default:
                plate.from = on_grid(first);
                break;
        }
    }
}

}  // namespace align_detail

std::vector<model::Place> aligned(const model::Design& design, model::SheetId sheet,
                                  const std::vector<model::DeviceId>& devices, Alignment alignment) {
    using namespace align_detail;
    const bool across = is_across(alignment);
    auto plates = stretches(design, sheet, devices, across);
    if (alignment == Alignment::spread_across || alignment == Alignment::spread_down)
        spread(plates);
    else
        set_in_line(plates, alignment);
    std::vector<model::Place> changed;
    for (auto& [place, from, size] : plates) {
        auto& at = across ? place.at.x : place.at.y;
        if (at == from) continue;
        at = from;
        changed.push_back(place);
    }
    return changed;
}

}  // namespace streamwright::layout
