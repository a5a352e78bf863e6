#include "core/analysis/rule_help.h"

#include "core/standards/multicast.h"

#include <algorithm>
#include <set>
#include <utility>

namespace streamwright::analysis {

Finding found(std::string_view rule, Severity severity, std::vector<Subject> subjects, std::vector<base::Value> values,
              int variant) {
    Finding finding;
    finding.rule = rule;
    finding.severity = severity;
    finding.subjects = std::move(subjects);
    finding.values = std::move(values);
    finding.variant = variant;
    return finding;
}

base::Text line(std::string pattern, std::vector<base::Value> values) {
    return {std::move(pattern), std::move(values)};
}

Subject port_subject(const graph::Wiring& wiring, graph::PortAt port) { return wiring.ref(port); }
base::Ref port_ref(const graph::Wiring& wiring, graph::PortAt port) { return named(port_subject(wiring, port)); }
model::DeviceId device_id(const graph::Wiring& wiring, int device) { return wiring.devices[at(device)].row->id; }
model::CableId cable_id(const graph::Wiring& wiring, int cable) { return wiring.cables[at(cable)].row->id; }

std::vector<const model::Stream*> streams_by_index(const graph::Wiring& wiring) {
    std::vector<const model::Stream*> streams;
    for (const auto& stream : wiring.design.streams) streams.push_back(&stream);
    return streams;
}

namespace rule_help_detail {

/// As Wiring::roles, without making a list: many rules ask it of every device.
bool has_role(const graph::Wiring& wiring, int device, catalogue::Role role, bool asked) {
    const auto& wired = wiring.devices[at(device)];
    if (!wired.type || !wired.type->can(role)) return false;
    const auto& set = wired.row->roles;
    if (!set.empty()) return std::find(set.begin(), set.end(), role) != set.end();
    const auto& codec = *wired.type->codec;
    return codec.roles_at_once || codec.roles.size() == 1 || asked;
}

}  // namespace rule_help_detail

bool encodes(const graph::Wiring& wiring, int device) {
    return rule_help_detail::has_role(wiring, device, catalogue::Role::encoder, wiring.devices[at(device)].sends);
}

bool decodes(const graph::Wiring& wiring, int device) {
    return rule_help_detail::has_role(wiring, device, catalogue::Role::decoder, wiring.devices[at(device)].shows);
}

std::optional<model::WhichEnd> end_at(const graph::Wiring& wiring, int cable, graph::PortAt port) {
    const auto& wired = wiring.cables[at(cable)];
    if (wired.a == port) return model::WhichEnd::a;
    if (wired.b == port) return model::WhichEnd::b;
    return std::nullopt;
}

std::optional<graph::PortAt> free_port(const graph::Wiring& wiring, graph::PortAt like, catalogue::Way way) {
    const auto& wanted = wiring.port_type(like);
    const auto& ports = wiring.devices[at(like.device)].type->ports;
    for (int i = 0; i < static_cast<int>(ports.size()); ++i) {
        const auto& port = ports[at(i)];
        const bool fits = port.signal == wanted.signal && port.connector == wanted.connector && port.way == way;
        const graph::PortAt here{like.device, i};
        if (fits && here != like && wiring.cables_at(here).empty()) return here;
    }
    return std::nullopt;
}

std::optional<Remedy> move_end(const graph::Wiring& wiring, int cable, graph::PortAt from, graph::PortAt to) {
    const auto end = end_at(wiring, cable, from);
    if (!end) return std::nullopt;
    return Remedy{
        line(STREAMWRIGHT_TEXT("Move the end of %1 to %2"), {named(cable_id(wiring, cable)), port_ref(wiring, to)}),
        model::Reconnect{cable_id(wiring, cable), *end, wiring.ref(to), {}, {}}};
}

model::PortOverride port_settings(const graph::Wiring& wiring, graph::PortAt port) {
    const auto* set = wiring.port_override(port);
    return set ? *set : model::PortOverride::blank(wiring.ref(port));
}

model::Device device_settings(const graph::Wiring& wiring, int device) {
    auto row = *wiring.devices[at(device)].row;
    row.tag.clear();
    return row;
}

std::optional<Remedy> other_group(const AddressPlan& plan, const model::Stream& stream) {
    if (!stream.group) return std::nullopt;
    std::set<base::MacAddress> used;
    for (const auto& use : plan.groups) used.insert(use.mac);
    constexpr std::uint32_t first = standards::first_plan_group.bits, last = standards::last_plan_group.bits;
    const bool inside = stream.group->bits >= first && stream.group->bits < last;
    for (auto bits = inside ? stream.group->bits + 1 : first + 0xFFU; bits <= last; ++bits) {
        const base::Ipv4 group{bits};
        if (standards::on_control_block_mac(group) || used.count(standards::group_mac(group)) != 0) continue;
        auto row = stream;
        row.group = group;
        return Remedy{line(STREAMWRIGHT_TEXT("Give %1 the free group %2"), {named(stream.id), base::print(group)}),
                      model::SetStream{std::move(row)}};
    }
    return std::nullopt;
}

std::optional<base::Ipv4> free_address(const AddressPlan& plan, const model::Vlan& vlan) {
    if (!vlan.subnet || vlan.subnet->length < 8) return std::nullopt;
    std::set<base::Ipv4> used;
    for (const auto& host : plan.hosts) used.insert(host.address);
    if (vlan.gateway) used.insert(*vlan.gateway);
    const bool leases = vlan.lease_first && vlan.lease_last;
    for (auto bits = vlan.subnet->network.bits + 1; bits < vlan.subnet->broadcast().bits; ++bits) {
        const base::Ipv4 address{bits};
        const bool leased = leases && *vlan.lease_first <= address && address <= *vlan.lease_last;
        if (!leased && used.count(address) == 0) return address;
    }
    return std::nullopt;
}

std::optional<base::Ipv4> querier_address(const AddressPlan& plan, const model::Device& device,
                                          const model::Vlan& vlan) {
    for (const auto& host : device.addresses)
        if (host.address && (!host.vlan || host.vlan == vlan.id) && (!vlan.subnet || vlan.subnet->holds(*host.address)))
            return host.address;
    return free_address(plan, vlan);
}

std::optional<Remedy> other_address(const graph::Wiring& wiring, const AddressPlan& plan, const HostUse& use) {
    const auto* vlan = use.vlan ? wiring.design.vlans.find(*use.vlan) : nullptr;
    const auto address = vlan ? free_address(plan, *vlan) : std::nullopt;
    if (!address) return std::nullopt;
    auto row = device_settings(wiring, use.device);
    for (auto& each : row.addresses)
        if (!use.querier && each.address == use.address) each.address = address;
    for (auto& querier : row.bridging.queriers)
        if (use.querier && querier.address == use.address && querier.vlan == *use.vlan) querier.address = address;
    return Remedy{line(STREAMWRIGHT_TEXT("Give %1 the free address %2"),
                       {named(device_id(wiring, use.device)), base::print(*address)}),
                  model::ConfigureDevice{std::move(row)}};
}

}  // namespace streamwright::analysis
