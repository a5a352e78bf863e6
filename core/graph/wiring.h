// The design with every name resolved: dense indices for devices, cables and ports, so that graphs, facts and rules
// never search. Made anew after a structural edit; it keeps its design alive, so its pointers stay good.
#pragma once

#include "core/model/design.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace streamwright::graph {

/// Finds the place of an id among rows; a small hash table, for most of the wiring is looking ids up.
class IdIndex {
public:
    void reserve(std::size_t rows);
    void add(std::uint64_t bits);  // its place is the count before it
    std::optional<int> find(std::uint64_t bits) const;

private:
    std::size_t slot(std::uint64_t bits) const;
    std::vector<std::uint64_t> bits_;
    std::vector<int> slots_;  // a power of two of them; -1: empty
};

/// The ports of one type, for finding them by key.
struct PortIndex {
    const catalogue::DeviceType* type = nullptr;
    std::vector<std::pair<std::uint64_t, int>> by_key;  // the first eight letters of the key, and the port; sorted
    std::vector<int> passes_to;                         // per port: the other face of a through port; -1: none
    std::vector<int> like;                              // per port: the first of the row of ports just like it
    int find(const std::string& key) const;             // -1: none
};

/// Index into Wiring::devices and into the ports of that device's type.
struct PortAt {
    int device = 0;
    int port = 0;
    friend auto operator<=>(const PortAt&, const PortAt&) = default;
};

struct WiredDevice {
    const model::Device* row = nullptr;
    const catalogue::DeviceType* type = nullptr;  // null: its type is not in the design
    const model::Room* room = nullptr;            // null: none, or it is not in the design
    int first_port = 0;                           // index of its first port in the flat port arrays
    int port_index = -1;                          // index into Wiring::port_indices; -1: no type
    bool sends = false;                           // a stream names it as its encoder
    bool shows = false;                           // a subscription names it as its decoder
};

/// An end that names a device or port that is not there is not resolved (integrity and a rule say so).
struct WiredCable {
    const model::Cable* row = nullptr;
    const catalogue::CableType* type = nullptr;
    std::optional<PortAt> a, b;
};

/// Indices of devices and streams; -1: not in the design.
struct WiredStream {
    const model::Stream* row = nullptr;
    int encoder = -1;
};
struct WiredSubscription {
    const model::Subscription* row = nullptr;
    int stream = -1, decoder = -1;
};

struct Wiring {
    model::Design design;
    std::vector<WiredDevice> devices;                   // by id
    std::vector<WiredCable> cables;                     // by id
    std::vector<WiredStream> streams;                   // by id
    std::vector<WiredSubscription> subscriptions;       // by id
    std::vector<const model::PortOverride*> overrides;  // per flat port; null: none
    std::vector<int> cable_starts;                      // per flat port + 1: ranges into cable_list
    std::vector<int> cable_list;                        // cable indices, by port
    IdIndex device_ids, cable_ids, stream_ids;
    std::vector<PortIndex> port_indices;  // per type in use

    std::optional<int> device_index(model::DeviceId id) const;
    std::optional<int> cable_index(model::CableId id) const;
    std::optional<int> stream_index(model::StreamId id) const;
    std::optional<PortAt> port_at(const model::PortRef& ref) const;
    std::optional<PortAt> port_of(int device, const model::PortKey& key) const;
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

/// `before` spares looking up what it resolved of the same rows; it changes no answer.
Wiring wire(const model::Design& design, const Wiring& before = {});
/// The first eight letters of a port's key, as a number that orders as they do.
std::uint64_t first_letters(const std::string& key);

}  // namespace streamwright::graph
