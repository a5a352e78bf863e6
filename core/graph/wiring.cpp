#include "core/graph/wiring.h"

#include <algorithm>
#include <bit>
#include <map>
#include <numeric>

namespace streamwright::graph {

namespace wiring_detail {

/// The first eight letters as a number that orders as they do.
std::uint64_t first_letters(const std::string& key) {
    std::uint64_t letters = 0;
    for (std::size_t i = 0; i < 8; ++i)
        letters = letters << 8 | (i < key.size() ? static_cast<unsigned char>(key[i]) : 0U);
    return letters;
}

PortIndex index_ports(const catalogue::DeviceType& type) {
    PortIndex index{&type, {}, {}};
    for (const auto& port : type.ports)
        index.by_key.emplace_back(first_letters(port.key.text), static_cast<int>(index.by_key.size()));
    std::sort(index.by_key.begin(), index.by_key.end());
    for (const auto& port : type.ports) {
        const bool passes = port.way == catalogue::Way::through && port.passes_to;
        index.passes_to.push_back(passes ? index.find(port.passes_to->text) : -1);
    }
    return index;
}

int add_devices(Wiring& wiring) {
    std::map<std::string_view, int> types;
    for (const auto& row : wiring.design.device_types) {
        types[row.type->key.text] = static_cast<int>(wiring.port_indices.size());
        wiring.port_indices.push_back(index_ports(*row.type));
    }
    wiring.devices.reserve(wiring.design.devices.size());
    wiring.device_ids.reserve(wiring.design.devices.size());
    int ports = 0;
    for (const auto& row : wiring.design.devices) {
        wiring.device_ids.add(row.id.bits());
        const auto found = types.find(row.type.text);
        const int index = found == types.end() ? -1 : found->second;
        const auto* type = index < 0 ? nullptr : wiring.port_indices[static_cast<std::size_t>(index)].type;
        wiring.devices.push_back({&row, type, ports, index});
        if (type) ports += static_cast<int>(type->ports.size());
    }
    return ports;
}

void add_overrides(Wiring& wiring, int ports) {
    wiring.overrides.assign(static_cast<std::size_t>(ports), nullptr);
    for (const auto& row : wiring.design.port_overrides)
        if (const auto at = wiring.port_at(row.port))
            wiring.overrides[static_cast<std::size_t>(wiring.flat(*at))] = &row;
}

void add_cables(Wiring& wiring) {
    std::map<std::string_view, const catalogue::CableType*> types;
    for (const auto& row : wiring.design.cable_types) types[row.type->key.text] = row.type.get();
    wiring.cables.reserve(wiring.design.cables.size());
    wiring.cable_ids.reserve(wiring.design.cables.size());
    for (const auto& row : wiring.design.cables) {
        const auto type = types.find(row.type.text);
        wiring.cable_ids.add(row.id.bits());
        wiring.cables.push_back({&row, type == types.end() ? nullptr : type->second,
                                 row.a ? wiring.port_at(row.a->port) : std::nullopt,
                                 row.b ? wiring.port_at(row.b->port) : std::nullopt});
    }
}

/// Lists the cables of each port: counted first, then placed. A cable with both ends in one port is listed once.
void list_cables(Wiring& wiring) {
    wiring.cable_starts.assign(wiring.overrides.size() + 1, 0);
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

/// Looked at once here: rules ask it of each device, and looking through all rows each time would never end.
void mark_senders(Wiring& wiring) {
    for (const auto& stream : wiring.design.streams)
        if (const auto device = wiring.device_index(stream.encoder))
            wiring.devices[static_cast<std::size_t>(*device)].sends = true;
    for (const auto& subscription : wiring.design.subscriptions)
        if (const auto device = wiring.device_index(subscription.decoder))
            wiring.devices[static_cast<std::size_t>(*device)].shows = true;
}

}  // namespace wiring_detail

void IdIndex::reserve(std::size_t rows) {
    bits_.reserve(rows);
    slots_.assign(std::bit_ceil(2 * rows + 1), -1);
}

/// Where the id is, or the empty slot where it belongs.
std::size_t IdIndex::slot(std::uint64_t bits) const {
    const auto mask = slots_.size() - 1;
    auto at = (bits * 0x9E3779B97F4A7C15U >> 20U) & mask;
    while (slots_[at] >= 0 && bits_[static_cast<std::size_t>(slots_[at])] != bits) at = (at + 1) & mask;
    return at;
}

void IdIndex::add(std::uint64_t bits) {
    slots_[slot(bits)] = static_cast<int>(bits_.size());
    bits_.push_back(bits);
}

std::optional<int> IdIndex::find(std::uint64_t bits) const {
    if (slots_.empty()) return {};
    const int place = slots_[slot(bits)];
    return place < 0 ? std::nullopt : std::optional(place);
}

int PortIndex::find(const std::string& key) const {
    const auto letters = wiring_detail::first_letters(key);
    auto at = std::lower_bound(by_key.begin(), by_key.end(), std::pair(letters, 0));
    for (; at != by_key.end() && at->first == letters; ++at)
        if (type->ports[static_cast<std::size_t>(at->second)].key.text == key) return at->second;
    return -1;
}

std::optional<int> Wiring::device_index(model::DeviceId id) const { return device_ids.find(id.bits()); }

std::optional<int> Wiring::cable_index(model::CableId id) const { return cable_ids.find(id.bits()); }

std::optional<PortAt> Wiring::port_at(const model::PortRef& ref) const {
    const auto device = device_index(ref.device);
    if (!device) return {};
    const int index = devices[static_cast<std::size_t>(*device)].port_index;
    if (index < 0) return {};
    const int port = port_indices[static_cast<std::size_t>(index)].find(ref.port.text);
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
    const auto index = static_cast<std::size_t>(devices[static_cast<std::size_t>(at.device)].port_index);
    const int face = port_indices[index].passes_to[static_cast<std::size_t>(at.port)];
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
    const int ports = wiring_detail::add_devices(wiring);
    wiring_detail::add_overrides(wiring, ports);
    wiring_detail::add_cables(wiring);
    wiring_detail::list_cables(wiring);
    wiring_detail::mark_senders(wiring);
    return wiring;
}

}  // namespace streamwright::graph
