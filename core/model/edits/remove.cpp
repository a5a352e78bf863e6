#include "core/model/edits/remove.h"

#include "core/model/edits/edit_helpers.h"

#include <algorithm>
#include <set>

namespace streamwright::model {

namespace {

template <class Row, class Gone>
void erase_where(Editing& editing, Gone&& gone) {
    std::vector<typename Row::Key> keys;
    for (const auto& row : editing.now.*table_of<Row>())
        if (gone(row)) keys.push_back(row.key());
    for (const auto& key : keys) editing.erase<Row>(key);
}

/// Calls edit(copy) for each row; rows that differ then are put.
template <class Row, class Change>
void change_each(Editing& editing, Change&& change) {
    std::vector<Row> changed;
    for (const auto& row : editing.now.*table_of<Row>()) {
        Row copy = row;
        change(copy);
        if (!(copy == row)) changed.push_back(std::move(copy));
    }
    for (auto& row : changed) editing.put(std::move(row));
}

/// What is asked to go, by kind, so that each table is looked through once.
struct Going {
    std::set<RoomId> rooms;
    std::set<RackId> racks;
    std::set<VlanId> vlans;
    std::set<DeviceId> devices;
    std::set<CableId> cables;
    std::set<StreamId> streams;
    std::set<PresetId> presets;
    std::set<SubscriptionId> subscriptions;
    std::set<WallId> walls;
    std::set<SheetId> sheets;
    std::set<FrameId> frames;
    std::set<NoteId> notes;
    std::set<WaiverId> waivers;
    std::set<RevisionId> revisions;
};

template <class Row, class Id>
Trouble note_going(const Design& design, std::set<Id>& going, const Id& id, const char* what) {
    if (!(design.*table_of<Row>()).contains(id)) return edit_detail::no_such(what, id);
    going.insert(id);
    return std::nullopt;
}

Trouble take_id(const Design& d, Going& g, RoomId id) { return note_going<Room>(d, g.rooms, id, "room"); }
Trouble take_id(const Design& d, Going& g, RackId id) { return note_going<Rack>(d, g.racks, id, "rack"); }
Trouble take_id(const Design& d, Going& g, VlanId id) { return note_going<Vlan>(d, g.vlans, id, "VLAN"); }
Trouble take_id(const Design& d, Going& g, DeviceId id) { return note_going<Device>(d, g.devices, id, "device"); }
Trouble take_id(const Design& d, Going& g, CableId id) { return note_going<Cable>(d, g.cables, id, "cable"); }
Trouble take_id(const Design& d, Going& g, StreamId id) { return note_going<Stream>(d, g.streams, id, "stream"); }
Trouble take_id(const Design& d, Going& g, PresetId id) { return note_going<Preset>(d, g.presets, id, "preset"); }
Trouble take_id(const Design& d, Going& g, SubscriptionId id) {
    return note_going<Subscription>(d, g.subscriptions, id, "subscription");
}
Trouble take_id(const Design& d, Going& g, WallId id) { return note_going<Wall>(d, g.walls, id, "wall"); }
Trouble take_id(const Design& d, Going& g, SheetId id) { return note_going<Sheet>(d, g.sheets, id, "sheet"); }
Trouble take_id(const Design& d, Going& g, FrameId id) { return note_going<RoomFrame>(d, g.frames, id, "room frame"); }
Trouble take_id(const Design& d, Going& g, NoteId id) { return note_going<Note>(d, g.notes, id, "note"); }
Trouble take_id(const Design& d, Going& g, WaiverId id) {
    return note_going<Waiver>(d, g.waivers, id, "accepted finding");
}
Trouble take_id(const Design& d, Going& g, RevisionId id) {
    return note_going<Revision>(d, g.revisions, id, "revision");
}

/// Cables that lose an end: kept with an open one if asked and something still holds the other end.
void remove_cables(Editing& editing, Going& going, bool keep_cables) {
    const auto lost = [&](const std::optional<CableEnd>& end) {
        return end && going.devices.contains(end->port.device);
    };
    change_each<Cable>(editing, [&](Cable& row) {
        if (!lost(row.a) && !lost(row.b)) return;
        if (lost(row.a)) row.a.reset();
        if (lost(row.b)) row.b.reset();
        if (!keep_cables || (!row.a && !row.b)) going.cables.insert(row.id);
    });
    for (const auto id : going.cables) editing.erase<Cable>(id);
}

void remove_streams(Editing& editing, Going& going) {
    for (const auto& row : editing.now.streams)
        if (going.devices.contains(row.encoder)) going.streams.insert(row.id);
    for (const auto id : going.streams) editing.erase<Stream>(id);
    if (!going.streams.empty())
        change_each<Stream>(editing, [&](Stream& row) {
            if (row.twin && going.streams.contains(*row.twin)) row.twin.reset();
        });
    for (const auto id : going.presets) editing.erase<Preset>(id);
    if (!going.presets.empty())
        change_each<Settings>(editing, [&](Settings& row) {
            std::erase_if(row.survive_presets, [&](PresetId preset) { return going.presets.contains(preset); });
        });
    erase_where<Subscription>(editing, [&](const Subscription& row) {
        return going.subscriptions.contains(row.id) || going.streams.contains(row.stream) ||
               going.presets.contains(row.preset) || going.devices.contains(row.decoder);
    });
}

/// A wall that loses its last display goes with it.
void remove_walls(Editing& editing, const Going& going) {
    for (const auto id : going.walls) editing.erase<Wall>(id);
    const auto gone = [&](const std::optional<DeviceId>& tile) { return tile && going.devices.contains(*tile); };
    const auto empty = [](const std::optional<DeviceId>& tile) { return !tile; };
    erase_where<Wall>(editing, [&](const Wall& row) {
        return std::ranges::all_of(row.tiles, [&](const auto& tile) { return empty(tile) || gone(tile); });
    });
    change_each<Wall>(editing, [&](Wall& row) {
        if (row.room && going.rooms.contains(*row.room)) row.room.reset();
        std::ranges::replace_if(row.tiles, gone, std::optional<DeviceId>());
    });
}

void remove_drawing(Editing& editing, const Going& going) {
    for (const auto id : going.sheets) editing.erase<Sheet>(id);
    erase_where<Place>(editing, [&](const Place& row) {
        return going.sheets.contains(row.on.sheet) || going.devices.contains(row.on.device);
    });
    erase_where<CableLine>(editing, [&](const CableLine& row) {
        return going.sheets.contains(row.on.sheet) || going.cables.contains(row.on.cable);
    });
    erase_where<RoomFrame>(editing, [&](const RoomFrame& row) {
        return going.frames.contains(row.id) || going.sheets.contains(row.sheet) || going.rooms.contains(row.room);
    });
    erase_where<Note>(
        editing, [&](const Note& row) { return going.notes.contains(row.id) || going.sheets.contains(row.sheet); });
}

void forget_vlans(BridgeSettings& bridging, const std::set<VlanId>& gone) {
    std::erase_if(bridging.queriers, [&](const Querier& querier) { return gone.contains(querier.vlan); });
    std::erase_if(bridging.snooping_off_vlans, [&](VlanId vlan) { return gone.contains(vlan); });
    std::erase_if(bridging.multicast_router_vlans, [&](VlanId vlan) { return gone.contains(vlan); });
}

void remove_devices(Editing& editing, const Going& going) {
    for (const auto id : going.devices) editing.erase<Device>(id);
    change_each<Device>(editing, [&](Device& row) {
        if (row.room && going.rooms.contains(*row.room)) {
            row.room.reset();
            row.standing.reset();
        }
        if (row.rack && going.racks.contains(row.rack->rack)) row.rack.reset();
        if (row.chassis && going.devices.contains(row.chassis->chassis)) row.chassis.reset();
        for (auto& host : row.addresses)
            if (host.vlan && going.vlans.contains(*host.vlan)) host.vlan.reset();
        forget_vlans(row.bridging, going.vlans);
    });
    erase_where<PortOverride>(editing,
                              [&](const PortOverride& row) { return going.devices.contains(row.port.device); });
    if (going.devices.empty()) return;
    change_each<PortOverride>(editing, [&](PortOverride& row) {
        if (row.edid && row.edid->from && going.devices.contains(row.edid->from->device)) row.edid.reset();
    });
    erase_where<PortOverride>(editing, [](const PortOverride& row) { return row == PortOverride::blank(row.port); });
}

void remove_vlans(Editing& editing, const Going& going) {
    if (going.vlans.empty()) return;
    const auto gone = [&](const std::optional<VlanId>& vlan) { return vlan && going.vlans.contains(*vlan); };
    for (const auto id : going.vlans) editing.erase<Vlan>(id);
    change_each<Settings>(editing, [&](Settings& row) {
        if (gone(row.usual_vlan)) row.usual_vlan.reset();
    });
    change_each<Stream>(editing, [&](Stream& row) {
        if (gone(row.vlan)) row.vlan.reset();
    });
    change_each<PortOverride>(editing, [&](PortOverride& row) {
        if (gone(row.untagged)) row.untagged.reset();
        std::erase_if(row.tagged, gone);
    });
    erase_where<PortOverride>(editing, [](const PortOverride& row) { return row == PortOverride::blank(row.port); });
}

void remove_rooms_and_racks(Editing& editing, const Going& going) {
    for (const auto id : going.rooms) editing.erase<Room>(id);
    for (const auto id : going.racks) editing.erase<Rack>(id);
    change_each<Rack>(editing, [&](Rack& row) {
        if (row.room && going.rooms.contains(*row.room)) row.room.reset();
    });
    for (const auto id : going.waivers) editing.erase<Waiver>(id);
    for (const auto id : going.revisions) editing.erase<Revision>(id);
}

}  // namespace

base::Result<Delta> make(const Design& design, const Remove& edit) {
    Going going;
    for (const auto& any : edit.rows)
        if (auto trouble = std::visit([&](auto id) { return take_id(design, going, id); }, any)) return *trouble;
    Editing editing(design);
    remove_cables(editing, going, edit.keep_cables);
    remove_streams(editing, going);
    remove_walls(editing, going);
    remove_drawing(editing, going);
    remove_devices(editing, going);
    remove_vlans(editing, going);
    remove_rooms_and_racks(editing, going);
    return editing.done();
}

}  // namespace streamwright::model
