// New lines for cables of a sheet: flags for those that leave it, the search for the rest, long ones first so that a
// fan of cables at a hub nests.
#include "core/graph/wiring.h"
#include "core/layout/cable_route.h"
#include "core/layout/lines.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <set>

namespace streamwright::layout {

namespace reroute_detail {

using base::Length;
using model::CableId;
using model::DeviceId;

struct SheetPlates {
    std::map<DeviceId, Plate> plates;
    std::vector<Box> boxes;
};

SheetPlates plates_on(const graph::Wiring& wiring, model::SheetId sheet) {
    SheetPlates found;
    for (const model::Place& place : wiring.design.places) {
        if (place.on.sheet != sheet) continue;
        const auto index = wiring.device_index(place.on.device);
        if (!index) continue;
        const auto* type = wiring.devices[static_cast<std::size_t>(*index)].type;
        const auto plate = plate_of(type, wiring.roles(*index), place);
        found.boxes.push_back(obstacle(plate));
        found.plates.emplace(place.on.device, plate);
    }
    return found;
}

std::optional<RouteEnd> end_on(const graph::Wiring& wiring, const SheetPlates& sheet,
                               const std::optional<graph::PortAt>& at) {
    if (!at) return std::nullopt;
    const auto plate = sheet.plates.find(wiring.devices[static_cast<std::size_t>(at->device)].row->id);
    if (plate == sheet.plates.end()) return std::nullopt;
    const PortSpot& spot = plate->second.spots[static_cast<std::size_t>(at->port)];
    return RouteEnd{spot.lead, spot.side};
}

struct Job {
    CableId cable;
    RouteEnd a, b;
    bool reversed = false;  // exchanged, so that b is the hub: the search turns close to it
    std::int64_t rise() const { return std::abs((a.at.y - b.at.y).count()); }
};

bool is_hub(const graph::Wiring& wiring, const graph::PortAt& at) {
    const auto* type = wiring.devices[static_cast<std::size_t>(at.device)].type;
    return type && type->kind == catalogue::DeviceKind::network_switch;
}

struct Work {
    std::vector<Job> through;                           // both ends on the sheet
    std::vector<std::pair<CableId, RouteEnd>> leaving;  // one end on the sheet
    std::vector<Line> taken;                            // lines that stay
};

Line whole(const RouteEnd& a, const Line& bends, const RouteEnd& b) {
    Line line{a.at};
    line.insert(line.end(), bends.begin(), bends.end());
    line.push_back(b.at);
    return line;
}

void sort_in(Work& work, const graph::Wiring& wiring, const SheetPlates& plates, model::SheetId sheet,
             const graph::WiredCable& cable, bool wanted) {
    const auto a = end_on(wiring, plates, cable.a), b = end_on(wiring, plates, cable.b);
    const auto* stored = wiring.design.cable_lines.find({sheet, cable.row->id});
    if (stored && stored->pinned) wanted = false;
    if (!a && !b) return;
    if (!wanted) {
        if (stored && a && b) work.taken.push_back(whole(*a, stored->bends, *b));
    } else if (a && b) {
        const bool hub_first = is_hub(wiring, *cable.a) && !is_hub(wiring, *cable.b);
        work.through.push_back(hub_first ? Job{cable.row->id, *b, *a, true} : Job{cable.row->id, *a, *b, false});
    } else {
        work.leaving.emplace_back(cable.row->id, a ? *a : *b);
    }
}

Work sort_out(const graph::Wiring& wiring, const SheetPlates& plates, model::SheetId sheet,
              std::span<const CableId> cables) {
    const std::set<CableId> wanted(cables.begin(), cables.end());
    Work work;
    for (const auto& cable : wiring.cables) sort_in(work, wiring, plates, sheet, cable, wanted.contains(cable.row->id));
    std::ranges::stable_sort(work.through, std::greater{}, &Job::rise);
    return work;
}

/// The tip of a flag: straight out of the lug, as near as lanes of its neighbours and other plates allow.
model::SheetPoint flag_tip(const RouteEnd& end, std::vector<Box>& boxes, const Work& work) {
    const auto lanes = std::ranges::count_if(work.through, [&](const Job& job) {
        return (job.a.at.x == end.at.x && job.a.side == end.side) || (job.b.at.x == end.at.x && job.b.side == end.side);
    });
    const auto first = std::min<std::ptrdiff_t>(lanes, 4) + 1;
    const auto tip_at = [&](std::ptrdiff_t steps) {
        const auto by = steps * measure::lane;
        return model::SheetPoint{end.side == Side::right ? end.at.x + by : end.at.x - by, end.at.y};
    };
    for (const auto steps : {first, first + 1, first + 2, first - 1, first - 2}) {
        if (steps < 1) continue;
        const Box flag = flag_box(tip_at(steps), end.side);
        if (std::ranges::any_of(boxes, [&](const Box& box) { return box.meets(flag); })) continue;
        boxes.push_back(flag);
        return tip_at(steps);
    }
    return tip_at(1);
}

}  // namespace reroute_detail

Box flag_box(model::SheetPoint tip, Side side) {
    const auto x = side == Side::right ? tip.x : tip.x - measure::flag_width;
    return {{x, tip.y - measure::flag_height / 2}, measure::flag_width, measure::flag_height};
}

std::vector<model::CableLine> reroute(const model::Design& design, model::SheetId sheet,
                                      std::span<const model::CableId> cables) {
    using namespace reroute_detail;
    const auto wiring = graph::wire(design);
    auto plates = plates_on(wiring, sheet);
    auto work = sort_out(wiring, plates, sheet, cables);
    std::vector<model::CableLine> lines;
    for (const auto& [cable, end] : work.leaving)
        lines.push_back({{sheet, cable}, {flag_tip(end, plates.boxes, work)}, false, {}});
    for (const Job& job : work.through) {
        auto bends = route(job.a, job.b, plates.boxes, work.taken);
        work.taken.push_back(whole(job.a, bends, job.b));
        if (job.reversed) std::ranges::reverse(bends);
        lines.push_back({{sheet, job.cable}, std::move(bends), false, {}});
    }
    std::ranges::sort(lines, {}, [](const model::CableLine& line) { return line.on; });
    return lines;
}

}  // namespace streamwright::layout
