#include "core/analysis/facts/parts.h"

#include "core/analysis/facts/part_list.h"

#include <algorithm>
#include <map>
#include <utility>

namespace streamwright::analysis {

namespace parts_detail {

using graph::Wiring;

const catalogue::DeviceType* type_of(const Wiring& wiring, const model::TypeKey& key) {
    const auto* row = wiring.design.device_types.find(key);
    return row ? row->type.get() : nullptr;
}

/// A direct-attach cable brings its own ends.
bool takes_direct_attach(const Wiring& wiring, graph::PortAt port) {
    const auto cables = wiring.cables_at(port);
    return std::any_of(cables.begin(), cables.end(), [&](int index) {
        const auto* type = wiring.cables[static_cast<std::size_t>(index)].type;
        return type && is_direct_attach(*type);
    });
}

void add_rack(Part& part, model::RackId rack) {
    ++part.quantity;
    part.racks.push_back(rack);
}

void add_modules(const Wiring& wiring, PartList& parts) {
    for (int d = 0; d < static_cast<int>(wiring.devices.size()); ++d) {
        const auto& device = wiring.devices[static_cast<std::size_t>(d)];
        const int ports = device.type ? static_cast<int>(device.type->ports.size()) : 0;
        for (int p = 0; p < ports; ++p) {
            const auto* set = wiring.port_override({d, p});
            if (!set || !set->module || takes_direct_attach(wiring, {d, p})) continue;
            const auto* type = type_of(wiring, *set->module);
            add_piece(parts.device(type, set->module->text, PartFrom::derived), device.row->id);
        }
    }
}

void add_cable(const graph::WiredCable& cable, PartList& parts) {
    auto& part = parts.cable(cable);
    ++part.quantity;
    part.cables.push_back(cable.row->id);
    if (cable.type && cable.type->use == catalogue::CableUse::lead) return;  // bought by the piece
    if (cable.row->length)
        part.length = part.length.value_or(base::Length{}) + *cable.row->length;
    else
        ++part.unknown_lengths;
}

/// Of the chassis types in the design that take the form, the smallest that holds all cards; else the largest.
const catalogue::DeviceType* chassis_for(const model::Design& design, const std::string& form, int cards) {
    const catalogue::DeviceType* best = nullptr;
    for (const auto& row : design.device_types) {
        const auto& chassis = row.type->chassis;
        if (!chassis || chassis->takes != form || chassis->slots <= 0) continue;
        const int have = best ? best->chassis->slots : 0;
        const bool better = have < cards ? chassis->slots > have : chassis->slots >= cards && chassis->slots < have;
        if (better) best = row.type.get();
    }
    return best;
}

/// Cards that stand in no drawn chassis need one all the same.
void add_chassis(const Wiring& wiring, PartList& parts) {
    std::map<std::string, std::vector<model::DeviceId>> loose;
    for (const auto& device : wiring.devices)
        if (device.type && device.type->card_form && !device.row->chassis)
            loose[*device.type->card_form].push_back(device.row->id);
    for (const auto& [form, cards] : loose) {
        const int count = static_cast<int>(cards.size());
        const auto* type = chassis_for(wiring.design, form, count);
        if (!type) continue;
        auto& part = parts.device(type, type->key.text, PartFrom::derived);
        part.quantity += (count + type->chassis->slots - 1) / type->chassis->slots;
        part.devices.insert(part.devices.end(), cards.begin(), cards.end());
    }
}

}  // namespace parts_detail

Parts find_parts(const graph::Wiring& wiring, const PowerBudget& power) {
    using namespace parts_detail;
    PartList parts;
    for (const auto& device : wiring.devices)
        add_piece(parts.device(device.type, device.row->type.text, PartFrom::drawn), device.row->id);
    for (const auto& rack : wiring.design.racks)
        if (!rack.type.text.empty())
            add_rack(parts.device(type_of(wiring, rack.type), rack.type.text, PartFrom::drawn), rack.id);
    add_modules(wiring, parts);
    add_chassis(wiring, parts);
    for (const auto& cable : wiring.cables) add_cable(cable, parts);
    add_leads(wiring, parts);
    add_supplies(wiring, power, parts);
    add_licences(wiring, parts);
    add_fittings(wiring, parts);
    Parts found{std::move(parts).done()};
    add_spares(wiring.design, found.list);
    return found;
}

}  // namespace streamwright::analysis
