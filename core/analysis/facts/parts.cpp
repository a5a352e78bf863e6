#include "core/analysis/facts/parts.h"

#include <algorithm>
#include <map>
#include <utility>

namespace streamwright::analysis {

namespace parts_detail {

using graph::Wiring;

/// Collects parts under their keys; drawn and derived ones of a key stand apart.
class Collector {
public:
    explicit Collector(const model::Design& design) : design_(design) {}

    Part& device(const model::TypeKey& key, PartFrom from) {
        auto& part = devices_[{key.text, from}];
        if (part.key.empty()) {
            part.key = part.name = key.text;
            part.from = from;
            if (const auto* row = design_.device_types.find(key)) {
                part.name = row->type->name;
                part.maker = row->type->maker;
            }
        }
        return part;
    }
    Part& cable(const graph::WiredCable& cable) {
        auto& part = cables_[cable.row->type.text];
        if (part.key.empty()) {
            part.key = part.name = cable.row->type.text;
            part.is_cable = true;
            if (cable.type) {
                part.name = cable.type->name;
                part.maker = cable.type->maker;
            }
        }
        return part;
    }
    std::vector<Part> done() && {
        std::vector<Part> list;
        for (auto& [key, part] : devices_) list.push_back(std::move(part));
        for (auto& [key, part] : cables_) list.push_back(std::move(part));
        return list;
    }

private:
    const model::Design& design_;
    std::map<std::pair<std::string, PartFrom>, Part> devices_;
    std::map<std::string, Part> cables_;
};

void add_device(Part& part, model::DeviceId where) {
    ++part.quantity;
    if (part.devices.empty() || part.devices.back() != where) part.devices.push_back(where);
}

void add_modules(const Wiring& wiring, Collector& parts) {
    for (int d = 0; d < static_cast<int>(wiring.devices.size()); ++d) {
        const auto& device = wiring.devices[static_cast<std::size_t>(d)];
        const int ports = device.type ? static_cast<int>(device.type->ports.size()) : 0;
        for (int p = 0; p < ports; ++p) {
            const auto* set = wiring.port_override({d, p});
            if (set && set->module) add_device(parts.device(*set->module, PartFrom::derived), device.row->id);
        }
    }
}

void add_cable(const graph::WiredCable& cable, Collector& parts) {
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
void add_chassis(const Wiring& wiring, Collector& parts) {
    std::map<std::string, std::vector<model::DeviceId>> loose;
    for (const auto& device : wiring.devices)
        if (device.type && device.type->card_form && !device.row->chassis)
            loose[*device.type->card_form].push_back(device.row->id);
    for (const auto& [form, cards] : loose) {
        const int count = static_cast<int>(cards.size());
        const auto* type = chassis_for(wiring.design, form, count);
        if (!type) continue;
        auto& part = parts.device(type->key, PartFrom::derived);
        part.quantity += (count + type->chassis->slots - 1) / type->chassis->slots;
        part.devices.insert(part.devices.end(), cards.begin(), cards.end());
    }
}

}  // namespace parts_detail

Parts find_parts(const graph::Wiring& wiring, const graph::Runs&) {
    using namespace parts_detail;
    Collector parts(wiring.design);
    for (const auto& device : wiring.devices)
        add_device(parts.device(device.row->type, PartFrom::drawn), device.row->id);
    for (const auto& rack : wiring.design.racks)
        if (!rack.type.text.empty()) ++parts.device(rack.type, PartFrom::drawn).quantity;
    add_modules(wiring, parts);
    add_chassis(wiring, parts);
    for (const auto& cable : wiring.cables) add_cable(cable, parts);
    return {std::move(parts).done()};
}

}  // namespace streamwright::analysis
