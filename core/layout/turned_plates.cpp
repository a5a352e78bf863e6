#include "core/layout/turned_plates.h"

#include "core/layout/cable_route.h"
#include "core/model/edits/all_edits.h"

#include <map>
#include <set>

namespace streamwright::layout {

namespace turned_plates_detail {

using Plates = std::map<model::SheetId, std::set<model::DeviceId>>;

/// Plates, by sheet, whose device the change gives another role or type.
Plates turned_by(const model::Design& before, const model::Delta& delta) {
    Plates turned;
    for (const auto& change : delta.of<model::Device>()) {
        if (!change.before || !change.after) continue;
        if (change.before->roles == change.after->roles && change.before->type == change.after->type) continue;
        for (const auto& place : before.places)
            if (place.on.device == change.after->id) turned[place.on.sheet].insert(change.after->id);
    }
    return turned;
}

}  // namespace turned_plates_detail

model::Delta with_turned_plates(const model::Design& before, model::Delta delta) {
    const auto turned = turned_plates_detail::turned_by(before, delta);
    if (turned.empty()) return delta;
    auto after = before;
    model::apply(after, delta);
    for (const auto& [sheet, devices] : turned) {
        const auto cables = cables_at(after, devices);
        const auto moved = model::make(after, model::MoveOnSheet{{}, {}, {}, reroute(after, sheet, cables)});
        if (moved) model::apply(after, *moved);
    }
    return model::difference(before, after);
}

}  // namespace streamwright::layout
