// The design with every name resolved: dense indices for devices, cables and ports, so that graphs, facts and rules
// never search. Rebuilt whole after a structural edit; it keeps its design alive, so its pointers stay good.
#pragma once

#include "core/model/design.h"

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace streamwright::graph {

/// Index into Wiring::devices and into the ports of that device's type.
struct PortAt {
    int device = 0;
    int port = 0;
    friend auto operator<=>(const PortAt&, const PortAt&) = default;
};

struct WiredDevice {
    const model::Device* row = nullptr;
    const catalogue::DeviceType* type = nullptr;  // null: its type is not in the design
    int first_port = 0;                           // index of its first port in the flat port arrays
};

/// An end that names a device or port that is not there is not resolved (integrity and a rule say so).
struct WiredCable {
    const model::Cable* row = nullptr;
    const catalogue::CableType* type = nullptr;
    std::optional<PortAt> a, b;
};

struct Wiring {
    model::Design design;
    std::vector<WiredDevice> devices;                    // by id
    std::vector<WiredCable> cables;                      // by id
    std::vector<const model::PortOverride*> overrides;   // per flat port; null: none
    std::vector<int> cable_starts;                       // per flat port + 1: ranges into cable_list
    std::vector<int> cable_list;                         // cable indices, by port
    std::vector<std::uint64_t> device_bits, cable_bits;  // the ids alone, sorted: searches stay in one piece of memory
    std::vector<int> by_key;                             // per flat port: the device's ports in order of their keys
    std::vector<int> passes_to;                          // per flat port: the other face of a through port; -1: none

    std::optional<int> device_index(model::DeviceId id) const;
    std::optional<int> cable_index(model::CableId id) const;
    std::optional<PortAt> port_at(const model::PortRef& ref) const;
    int flat(PortAt at) const { return devices[static_cast<std::size_t>(at.device)].first_port + at.port; }
    const catalogue::PortType& port_type(PortAt at) const;
    const model::PortOverride* port_override(PortAt at) const;
    model::PortRef ref(PortAt at) const;
    std::span<const int> cables_at(PortAt at) const;
    /// The other face of a passive port; none for active ports.
    std::optional<PortAt> other_face(PortAt at) const;
    bool is_passive(PortAt at) const;
    /// An active port that speaks Ethernet.
    bool is_network_port(PortAt at) const;
    /// The transceiver type set in a cage; null if none is set or it is not in the design.
    const catalogue::DeviceType* module_at(PortAt at) const;
    /// The other end of a cable seen from one of its ends; none if open or unresolved.
    std::optional<PortAt> far_end(int cable, PortAt near) const;
    /// What the device does here: its row's roles, or all that its type can where it can all at once or only one.
    /// Empty: undecided.
    std::vector<catalogue::Role> roles(int device) const;
};

Wiring wire(const model::Design& design);

}  // namespace streamwright::graph
