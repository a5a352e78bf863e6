// What the rows of a design name must be there; and what a text may hold.
#include "core/model/row_checks.h"

#include <algorithm>

namespace streamwright::model {

namespace {

template <class Id, class Rows>
Trouble missing(const Rows& rows, const Id& id, const std::string& subject, const char* what) {
    if (rows.contains(id)) return std::nullopt;
    return base::Error{"%1 names %2 %3, which the design does not have.", {subject, what, key_text(id)}};
}

template <class Id, class Rows>
Trouble missing(const Rows& rows, const std::optional<Id>& id, const std::string& subject, const char* what) {
    return id ? missing(rows, *id, subject, what) : std::nullopt;
}

Trouble missing_vlans(const Design& design, const std::vector<VlanId>& vlans, const std::string& subject) {
    for (const auto vlan : vlans)
        if (auto trouble = missing(design.vlans, vlan, subject, "the VLAN")) return trouble;
    return std::nullopt;
}

std::string called(const char* kind, const std::string& name, const std::string& id) {
    return std::string(kind) + ' ' + (name.empty() ? id : name);
}

Trouble missing_of_bridging(const Design& design, const BridgeSettings& bridging, const std::string& subject) {
    for (const auto& querier : bridging.queriers)
        if (auto trouble = missing(design.vlans, querier.vlan, subject, "the VLAN")) return trouble;
    if (auto trouble = missing_vlans(design, bridging.snooping_off_vlans, subject)) return trouble;
    return missing_vlans(design, bridging.multicast_router_vlans, subject);
}

/// The length in characters of a UTF-8 sequence by its first octet; 0 if none begins so (RFC 3629).
std::size_t sequence_length(unsigned char first) {
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first < 0xE0) return 2;
    if (first >= 0xE0 && first < 0xF0) return 3;
    return first >= 0xF0 && first < 0xF5 ? 4 : 0;
}

bool is_whole_sequence(std::string_view sequence) {
    const auto octet = [&](std::size_t i) { return static_cast<unsigned char>(sequence[i]); };
    for (std::size_t i = 1; i < sequence.size(); ++i)
        if ((octet(i) & 0xC0U) != 0x80U) return false;
    if (sequence.size() == 3 && octet(0) == 0xE0 && octet(1) < 0xA0) return false;   // overlong
    if (sequence.size() == 3 && octet(0) == 0xED && octet(1) >= 0xA0) return false;  // surrogates
    if (sequence.size() == 4 && octet(0) == 0xF0 && octet(1) < 0x90) return false;   // overlong
    return !(sequence.size() == 4 && octet(0) == 0xF4 && octet(1) >= 0x90);          // past U+10FFFF
}

}  // namespace

Trouble wrong_text(const std::string& field, std::string_view text, bool lines, std::size_t most) {
    std::size_t characters = 0;
    for (std::size_t at = 0; at < text.size(); ++characters) {
        const auto first = static_cast<unsigned char>(text[at]);
        const auto length = sequence_length(first);
        if (length == 0 || at + length > text.size() || !is_whole_sequence(text.substr(at, length)))
            return base::Error{"The text of %1 is not readable (it is not UTF-8).", {field}};
        const bool line_mark = first == '\n' || first == '\t';
        const bool control =
            first < 0x20 || first == 0x7F || (first == 0xC2 && static_cast<unsigned char>(text[at + 1]) < 0xA0);
        if (control && !(lines && line_mark))
            return base::Error{"The text of %1 holds a control character; take it out.", {field}};
        at += length;
    }
    if (characters > most)
        return base::Error{"The text of %1 has %2 characters; at most %3 are allowed.",
                           {field, std::to_string(characters), std::to_string(most)}};
    return std::nullopt;
}

Trouble broken_bond(const Design& design, const Settings& row) {
    for (const auto preset : row.survive_presets)
        if (auto trouble = missing(design.presets, preset, "The settings", "the preset")) return trouble;
    return missing(design.vlans, row.usual_vlan, "The settings", "the VLAN");
}

Trouble broken_bond(const Design&, const Room&) { return std::nullopt; }

Trouble broken_bond(const Design& design, const Rack& row) {
    const auto subject = called("Rack", row.name, row.id.text());
    if (!row.type.text.empty())
        if (auto trouble = missing(design.device_types, row.type, subject, "the device type")) return trouble;
    return missing(design.rooms, row.room, subject, "the room");
}

Trouble broken_bond(const Design&, const Vlan&) { return std::nullopt; }

Trouble broken_bond(const Design& design, const Device& row) {
    const auto subject = called("Device", row.tag, row.id.text());
    if (auto trouble = missing(design.device_types, row.type, subject, "the device type")) return trouble;
    if (auto trouble = missing(design.rooms, row.room, subject, "the room")) return trouble;
    if (row.rack)
        if (auto trouble = missing(design.racks, row.rack->rack, subject, "the rack")) return trouble;
    if (row.chassis)
        if (auto trouble = missing(design.devices, row.chassis->chassis, subject, "the chassis")) return trouble;
    for (const auto& host : row.addresses)
        if (auto trouble = missing(design.vlans, host.vlan, subject, "the VLAN")) return trouble;
    return missing_of_bridging(design, row.bridging, subject);
}

