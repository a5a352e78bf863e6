#include "core/model/clipping.h"

#include <algorithm>
#include <set>
#include <type_traits>

namespace streamwright::model {

namespace {

/// Rooms and VLANs that the copied rows name, wherever in a row they are named.
struct NamedPlaces {
    std::set<RoomId> rooms;
    std::set<VlanId> vlans;

    void operator()(RoomId id) { rooms.insert(id); }
    void operator()(VlanId id) { vlans.insert(id); }

    template <class Field>
    void look(const Field& field) {
        if constexpr (std::is_same_v<Field, RoomId> || std::is_same_v<Field, VlanId>)
            (*this)(field);
        else if constexpr (requires { Field::visit(field, [](const char*, const auto&) {}); })
            Field::visit(field, [&](const char*, const auto& inner) { look(inner); });
        else if constexpr (requires { field.has_value(); }) {
            if (field) look(*field);
        } else if constexpr (requires { field.begin(); })
            for (const auto& each : field) look(each);
    }
};

/// Copies the row of that key, if there is one.
template <class Row>
void take_row(Design& clipping, const Design& design, const typename Row::Key& key) {
    if (const Row* row = (design.*table_of<Row>()).find(key)) (clipping.*table_of<Row>()).put(*row);
}

void take_devices(Design& clipping, const Design& design, const std::set<DeviceId>& chosen) {
    for (const auto id : chosen) {
        const Device* held = design.devices.find(id);
        if (!held) continue;
        Device row = *held;
        row.rack.reset();
        if (row.chassis && !chosen.contains(row.chassis->chassis)) row.chassis.reset();
        take_row<DeviceTypeRow>(clipping, design, row.type);
        clipping.devices.put(std::move(row));
    }
    for (const auto& row : design.port_overrides) {
        if (!clipping.devices.contains(row.port.device)) continue;
        if (row.module) take_row<DeviceTypeRow>(clipping, design, *row.module);
        auto copy = row;
        if (row.edid && row.edid->from && !chosen.contains(row.edid->from->device)) copy.edid.reset();
        clipping.port_overrides.put(std::move(copy));
    }
}

void take_cables_and_streams(Design& clipping, const Design& design) {
    const auto here = [&](const std::optional<CableEnd>& end) {
        return end && clipping.devices.contains(end->port.device);
    };
    for (const auto& row : design.cables) {
        if (!here(row.a) || !here(row.b)) continue;
        take_row<CableTypeRow>(clipping, design, row.type);
        clipping.cables.put(row);
    }
    for (const auto& row : design.streams)
        if (clipping.devices.contains(row.encoder)) clipping.streams.put(row);
    for (const auto& row : design.streams)
        if (row.twin && clipping.streams.contains(row.id) && !clipping.streams.contains(*row.twin)) {
            auto alone = row;
            alone.twin.reset();
            clipping.streams.put(alone);
        }
}

/// A wall goes along where all its displays do.
void take_walls(Design& clipping, const Design& design) {
    const auto here = [&](const std::optional<DeviceId>& tile) { return !tile || clipping.devices.contains(*tile); };
    for (const auto& row : design.walls)
        if (std::ranges::all_of(row.tiles, here)) clipping.walls.put(row);
}

void take_drawing(Design& clipping, const Design& design, SheetId sheet) {
    take_row<Sheet>(clipping, design, sheet);
    for (const auto& row : clipping.devices) take_row<Place>(clipping, design, {sheet, row.id});
    for (const auto& row : clipping.cables) take_row<CableLine>(clipping, design, {sheet, row.id});
}

}  // namespace

Design copied(const Design& design, const std::vector<DeviceId>& devices, SheetId sheet) {
    Design clipping;
    take_devices(clipping, design, {devices.begin(), devices.end()});
    take_cables_and_streams(clipping, design);
    take_walls(clipping, design);
    take_drawing(clipping, design, sheet);
    NamedPlaces named;
    for (const auto& row : clipping.devices) named.look(row);
    for (const auto& row : clipping.port_overrides) named.look(row);
    for (const auto& row : clipping.streams) named.look(row);
    for (const auto& row : clipping.walls) named.look(row);
    for (const auto id : named.rooms) take_row<Room>(clipping, design, id);
    for (const auto id : named.vlans) take_row<Vlan>(clipping, design, id);
    return clipping;
}

}  // namespace streamwright::model
