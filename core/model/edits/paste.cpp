#include "core/model/edits/paste.h"

#include "core/base/id.h"
#include "core/model/edits/edit_helpers.h"

#include <algorithm>
#include <map>

namespace streamwright::model {

namespace {

/// The edit at work, and what the copies are called here.
struct Pasting {
    Editing editing;
    base::IdSource ids;
    std::map<DeviceId, DeviceId> devices;
    std::map<CableId, CableId> cables;
    std::map<std::string, std::string> stacks;

    template <class Row>
    typename Row::Key fresh() {
        auto id = ids.next<typename Row::Key>();
        while ((editing.now.*table_of<Row>()).contains(id)) id = ids.next<typename Row::Key>();
        return id;
    }
};

/// The tag itself where no row bears it, else the next free number of its stem: "ENC-003" gives "ENC-007".
template <class Rows>
std::string fresh_tag(const Rows& rows, const std::string& tag) {
    const auto bears = [&](const auto& row) { return row.tag == tag; };
    if (tag.empty() || std::none_of(rows.begin(), rows.end(), bears)) return tag;
    constexpr std::size_t most_digits = 9;  // that next_numbered reads
    auto stem = tag.find_last_not_of("0123456789") + 1;
    if (tag.size() > most_digits) stem = std::max(stem, tag.size() - most_digits);
    if (stem == tag.size()) return edit_detail::next_numbered(rows, tag + ' ', 1, 2);
    return edit_detail::next_numbered(rows, tag.substr(0, stem), tag.size() - stem);
}

template <class Id, class Rows>
void keep_if_known(std::optional<Id>& link, const Rows& rows) {
    if (link && !rows.contains(*link)) link.reset();
}

/// Copies of switches that were stacked are a stack of their own, not more members of the one they were copied from.
void name_stacks(Pasting& p, const Design& clipping) {
    struct Stack {
        std::string tag;
    };
    std::vector<Stack> named;
    for (const auto& row : p.editing.now.devices) named.push_back({row.bridging.stack});
    for (const auto& row : clipping.devices) {
        const auto& stack = row.bridging.stack;
        if (stack.empty() || p.stacks.contains(stack)) continue;
        p.stacks[stack] = fresh_tag(named, stack);
        named.push_back({p.stacks[stack]});
    }
}

void settle_bridging(Pasting& p, BridgeSettings& bridging) {
    const auto& vlans = p.editing.now.vlans;
    const auto unknown = [&](VlanId vlan) { return !vlans.contains(vlan); };
    bridging.address.reset();
    if (!bridging.stack.empty()) bridging.stack = p.stacks.at(bridging.stack);
    std::erase_if(bridging.queriers, [&](const Querier& querier) { return unknown(querier.vlan); });
    for (auto& querier : bridging.queriers) querier.address.reset();
    std::erase_if(bridging.snooping_off_vlans, unknown);
    std::erase_if(bridging.multicast_router_vlans, unknown);
}

Device as_new(Pasting& p, Device row) {
    row.id = p.devices.at(row.id);
    row.tag = fresh_tag(p.editing.now.devices, row.tag);
    keep_if_known(row.room, p.editing.now.rooms);
    row.standing.reset();
    row.rack.reset();
    row.chassis.reset();
    row.host_name.clear();
    row.serial.clear();
    std::erase_if(row.addresses, [](const HostAddress& host) { return host.address.has_value(); });
    for (auto& host : row.addresses) {
        host.mac.reset();
        keep_if_known(host.vlan, p.editing.now.vlans);
    }
    settle_bridging(p, row.bridging);
    return row;
}

template <class Row, class Key>
Trouble embed_used(Pasting& p, const Design& clipping, const Key& key) {
    const Row* used = (clipping.*table_of<Row>()).find(key);
    return used ? edit_detail::embed_if_new(p.editing, used->type) : std::nullopt;
}

Trouble paste_devices(Pasting& p, const Design& clipping) {
    name_stacks(p, clipping);
    for (const auto& row : clipping.devices) p.devices.emplace(row.id, p.fresh<Device>());
    for (const auto& row : clipping.devices) {
        if (auto trouble = embed_used<DeviceTypeRow>(p, clipping, row.type)) return trouble;
        if (auto trouble = edit_detail::put_checked(p.editing, as_new(p, row))) return trouble;
    }
    // Cards last: each names a copied chassis, which must be there first.
    for (const auto& row : clipping.devices) {
        if (!row.chassis || !p.devices.contains(row.chassis->chassis)) continue;
        Device card = *p.editing.now.devices.find(p.devices.at(row.id));
        card.chassis = ChassisPlace{p.devices.at(row.chassis->chassis), row.chassis->slot};
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(card))) return trouble;
    }
    return std::nullopt;
}

