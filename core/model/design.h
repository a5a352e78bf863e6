// The design as a value: a handful of tables of plain rows that name each other by strong id.
#pragma once

#include "core/model/rows/cable.h"
#include "core/model/rows/device.h"
#include "core/model/rows/port_override.h"
#include "core/model/rows/preset.h"
#include "core/model/rows/rack.h"
#include "core/model/rows/revision.h"
#include "core/model/rows/room.h"
#include "core/model/rows/settings.h"
#include "core/model/rows/sheet.h"
#include "core/model/rows/stream.h"
#include "core/model/rows/subscription.h"
#include "core/model/rows/type_row.h"
#include "core/model/rows/vlan.h"
#include "core/model/rows/waiver.h"
#include "core/model/rows/wall.h"
#include "core/model/table.h"

#include <string_view>
#include <tuple>

namespace streamwright::model {

struct Design {
    Table<Settings> settings_table;  // at most one row; read it by settings()
    Table<Room> rooms;
    Table<Rack> racks;
    Table<Vlan> vlans;
    Table<Device> devices;
    Table<PortOverride> port_overrides;
    Table<Cable> cables;
    Table<Stream> streams;
    Table<Preset> presets;
    Table<Subscription> subscriptions;
    Table<Wall> walls;
    Table<Sheet> sheets;
    Table<Place> places;
    Table<CableLine> cable_lines;
    Table<RoomFrame> room_frames;
    Table<Note> notes;
    Table<Waiver> waivers;
    Table<Revision> revisions;
    Table<DeviceTypeRow> device_types;
    Table<CableTypeRow> cable_types;

    const Settings& settings() const;
    const catalogue::DeviceType* type_of(const Device& device) const;
    const catalogue::CableType* type_of(const Cable& cable) const;

    friend bool operator==(const Design&, const Design&) = default;
};

/// Calls f(name, member pointer) for each table, in the order of the file. The names are those of the file.
template <class F>
constexpr void for_each_table(F&& f) {
    f(std::string_view("settings"), &Design::settings_table);
    f(std::string_view("rooms"), &Design::rooms);
    f(std::string_view("racks"), &Design::racks);
    f(std::string_view("vlans"), &Design::vlans);
    f(std::string_view("devices"), &Design::devices);
    f(std::string_view("port_overrides"), &Design::port_overrides);
    f(std::string_view("cables"), &Design::cables);
    f(std::string_view("streams"), &Design::streams);
    f(std::string_view("presets"), &Design::presets);
    f(std::string_view("subscriptions"), &Design::subscriptions);
    f(std::string_view("walls"), &Design::walls);
    f(std::string_view("sheets"), &Design::sheets);
    f(std::string_view("places"), &Design::places);
    f(std::string_view("cable_lines"), &Design::cable_lines);
    f(std::string_view("room_frames"), &Design::room_frames);
    f(std::string_view("notes"), &Design::notes);
    f(std::string_view("waivers"), &Design::waivers);
    f(std::string_view("revisions"), &Design::revisions);
    f(std::string_view("device_types"), &Design::device_types);
    f(std::string_view("cable_types"), &Design::cable_types);
}

/// Every row type, in the order of the tables.
using AllRows = std::tuple<Settings, Room, Rack, Vlan, Device, PortOverride, Cable, Stream, Preset, Subscription, Wall,
                           Sheet, Place, CableLine, RoomFrame, Note, Waiver, Revision, DeviceTypeRow, CableTypeRow>;

/// The table of a row type.
template <class Row>
constexpr Table<Row> Design::*table_of() {
    Table<Row> Design::*found = nullptr;
    for_each_table([&](std::string_view, auto member) {
        if constexpr (std::is_same_v<decltype(member), Table<Row> Design::*>) found = member;
    });
    return found;
}

}  // namespace streamwright::model
