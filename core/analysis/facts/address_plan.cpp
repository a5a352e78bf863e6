#include "core/analysis/facts/address_plan.h"

#include "core/standards/multicast.h"

#include <algorithm>

namespace streamwright::analysis {

namespace address_plan_detail {

using graph::PortAt;
using graph::Runs;
using graph::Wiring;

std::optional<PortAt> other_end(const Wiring& wiring, const Runs& runs, PortAt port) {
    for (const int cable : wiring.cables_at(port)) {
        const auto& run = runs.list[static_cast<std::size_t>(runs.run_of_cable[static_cast<std::size_t>(cable)])];
        if (run.a == port && run.b) return run.b;
        if (run.b == port && run.a) return run.a;
    }
    return std::nullopt;
}

bool bridges(const Wiring& wiring, int device) {
    const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
    return type && type->bridging;
}

/// Untagged VLAN of the switch port that the port is cabled to; of the port itself where that is a switch's.
std::optional<model::VlanId> vlan_of_port(const Wiring& wiring, const Runs& runs, PortAt port) {
    const auto far = other_end(wiring, runs, port);
    const PortAt deciding = far && bridges(wiring, far->device) && !bridges(wiring, port.device) ? *far : port;
    if (const auto* set = wiring.port_override(deciding)) {
        if (set->untagged) return set->untagged;
        if (set->no_untagged) return std::nullopt;
    }
    return wiring.design.settings().usual_vlan;
}

/// The first network port that is cabled; else the first.
std::optional<PortAt> usual_port(const Wiring& wiring, int device) {
    const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
    if (!type || bridges(wiring, device)) return std::nullopt;
    std::optional<PortAt> first;
    for (int i = 0; i < static_cast<int>(type->ports.size()); ++i) {
        if (!catalogue::is_network(type->ports[static_cast<std::size_t>(i)].signal)) continue;
        const PortAt port{device, i};
        if (!wiring.cables_at(port).empty()) return port;
        if (!first) first = port;
    }
    return first;
}

void add_hosts(const Wiring& wiring, const Runs& runs, int device, std::vector<HostUse>& hosts) {
    const auto& row = *wiring.devices[static_cast<std::size_t>(device)].row;
    for (const auto& each : row.addresses) {
        if (!each.address) continue;
        hosts.push_back(
            {*each.address, device, each.vlan ? each.vlan : vlan_of_address(wiring, runs, device, each.port), false});
    }
    for (const auto& querier : row.bridging.queriers)
        if (querier.address && querier.address->bits != 0)
            hosts.push_back({*querier.address, device, querier.vlan, true});
}

}  // namespace address_plan_detail

std::optional<model::VlanId> vlan_of_address(const graph::Wiring& wiring, const graph::Runs& runs, int device,
                                             const std::optional<model::PortKey>& key) {
    using namespace address_plan_detail;
    const auto port = key ? wiring.port_of(device, *key) : usual_port(wiring, device);
    return port ? vlan_of_port(wiring, runs, *port) : wiring.design.settings().usual_vlan;
}

AddressPlan find_address_plan(const graph::Wiring& wiring, const graph::Runs& runs) {
    using namespace address_plan_detail;
    AddressPlan plan;
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) add_hosts(wiring, runs, i, plan.hosts);
    int index = 0;
    plan.groups.reserve(wiring.streams.size());
    for (const auto& [stream, encoder] : wiring.streams) {
        const int at = index++;
        if (!stream->group) continue;
        auto vlan = stream->vlan;
        if (encoder >= 0 && !vlan) vlan = vlan_of_address(wiring, runs, encoder, stream->network_port);
        plan.groups.push_back({*stream->group, standards::group_mac(*stream->group), at, vlan});
    }
    std::sort(plan.hosts.begin(), plan.hosts.end());
    std::sort(plan.groups.begin(), plan.groups.end());
    return plan;
}

}  // namespace streamwright::analysis