Trouble paste_ports(Pasting& p, const Design& clipping) {
    const auto& vlans = p.editing.now.vlans;
    for (auto row : clipping.port_overrides) {
        if (!p.devices.contains(row.port.device)) continue;
        row.port.device = p.devices.at(row.port.device);
        keep_if_known(row.untagged, vlans);
        std::erase_if(row.tagged, [&](VlanId vlan) { return !vlans.contains(vlan); });
        if (row.edid && row.edid->from) {
            if (p.devices.contains(row.edid->from->device))
                row.edid->from->device = p.devices.at(row.edid->from->device);
            else
                row.edid.reset();
        }
        if (row == PortOverride::blank(row.port)) continue;
        if (row.module)
            if (auto trouble = embed_used<DeviceTypeRow>(p, clipping, *row.module)) return trouble;
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(row))) return trouble;
    }
    return std::nullopt;
}

Trouble paste_cables(Pasting& p, const Design& clipping) {
    for (auto row : clipping.cables) {
        const auto known = [&](const std::optional<CableEnd>& end) {
            return !end || p.devices.contains(end->port.device);
        };
        if (!known(row.a) || !known(row.b)) continue;
        row.id = p.cables.emplace(row.id, p.fresh<Cable>()).first->second;
        row.tag = fresh_tag(p.editing.now.cables, row.tag);
        for (auto* end : {&row.a, &row.b})
            if (*end) (*end)->port.device = p.devices.at((*end)->port.device);
        row.progress = {};
        row.agreed.reset();
        if (auto trouble = embed_used<CableTypeRow>(p, clipping, row.type)) return trouble;
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(row))) return trouble;
    }
    return std::nullopt;
}

Trouble paste_streams(Pasting& p, const Design& clipping) {
    std::map<StreamId, StreamId> pasted;
    for (auto row : clipping.streams) {
        if (!p.devices.contains(row.encoder)) continue;
        row.id = pasted.emplace(row.id, p.fresh<Stream>()).first->second;
        row.twin.reset();
        row.tag = fresh_tag(p.editing.now.streams, row.tag);
        row.encoder = p.devices.at(row.encoder);
        row.group.reset();
        keep_if_known(row.vlan, p.editing.now.vlans);
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(row))) return trouble;
    }
    // Twins once both are there.
    for (const auto& row : clipping.streams) {
        if (!row.twin || !pasted.contains(row.id) || !pasted.contains(*row.twin)) continue;
        Stream copy = *p.editing.now.streams.find(pasted.at(row.id));
        copy.twin = pasted.at(*row.twin);
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(copy))) return trouble;
    }
    return std::nullopt;
}

Trouble paste_walls(Pasting& p, const Design& clipping) {
    struct Named {
        std::string tag;
    };
    for (auto row : clipping.walls) {
        const auto copied = [&](const auto& tile) { return !tile || p.devices.contains(*tile); };
        if (!std::ranges::all_of(row.tiles, copied)) continue;
        std::vector<Named> named;
        for (const auto& wall : p.editing.now.walls) named.push_back({wall.name});
        row.id = p.fresh<Wall>();
        row.name = fresh_tag(named, row.name);
        keep_if_known(row.room, p.editing.now.rooms);
        for (auto& tile : row.tiles)
            if (tile) tile = p.devices.at(*tile);
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(row))) return trouble;
    }
    return std::nullopt;
}

/// A clipping of several sheets is drawn on one: of each device and cable the first drawing counts.
Trouble paste_drawing(Pasting& p, const Design& clipping, const Paste& edit) {
    const auto shifted = [&](SheetPoint at) { return SheetPoint{at.x + edit.shift.x, at.y + edit.shift.y}; };
    for (auto row : clipping.places) {
        if (!p.devices.contains(row.on.device)) continue;
        row.on = {edit.sheet, p.devices.at(row.on.device)};
        row.at = shifted(row.at);
        if (p.editing.now.places.contains(row.on)) continue;
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(row))) return trouble;
    }
    for (auto row : clipping.cable_lines) {
        if (!p.cables.contains(row.on.cable)) continue;
        row.on = {edit.sheet, p.cables.at(row.on.cable)};
        for (auto& bend : row.bends) bend = shifted(bend);
        if (p.editing.now.cable_lines.contains(row.on)) continue;
        if (auto trouble = edit_detail::put_checked(p.editing, std::move(row))) return trouble;
    }
    return std::nullopt;
}

}  // namespace

base::Result<Delta> make(const Design& design, const Paste& edit) {
    if (!edit.clipping || edit.clipping->devices.empty())
        return base::Error{"There is nothing to paste; copy devices on a sheet first.", {}};
    if (!design.sheets.contains(edit.sheet)) return edit_detail::no_such("sheet", edit.sheet);
    Pasting p{Editing(design), base::IdSource(edit.seed), {}, {}, {}};
    if (auto trouble = paste_devices(p, *edit.clipping)) return *trouble;
    if (auto trouble = paste_ports(p, *edit.clipping)) return *trouble;
    if (auto trouble = paste_cables(p, *edit.clipping)) return *trouble;
    if (auto trouble = paste_streams(p, *edit.clipping)) return *trouble;
    if (auto trouble = paste_walls(p, *edit.clipping)) return *trouble;
    if (auto trouble = paste_drawing(p, *edit.clipping, edit)) return *trouble;
    return p.editing.done();
}

}  // namespace streamwright::model
