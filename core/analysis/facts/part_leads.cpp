// Leads that nobody draws and everybody needs on the day: between installed cable and device, and from outlet to inlet.
#include "core/analysis/facts/part_list.h"

#include <algorithm>

namespace streamwright::analysis {

namespace part_leads_detail {

using catalogue::Connector;
using graph::PortAt;
using graph::Wiring;

/// The face that patch leads go to: of the two, the one its type names first.
bool is_front(const Wiring& wiring, PortAt face) {
    const auto other = wiring.other_face(face);
    return other && face < *other;
}

/// Installed cable ends in an outlet or panel; where it is drawn straight to a device, or to the front of a panel,
/// a lead stands between.
bool wants_lead(const Wiring& wiring, PortAt end) {
    if (wiring.is_passive(end)) return catalogue::is_network(wiring.port_type(end).signal) && is_front(wiring, end);
    return wiring.is_network_port(end);
}

Connector plug_of(const catalogue::CableType& type, Connector wanted) {
    const bool bears = std::find(type.plugs.begin(), type.plugs.end(), wanted) != type.plugs.end();
    return bears || type.plugs.empty() ? wanted : type.plugs.front();
}

/// The socket a lead goes into: that of the module in a cage; of an empty cage the cable's own, for lack of better.
Connector socket_of(const Wiring& wiring, PortAt end, const catalogue::CableType& cable) {
    const auto* module = wiring.module_at(end);
    if (module && module->module) return module->module->connector;
    const auto connector = wiring.port_type(end).connector;
    return catalogue::is_cage(connector) && !cable.plugs.empty() ? cable.plugs.front() : connector;
}

LeadNeed patch_lead(const Wiring& wiring, PortAt end, const catalogue::CableType& cable) {
    const auto near = socket_of(wiring, end, cable);
    return {cable.signal, cable.medium, cable.grade, cable.screened, near, plug_of(cable, near)};
}

void add_patch_leads(const Wiring& wiring, const graph::WiredCable& cable, PartList& parts) {
    if (!cable.type || cable.type->use != catalogue::CableUse::installed) return;
    if (!catalogue::is_network(cable.type->signal)) return;
    for (const auto& end : {cable.a, cable.b}) {
        if (!end || !wants_lead(wiring, *end)) continue;
        auto& part = parts.lead(PartKind::patch_lead, patch_lead(wiring, *end, *cable.type));
        add_piece(part, wiring.devices[static_cast<std::size_t>(end->device)].row->id);
        if (part.cables.empty() || part.cables.back() != cable.row->id) part.cables.push_back(cable.row->id);
    }
}

bool is_inlet(const catalogue::PortType& port) {
    return port.signal == catalogue::Signal::power && port.way == catalogue::Way::in &&
           (port.connector == Connector::iec_c14 || port.connector == Connector::iec_c8 ||
            port.connector == Connector::iec_c20);
}

void add_mains_leads(const Wiring& wiring, int index, PartList& parts) {
    const auto& device = wiring.devices[static_cast<std::size_t>(index)];
    const int ports = device.type ? static_cast<int>(device.type->ports.size()) : 0;
    for (int p = 0; p < ports; ++p) {
        const auto& port = device.type->ports[static_cast<std::size_t>(p)];
        if (!is_inlet(port) || !wiring.cables_at({index, p}).empty()) continue;
        LeadNeed need{.signal = catalogue::Signal::power, .medium = catalogue::Medium::other};
        need.near = need.far = port.connector;
        add_piece(parts.lead(PartKind::mains_lead, need), device.row->id);
    }
}

}  // namespace part_leads_detail

void add_leads(const graph::Wiring& wiring, PartList& parts) {
    for (const auto& cable : wiring.cables) part_leads_detail::add_patch_leads(wiring, cable, parts);
    for (int d = 0; d < static_cast<int>(wiring.devices.size()); ++d)
        part_leads_detail::add_mains_leads(wiring, d, parts);
}

}  // namespace streamwright::analysis
