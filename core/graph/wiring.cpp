#include "core/graph/wiring.h"

#include <algorithm>
#include <bit>

namespace streamwright::graph {

std::uint64_t first_letters(const std::string& key) {
    std::uint64_t letters = 0;
    for (std::size_t i = 0; i < 8; ++i)
        letters = letters << 8 | (i < key.size() ? static_cast<unsigned char>(key[i]) : 0U);
    return letters;
}

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
    const auto letters = first_letters(key);
    auto at = std::lower_bound(by_key.begin(), by_key.end(), std::pair(letters, 0));
    for (; at != by_key.end() && at->first == letters; ++at)
        if (type->ports[static_cast<std::size_t>(at->second)].key.text == key) return at->second;
    return -1;
}

std::optional<int> Wiring::device_index(model::DeviceId id) const { return device_ids.find(id.bits()); }

std::optional<int> Wiring::cable_index(model::CableId id) const { return cable_ids.find(id.bits()); }

std::optional<int> Wiring::stream_index(model::StreamId id) const { return stream_ids.find(id.bits()); }

std::optional<PortAt> Wiring::port_at(const model::PortRef& ref) const {
    const auto device = device_index(ref.device);
    return device ? port_of(*device, ref.port) : std::nullopt;
}

std::optional<PortAt> Wiring::port_of(int device, const model::PortKey& key) const {
    const int index = devices[static_cast<std::size_t>(device)].port_index;
    if (index < 0) return {};
    const int port = port_indices[static_cast<std::size_t>(index)].find(key.text);
    return port < 0 ? std::nullopt : std::optional(PortAt{device, port});
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

}  // namespace streamwright::graph
