#include "core/graph/wiring.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace streamwright::graph {

namespace wiring_detail {

std::optional<int> place_of(const std::vector<std::uint64_t>& sorted, std::uint64_t bits) {
    const auto at = std::lower_bound(sorted.begin(), sorted.end(), bits);
    if (at == sorted.end() || *at != bits) return {};
    return static_cast<int>(at - sorted.begin());
}

/// What is computed once a type and copied for each of its devices.
struct TypePorts {
    std::vector<int> by_key, passes_to;
};

int port_of_key(const catalogue::DeviceType& type, std::span<const int> by_key, const std::string& key) {
    const auto port_key = [&](int port) -> const std::string& {
        return type.ports[static_cast<std::size_t>(port)].key.text;
    };
    const auto at = std::lower_bound(by_key.begin(), by_key.end(), key,
                                     [&](int port, const auto& k) { return port_key(port) < k; });
    return at == by_key.end() || port_key(*at) != key ? -1 : *at;
}

TypePorts index_ports(const catalogue::DeviceType& type) {
    TypePorts index;
    index.by_key.resize(type.ports.size());
    std::iota(index.by_key.begin(), index.by_key.end(), 0);
    std::stable_sort(index.by_key.begin(), index.by_key.end(), [&](int a, int b) {
        return type.ports[static_cast<std::size_t>(a)].key < type.ports[static_cast<std::size_t>(b)].key;
    });
    for (const auto& port : type.ports) {
        const bool passes = port.way == catalogue::Way::through && port.passes_to;
        index.passes_to.push_back(passes ? port_of_key(type, index.by_key, port.passes_to->text) : -1);
    }
    return index;
}

void add_devices(Wiring& wiring) {
    std::map<std::string_view, std::pair<const catalogue::DeviceType*, TypePorts>> types;
    for (const auto& row : wiring.design.device_types) types[row.type->key.text] = {row.type.get(), {}};
    for (auto& [key, entry] : types) entry.second = index_ports(*entry.first);
    wiring.devices.reserve(wiring.design.devices.size());
    wiring.device_bits.reserve(wiring.design.devices.size());
    for (const auto& row : wiring.design.devices) {
        const auto found = types.find(row.type.text);
        const int first = static_cast<int>(wiring.by_key.size());
        wiring.device_bits.push_back(row.id.bits());
        wiring.devices.push_back({&row, found == types.end() ? nullptr : found->second.first, first});
        if (found == types.end()) continue;
        const auto& index = found->second.second;
        wiring.by_key.insert(wiring.by_key.end(), index.by_key.begin(), index.by_key.end());
        wiring.passes_to.insert(wiring.passes_to.end(), index.passes_to.begin(), index.passes_to.end());
    }
}

void add_overrides(Wiring& wiring) {
    wiring.overrides.assign(wiring.by_key.size(), nullptr);
    for (const auto& row : wiring.design.port_overrides)
        if (const auto at = wiring.port_at(row.port))
            wiring.overrides[static_cast<std::size_t>(wiring.flat(*at))] = &row;
}

void add_cables(Wiring& wiring) {
    std::map<std::string_view, const catalogue::CableType*> types;
    for (const auto& row : wiring.design.cable_types) types[row.type->key.text] = row.type.get();
    wiring.cables.reserve(wiring.design.cables.size());
    wiring.cable_bits.reserve(wiring.design.cables.size());
    for (const auto& row : wiring.design.cables) {
        const auto type = types.find(row.type.text);
        wiring.cable_bits.push_back(row.id.bits());
        wiring.cables.push_back({&row, type == types.end() ? nullptr : type->second,
                                 row.a ? wiring.port_at(row.a->port) : std::nullopt,
                                 row.b ? wiring.port_at(row.b->port) : std::nullopt});
    }
}

/// Lists the cables of each port: counted first, then placed. A cable with both ends in one port is listed once.
void list_cables(Wiring& wiring) {
    wiring.cable_starts.assign(wiring.by_key.size() + 1, 0);
    const auto each_end = [&](auto&& f) {
        for (std::size_t i = 0; i < wiring.cables.size(); ++i) {
            const auto& cable = wiring.cables[i];
            if (cable.a) f(static_cast<std::size_t>(wiring.flat(*cable.a)), static_cast<int>(i));
            if (cable.b && cable.b != cable.a) f(static_cast<std::size_t>(wiring.flat(*cable.b)), static_cast<int>(i));
        }
    };
    each_end([&](std::size_t port, int) { ++wiring.cable_starts[port + 1]; });
    std::partial_sum(wiring.cable_starts.begin(), wiring.cable_starts.end(), wiring.cable_starts.begin());
    wiring.cable_list.resize(static_cast<std::size_t>(wiring.cable_starts.back()));
    auto next = wiring.cable_starts;
    each_end([&](std::size_t port, int cable) { wiring.cable_list[static_cast<std::size_t>(next[port]++)] = cable; });
}

}  // namespace wiring_detail

