// What devices need beside themselves: plug-in supplies, licences, and spares by the plan.
#include "core/analysis/facts/part_list.h"
#include "core/standards/poe.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis {

namespace part_needs_detail {

/// Devices whose port supplies at least the class that they ask for; a port that gives less leaves them dark.
std::set<int> fed_devices(const PowerBudget& power) {
    std::set<int> fed;
    for (const auto& feed : power.feeds) {
        const auto* wanted = standards::poe_class(feed.wanted_class);
        const auto* given = standards::poe_class(feed.given_class);
        if (wanted && given && wanted->at_supply <= given->at_supply) fed.insert(feed.device.device);
    }
    return fed;
}

struct Endpoints {
    int encoders = 0, decoders = 0, all = 0, undecided = 0;
};

Endpoints count_endpoints(const graph::Wiring& wiring) {
    Endpoints count;
    for (int d = 0; d < static_cast<int>(wiring.devices.size()); ++d) {
        const auto* type = wiring.devices[static_cast<std::size_t>(d)].type;
        if (!type || !type->codec) continue;
        const auto roles = wiring.roles(d);
        ++count.all;
        count.encoders += static_cast<int>(std::count(roles.begin(), roles.end(), catalogue::Role::encoder));
        count.decoders += static_cast<int>(std::count(roles.begin(), roles.end(), catalogue::Role::decoder));
        if (roles.empty()) ++count.undecided;
    }
    return count;
}

LicenceCount counted(const catalogue::LicenceNeed& need, const Endpoints& endpoints) {
    switch (need.per) {
        case catalogue::LicencePer::encoder:
            return {need, endpoints.encoders, endpoints.undecided};
        case catalogue::LicencePer::decoder:
            return {need, endpoints.decoders, endpoints.undecided};
        default:
            return {need, endpoints.all, 0};
    }
}

int licences_for(const LicenceCount& licence) {
    const auto& need = licence.need;
    return need.each < 1 ? 0 : (licence.counted + need.each - 1) / need.each * need.count;
}

/// A lead of the network, bought by the piece; direct-attach cables are among them.
bool is_network_lead(const model::Design& design, const Part& part) {
    if (part.kind == PartKind::patch_lead) return true;
    if (part.kind != PartKind::cable) return false;
    const auto* row = design.cable_types.find(model::CableTypeKey{part.key});
    return row && row->type->use == catalogue::CableUse::lead && catalogue::is_network(row->type->signal);
}

int spares_of_device(const model::SparePlan& plan, const catalogue::DeviceType& type, int quantity) {
    if (type.module) return plan.of_each_module;
    return type.codec ? (quantity * plan.endpoints_percent + 99) / 100 : 0;
}

}  // namespace part_needs_detail

void add_supplies(const graph::Wiring& wiring, const PowerBudget& power, PartList& parts) {
    const auto fed = part_needs_detail::fed_devices(power);
    for (int d = 0; d < static_cast<int>(wiring.devices.size()); ++d) {
        const auto& device = wiring.devices[static_cast<std::size_t>(d)];
        if (!device.type || !device.type->power || !device.type->power->external_supply || fed.contains(d)) continue;
        add_piece(parts.needed_by(*device.type, PartKind::plug_in_supply, device.type->name), device.row->id);
    }
}

void add_licences(const graph::Wiring& wiring, PartList& parts) {
    const auto endpoints = part_needs_detail::count_endpoints(wiring);
    for (const auto& device : wiring.devices) {
        if (!device.type) continue;
        for (const auto& need : device.type->licences) {
            const auto licence = part_needs_detail::counted(need, endpoints);
            const int quantity = part_needs_detail::licences_for(licence);
            if (quantity == 0) continue;
            auto& part = parts.needed_by(*device.type, PartKind::licence, need.name);
            part.quantity += quantity;
            part.licence = licence;
            part.devices.push_back(device.row->id);
        }
    }
}

void add_spares(const model::Design& design, std::vector<Part>& parts) {
    const auto& plan = design.settings().spares;
    std::set<std::string> spared;  // a type both drawn and derived gets its spares once, on its first line
    for (auto& part : parts) {
        if (part.quantity == 0) continue;
        if (part_needs_detail::is_network_lead(design, part)) part.spare = plan.of_each_lead;
        const auto* row = part.kind == PartKind::device ? design.device_types.find(model::TypeKey{part.key}) : nullptr;
        if (row && spared.insert(part.key).second)
            part.spare = part_needs_detail::spares_of_device(plan, *row->type, part.quantity);
    }
}

}  // namespace streamwright::analysis