Trouble broken_bond(const Design& design, const PortOverride& row) {
    const auto subject = "Port " + row.port.port.text;
    if (auto trouble = missing(design.devices, row.port.device, subject, "the device")) return trouble;
    if (auto trouble = missing(design.device_types, row.module, subject, "the transceiver type")) return trouble;
    if (auto trouble = missing(design.vlans, row.untagged, subject, "the VLAN")) return trouble;
    if (row.edid && row.edid->from)
        if (auto trouble = missing(design.devices, row.edid->from->device, subject, "the device")) return trouble;
    return missing_vlans(design, row.tagged, subject);
}

Trouble broken_bond(const Design& design, const Cable& row) {
    const auto subject = called("Cable", row.tag, row.id.text());
    if (auto trouble = missing(design.cable_types, row.type, subject, "the cable type")) return trouble;
    for (const auto& end : {row.a, row.b})
        if (end)
            if (auto trouble = missing(design.devices, end->port.device, subject, "the device")) return trouble;
    return std::nullopt;
}

Trouble broken_bond(const Design& design, const Stream& row) {
    const auto subject = called("Stream", row.tag, row.id.text());
    if (auto trouble = missing(design.devices, row.encoder, subject, "the device")) return trouble;
    if (row.twin == row.id) return base::Error{"%1 cannot be its own twin.", {subject}};
    if (auto trouble = missing(design.streams, row.twin, subject, "the stream")) return trouble;
    return missing(design.vlans, row.vlan, subject, "the VLAN");
}

Trouble broken_bond(const Design&, const Preset&) { return std::nullopt; }

Trouble broken_bond(const Design& design, const Subscription& row) {
    const auto subject = called("Subscription", {}, row.id.text());
    if (auto trouble = missing(design.presets, row.preset, subject, "the preset")) return trouble;
    if (auto trouble = missing(design.streams, row.stream, subject, "the stream")) return trouble;
    return missing(design.devices, row.decoder, subject, "the device");
}

Trouble broken_bond(const Design& design, const Wall& row) {
    const auto subject = called("Wall", row.name, row.id.text());
    if (auto trouble = missing(design.rooms, row.room, subject, "the room")) return trouble;
    for (const auto& tile : row.tiles)
        if (auto trouble = missing(design.devices, tile, subject, "the device")) return trouble;
    return std::nullopt;
}

Trouble shared_tile(const Design& design, const Wall& row) {
    for (const auto& other : design.walls) {
        if (other.id == row.id) continue;
        for (const auto& tile : other.tiles) {
            if (!tile || std::ranges::find(row.tiles, tile) == row.tiles.end()) continue;
            const auto* device = design.devices.find(*tile);
            return base::Error{"%1 is a tile of %2 already; take it out there first.",
                               {device ? device->tag : tile->text(), called("wall", other.name, other.id.text())}};
        }
    }
    return std::nullopt;
}

Trouble broken_bond(const Design&, const Sheet&) { return std::nullopt; }

Trouble broken_bond(const Design& design, const Place& row) {
    if (auto trouble = missing(design.sheets, row.on.sheet, "A plate", "the sheet")) return trouble;
    return missing(design.devices, row.on.device, "A plate", "the device");
}

Trouble broken_bond(const Design& design, const CableLine& row) {
    if (auto trouble = missing(design.sheets, row.on.sheet, "A drawn cable", "the sheet")) return trouble;
    return missing(design.cables, row.on.cable, "A drawn cable", "the cable");
}

Trouble broken_bond(const Design& design, const RoomFrame& row) {
    const auto subject = called("Room frame", row.title, row.id.text());
    if (auto trouble = missing(design.sheets, row.sheet, subject, "the sheet")) return trouble;
    return missing(design.rooms, row.room, subject, "the room");
}

Trouble broken_bond(const Design& design, const Note& row) {
    return missing(design.sheets, row.sheet, called("Note", {}, row.id.text()), "the sheet");
}

Trouble broken_bond(const Design&, const Waiver&) { return std::nullopt; }
Trouble broken_bond(const Design&, const Revision&) { return std::nullopt; }
Trouble broken_bond(const Design&, const DeviceTypeRow&) { return std::nullopt; }
Trouble broken_bond(const Design&, const CableTypeRow&) { return std::nullopt; }

std::string key_text(const PortRef& key) { return key.device.text() + ' ' + key.port.text; }
std::string key_text(const Place::Key& key) { return key.sheet.text() + ' ' + key.device.text(); }
std::string key_text(const CableLine::Key& key) { return key.sheet.text() + ' ' + key.cable.text(); }
std::string key_text(const Settings::Key&) { return {}; }

}  // namespace streamwright::model
