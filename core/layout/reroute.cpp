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

/// The end of a cable whose other end is elsewhere.
struct Leaving {
    RouteEnd at;
    bool is_b = false;
};

struct Work {
    std::vector<Job> through;                          // both ends on the sheet
    std::vector<std::pair<CableId, Leaving>> leaving;  // one end on the sheet
    std::vector<Line> taken;                           // lines that stay
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
        work.leaving.emplace_back(cable.row->id, a ? Leaving{*a, false} : Leaving{*b, true});
    }
}

/// Cables cross the edges of room frames but do not run along them.
void keep_off_frames(Work& work, const model::Design& design, model::SheetId sheet) {
    for (const auto& frame : design.room_frames) {
        if (frame.sheet != sheet) continue;
        const auto right = frame.at.x + frame.width, bottom = frame.at.y + frame.height;
        work.taken.push_back({frame.at, {right, frame.at.y}, {right, bottom}, {frame.at.x, bottom}, frame.at});
    }
}

Work sort_out(const graph::Wiring& wiring, const SheetPlates& plates, model::SheetId sheet,
              std::span<const CableId> cables) {
    const std::set<CableId> wanted(cables.begin(), cables.end());
    Work work;
    for (const auto& cable : wiring.cables) sort_in(work, wiring, plates, sheet, cable, wanted.contains(cable.row->id));
    std::ranges::stable_sort(work.through, std::greater{}, &Job::rise);
    keep_off_frames(work, wiring.design, sheet);
    return work;
}

/// What a flag keeps off: plates with the room that cables need to leave them, and flags set before.
std::vector<Box> kept_free(const std::vector<Box>& plates) {
    constexpr Length stub = measure::lane * 3 / 2;
    std::vector<Box> boxes;
    for (const Box& box : plates) boxes.push_back({{box.at.x - stub, box.at.y}, box.width + 2 * stub, box.height});
    return boxes;
}

/// Straight out of the lug, or a few rows lower or higher: from the lug to the tip, the lug itself left out.
Line flag_line(const RouteEnd& end, int lanes, int rows) {
    const auto out = [&](int n) {
        return end.side == Side::right ? end.at.x + n * measure::lane : end.at.x - n * measure::lane;
    };
    const auto y = end.at.y + rows * measure::port_row;
    if (rows == 0) return {{out(lanes), y}};
    return {{out(lanes - 1), end.at.y}, {out(lanes - 1), y}, {out(lanes), y}};
}

bool is_clear(const RouteEnd& end, const Line& line, std::span<const Box> plates, std::span<const Box> kept) {
    const Box flag = flag_box(line.back(), end.side);
    if (flag.at.x < 20 * measure::module) return false;  // the drawing frame
    if (std::ranges::any_of(kept, [&](const Box& box) { return box.meets(flag); })) return false;
    Line from_lug{end.at};
    from_lug.insert(from_lug.end(), line.begin(), line.end());
    return !line_meets(from_lug, plates);
}

/// The way to a flag, as near as lanes of its neighbours, other plates and other flags allow.
Line way_to_flag(const RouteEnd& end, std::span<const Box> plates, std::span<const Box> kept, const Work& work) {
    const auto neighbours = std::ranges::count_if(work.through, [&](const Job& job) {
        return (job.a.at.x == end.at.x && job.a.side == end.side) || (job.b.at.x == end.at.x && job.b.side == end.side);
    });
    const int first = 2 + static_cast<int>(std::min<std::ptrdiff_t>(neighbours, 3));
    for (int distance = 0; distance <= 24; ++distance) {
        const int rows = distance % 2 == 1 ? (distance + 1) / 2 : -distance / 2;
        for (const int lanes : {first, first + 1, first + 2, 3, 2}) {
            const auto line = flag_line(end, lanes, rows);
            if (is_clear(end, line, plates, kept)) return line;
        }
    }
    return flag_line(end, 2, 0);
}

/// Flags of cables that leave the sheet; what is found stands in the way of later lines.
std::vector<model::CableLine> set_flags(Work& work, model::SheetId sheet, std::vector<Box>& boxes) {
    const auto plates = boxes;
    auto kept = kept_free(plates);
    std::vector<model::CableLine> lines;
    for (const auto& [cable, end] : work.leaving) {
        auto line = way_to_flag(end.at, plates, kept, work);
        const Box flag = flag_box(line.back(), end.at.side);
        kept.push_back(flag);
        boxes.push_back(flag);
        work.taken.push_back(line);
        work.taken.back().insert(work.taken.back().begin(), end.at.at);
        if (end.is_b) std::ranges::reverse(line);
        lines.push_back({{sheet, cable}, std::move(line), false, {}});
    }
    return lines;
}

}  // namespace reroute_detail

Box flag_box(model::SheetPoint tip, Side side) {
    const auto x = side == Side::right ? tip.x : tip.x - measure::flag_width;
    return {{x, tip.y - measure::flag_height / 2}, measure::flag_width, measure::flag_height};
}

std::vector<model::CableId> cables_at(const model::Design& design, const std::set<model::DeviceId>& devices) {
    const auto touches = [&](const std::optional<model::CableEnd>& end) {
        return end && devices.contains(end->port.device);
    };
    std::vector<model::CableId> found;
    for (const auto& cable : design.cables)
        if (touches(cable.a) || touches(cable.b)) found.push_back(cable.id);
    return found;
}

std::vector<model::CableLine> reroute(const model::Design& design, model::SheetId sheet,
                                      std::span<const model::CableId> cables) {
    using namespace reroute_detail;
    const auto wiring = graph::wire(design);
    auto plates = plates_on(wiring, sheet);
    auto work = sort_out(wiring, plates, sheet, cables);
    auto lines = set_flags(work, sheet, plates.boxes);
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