std::optional<int> Wiring::device_index(model::DeviceId id) const {
    return wiring_detail::place_of(device_bits, id.bits());
}

std::optional<int> Wiring::cable_index(model::CableId id) const {
    return wiring_detail::place_of(cable_bits, id.bits());
}

std::optional<PortAt> Wiring::port_at(const model::PortRef& ref) const {
    const auto device = device_index(ref.device);
    if (!device) return {};
    const auto& wired = devices[static_cast<std::size_t>(*device)];
    if (!wired.type) return {};
    const std::span<const int> keys(by_key.data() + wired.first_port, wired.type->ports.size());
    const int port = wiring_detail::port_of_key(*wired.type, keys, ref.port.text);
    return port < 0 ? std::nullopt : std::optional(PortAt{*device, port});
}

const catalogue::PortType& Wiring::port_type(PortAt at) const {
    return devices[static_cast<std::size_t>(at.device)].type->ports[static_cast<std::size_t>(at.port)];
}

const model::PortOverride* Wiring::port_override(PortAt at) const {
    return overrides[static_cast<std::size_t>(flat(at))];
}

model::PortRef Wiring::ref(PortAt at) const {
    return {devices[static_cast<std::size_t>(at.device)].row->id, port_type(at).key};
}

std::span<const int> Wiring::cables_at(PortAt at) const {
    const auto port = static_cast<std::size_t>(flat(at));
    return {cable_list.data() + cable_starts[port], cable_list.data() + cable_starts[port + 1]};
}

std::optional<PortAt> Wiring::other_face(PortAt at) const {
    const int face = passes_to[static_cast<std::size_t>(flat(at))];
    return face < 0 ? std::nullopt : std::optional(PortAt{at.device, face});
}

bool Wiring::is_passive(PortAt at) const { return port_type(at).way == catalogue::Way::through; }

bool Wiring::is_network_port(PortAt at) const {
    const auto& port = port_type(at);
    return port.way != catalogue::Way::through && catalogue::is_network(port.signal);
}

const catalogue::DeviceType* Wiring::module_at(PortAt at) const {
    const auto* set = port_override(at);
    if (!set || !set->module) return nullptr;
    const auto* row = design.device_types.find(*set->module);
    return row ? row->type.get() : nullptr;
}

std::optional<PortAt> Wiring::far_end(int cable, PortAt near) const {
    const auto& wired = cables[static_cast<std::size_t>(cable)];
    if (wired.a == near) return wired.b;
    if (wired.b == near) return wired.a;
    return {};
}

std::vector<catalogue::Role> Wiring::roles(int device) const {
    const auto& wired = devices[static_cast<std::size_t>(device)];
    if (!wired.row->roles.empty()) return wired.row->roles;
    if (!wired.type || !wired.type->codec) return {};
    const auto& codec = *wired.type->codec;
    return codec.roles_at_once || codec.roles.size() == 1 ? codec.roles : std::vector<catalogue::Role>{};
}

Wiring wire(const model::Design& design) {
    Wiring wiring;
    wiring.design = design;
    wiring_detail::add_devices(wiring);
    wiring_detail::add_overrides(wiring);
    wiring_detail::add_cables(wiring);
    wiring_detail::list_cables(wiring);
    return wiring;
}

}  // namespace streamwright::graph
