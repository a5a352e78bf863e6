#include "core/layout/turned_plates.h"

#include "core/layout/cable_route.h"
#include "core/model/edits/all_edits.h"

#include <algorithm>
#include <map>
#include <vector>

namespace streamwright::layout {

namespace turned_plates_detail {

using Plates = std::map<model::SheetId, std::vector<model::DeviceId>>;

/// Plates, by sheet, whose device the change gives another role or type.
Plates turned_by(const model::Design& before, const model::Delta& delta) {
    Plates turned;
    for (const auto& change : delta.of<model::Device>()) {
        if (!change.before || !change.after) continue;
        if (change.before->roles == change.after->roles && change.before->type == change.after->type) continue;
        for (const auto& place : before.places)
            if (place.on.device == change.after->id) turned[place.on.sheet].push_back(change.after->id);
    }
    return turned;
}

std::vector<model::CableId> cables_at(const model::Design& design, const std::vector<model::DeviceId>& devices) {
    const auto touches = [&](const std::optional<model::CableEnd>& end) {
        return end && std::find(devices.begin(), devices.end(), end->port.device) != devices.end();
    };
    std::vector<model::CableId> cables;
    for (const auto& cable : design.cables)
        if (touches(cable.a) || touches(cable.b)) cables.push_back(cable.id);
    return cables;
}

}  // namespace turned_plates_detail

model::Delta with_turned_plates(const model::Design& before, model::Delta delta) {
    const auto turned = turned_plates_detail::turned_by(before, delta);
    if (turned.empty()) return delta;
    auto after = before;
    model::apply(after, delta);
    for (const auto& [sheet, devices] : turned) {
        const auto cables = turned_plates_detail::cables_at(after, devices);
        const auto moved = model::make(after, model::MoveOnSheet{{}, {}, {}, reroute(after, sheet, cables)});
        if (moved) model::apply(after, *moved);
    }
    return model::difference(before, after);
}

}  // namespace streamwright::layout
