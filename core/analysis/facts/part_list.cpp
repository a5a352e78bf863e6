#include "core/analysis/facts/part_list.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

Part& PartList::at(Key key) {
    auto& part = parts_[key];
    if (part.quantity == 0 && part.name.empty()) {
        part.kind = std::get<0>(key);
        part.key = part.name = std::get<1>(key);
        part.from = std::get<2>(key);
        part.lead = std::get<4>(key);
    }
    return part;
}

Part& PartList::device(const catalogue::DeviceType* type, const std::string& key, PartFrom from) {
    auto& part = at({PartKind::device, key, from, {}, {}});
    if (type && part.quantity == 0) {
        part.name = type->name;
        part.maker = type->maker;
    }
    return part;
}

Part& PartList::cable(const graph::WiredCable& cable) {
    auto& part = at({PartKind::cable, cable.row->type.text, PartFrom::drawn, {}, {}});
    if (cable.type && part.quantity == 0) {
        part.name = cable.type->name;
        part.maker = cable.type->maker;
    }
    return part;
}

Part& PartList::lead(PartKind kind, const LeadNeed& need) { return at({kind, {}, PartFrom::derived, {}, need}); }

Part& PartList::needed_by(const catalogue::DeviceType& type, PartKind kind, const std::string& name) {
    auto& part = at({kind, type.key.text, PartFrom::derived, name, {}});
    part.name = name;
    part.maker = type.maker;
    return part;
}

Part& PartList::fitting(PartKind kind) { return at({kind, {}, PartFrom::derived, {}, {}}); }

std::vector<Part> PartList::done() && {
    std::vector<Part> list;
    list.reserve(parts_.size());
    for (auto& [key, part] : parts_) list.push_back(std::move(part));
    return list;
}

void add_piece(Part& part, model::DeviceId where) {
    ++part.quantity;
    if (part.devices.empty() || part.devices.back() != where) part.devices.push_back(where);
}

bool is_direct_attach(const catalogue::CableType& type) {
    return !type.plugs.empty() && std::all_of(type.plugs.begin(), type.plugs.end(), catalogue::is_cage);
}

}  // namespace streamwright::analysis
