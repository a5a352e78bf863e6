// Resolves every name of a design. What an earlier wiring resolved is taken over where its rows are the very same in
// memory and the places that they name have not moved: most edits touch one chunk of one table.
#include "core/graph/wiring.h"

#include <algorithm>
#include <future>
#include <map>
#include <numeric>
#include <string_view>

namespace streamwright::graph {

namespace wire_detail {

/// Rows by id beside earlier rows by id; looks at nothing but addresses until they differ.
template <class Wired>
class Earlier {
public:
    Earlier(const std::vector<Wired>& list, bool usable) : list_(list), at_(usable ? 0 : list.size()) {}
    /// What was resolved of this very row; null: nothing.
    template <class Row>
    const Wired* find(const Row& row) {
        while (at_ < list_.size() && list_[at_].row != &row && list_[at_].row->id < row.id) ++at_;
        return at_ < list_.size() && list_[at_].row == &row ? &list_[at_++] : nullptr;
    }

private:
    const std::vector<Wired>& list_;
    std::size_t at_;
};

bool same_id(const WiredStream& a, const WiredStream& b) { return a.row->id == b.row->id; }
bool same_id(const WiredCable& a, const WiredCable& b) { return a.row->id == b.row->id; }
/// A device of another type has other ports.
bool same_id(const WiredDevice& a, const WiredDevice& b) {
    return a.row->id == b.row->id && a.port_index == b.port_index;
}

/// Whether both lists hold rows of the same ids in the same places.
template <class Wired>
bool same_places(const std::vector<Wired>& one, const std::vector<Wired>& other) {
    return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                      [](const Wired& a, const Wired& b) { return a.row == b.row || same_id(a, b); });
}

template <class Wired>
IdIndex index_ids(const std::vector<Wired>& rows) {
    IdIndex ids;
    ids.reserve(rows.size());
    for (const auto& each : rows) ids.add(each.row->id.bits());
    return ids;
}

/// Alike but for key, label and which face it passes to.
bool just_like(const catalogue::PortType& one, catalogue::PortType other) {
    other.key = one.key;
    other.label = one.label;
    other.passes_to = one.passes_to;
    return one == other;
}

PortIndex index_ports(const catalogue::DeviceType& type) {
    PortIndex index{&type, {}, {}, {}};
    for (const auto& port : type.ports)
        index.by_key.emplace_back(first_letters(port.key.text), static_cast<int>(index.by_key.size()));
    std::sort(index.by_key.begin(), index.by_key.end());
    for (const auto& port : type.ports) {
        const bool passes = port.way == catalogue::Way::through && port.passes_to;
        index.passes_to.push_back(passes ? index.find(port.passes_to->text) : -1);
        const auto place = index.like.size();
        const bool as_before = place > 0 && just_like(type.ports[place - 1], port);
        index.like.push_back(as_before ? index.like.back() : static_cast<int>(place));
    }
    return index;
}

/// The rooms by id, in a table that is quicker to ask than the design's.
struct RoomFinder {
    std::vector<const model::Room*> rows;
    IdIndex ids;
    explicit RoomFinder(const model::Table<model::Room>& rooms) {
        ids.reserve(rooms.size());
        for (const auto& room : rooms) ids.add(room.id.bits()), rows.push_back(&room);
    }
    const model::Room* find(const std::optional<model::RoomId>& id) const {
        const auto place = id ? ids.find(id->bits()) : std::nullopt;
        return place ? rows[static_cast<std::size_t>(*place)] : nullptr;
    }
};

/// What is taken over from the earlier wiring.
struct Taken {
    const Wiring& before;
    bool types = false, places = false;  // the types, so the rows of devices; their places, so what names them
};

void add_types(Wiring& wiring, Taken& taken) {
    taken.types = wiring.design.device_types.shares_all_with(taken.before.design.device_types);
    if (taken.types) {
        wiring.port_indices = taken.before.port_indices;
        return;
    }
    for (const auto& row : wiring.design.device_types) wiring.port_indices.push_back(index_ports(*row.type));
}

void add_devices(Wiring& wiring, Taken& taken) {
    add_types(wiring, taken);
    std::map<std::string_view, int> types;
    for (const auto& index : wiring.port_indices) {
        const auto place = static_cast<int>(types.size());
        types[index.type->key.text] = place;
    }
    const bool rooms_too = taken.types && wiring.design.rooms.shares_all_with(taken.before.design.rooms);
    Earlier<WiredDevice> earlier(taken.before.devices, rooms_too);
    const RoomFinder rooms(wiring.design.rooms);
    wiring.devices.reserve(wiring.design.devices.size());
    int ports = 0;
    for (const auto& row : wiring.design.devices) {
        WiredDevice device{&row};
        if (const auto* known = earlier.find(row)) {
            device = *known;
            device.sends = device.shows = false;
        } else {
            const auto found = types.find(row.type.text);
            device.port_index = found == types.end() ? -1 : found->second;
            if (found != types.end()) device.type = wiring.port_indices[static_cast<std::size_t>(found->second)].type;
            device.room = rooms.find(row.room);
        }
        device.first_port = ports;
        if (device.type) ports += static_cast<int>(device.type->ports.size());
        wiring.devices.push_back(device);
    }
    taken.places = taken.types && same_places(wiring.devices, taken.before.devices);
    wiring.device_ids = taken.places ? taken.before.device_ids : index_ids(wiring.devices);
    wiring.overrides.assign(static_cast<std::size_t>(ports), nullptr);
}

void add_overrides(Wiring& wiring, const Taken& taken) {
    if (taken.places && wiring.design.port_overrides.shares_all_with(taken.before.design.port_overrides)) {
        wiring.overrides = taken.before.overrides;
        return;
    }
    for (const auto& row : wiring.design.port_overrides)
        if (const auto at = wiring.port_at(row.port))
            wiring.overrides[static_cast<std::size_t>(wiring.flat(*at))] = &row;
}

void add_cables(Wiring& wiring, const Taken& taken) {
    std::map<std::string_view, const catalogue::CableType*> types;
    for (const auto& row : wiring.design.cable_types) types[row.type->key.text] = row.type.get();
    const bool usable = taken.places && wiring.design.cable_types.shares_all_with(taken.before.design.cable_types);
    Earlier<WiredCable> earlier(taken.before.cables, usable);
    wiring.cables.reserve(wiring.design.cables.size());
    for (const auto& row : wiring.design.cables) {
        if (const auto* known = earlier.find(row)) {
            wiring.cables.push_back(*known);
            continue;
        }
        const auto type = types.find(row.type.text);
        wiring.cables.push_back({&row, type == types.end() ? nullptr : type->second,
                                 row.a ? wiring.port_at(row.a->port) : std::nullopt,
                                 row.b ? wiring.port_at(row.b->port) : std::nullopt});
    }
    const bool same = usable && same_places(wiring.cables, taken.before.cables);
    wiring.cable_ids = same ? taken.before.cable_ids : index_ids(wiring.cables);
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

/// Looked up once here: facts and rules ask it of each row, and searching each time would never end.
void add_streams(Wiring& wiring, const Taken& taken) {
    Earlier<WiredStream> earlier(taken.before.streams, taken.places);
    wiring.streams.reserve(wiring.design.streams.size());
    for (const auto& row : wiring.design.streams) {
        const auto* known = earlier.find(row);
        wiring.streams.push_back(known ? *known : WiredStream{&row, wiring.device_index(row.encoder).value_or(-1)});
    }
    const bool same = same_places(wiring.streams, taken.before.streams);
    wiring.stream_ids = same ? taken.before.stream_ids : index_ids(wiring.streams);
    Earlier<WiredSubscription> asked(taken.before.subscriptions, taken.places && same);
    wiring.subscriptions.reserve(wiring.design.subscriptions.size());
    for (const auto& row : wiring.design.subscriptions) {
        const auto* known = asked.find(row);
        wiring.subscriptions.push_back(known ? *known
                                             : WiredSubscription{&row, wiring.stream_index(row.stream).value_or(-1),
                                                                 wiring.device_index(row.decoder).value_or(-1)});
    }
}

void mark_ends(Wiring& wiring) {
    for (const auto& [row, encoder] : wiring.streams)
        if (encoder >= 0) wiring.devices[static_cast<std::size_t>(encoder)].sends = true;
    for (const auto& [row, stream, decoder] : wiring.subscriptions)
        if (decoder >= 0) wiring.devices[static_cast<std::size_t>(decoder)].shows = true;
}

}  // namespace wire_detail

Wiring wire(const model::Design& design, const Wiring& before) {
    using namespace wire_detail;
    Wiring wiring;
    wiring.design = design;
    Taken taken{before};
    add_devices(wiring, taken);
    const auto streams = [&] {
        add_streams(wiring, taken);
        mark_ends(wiring);
    };
    // In a small design a second thread costs more than it saves.
    auto beside = std::async(design.devices.size() < 2000 ? std::launch::deferred : std::launch::async, streams);
    add_overrides(wiring, taken);
    add_cables(wiring, taken);
    list_cables(wiring);
    beside.get();
    return wiring;
}

}  // namespace streamwright::graph
