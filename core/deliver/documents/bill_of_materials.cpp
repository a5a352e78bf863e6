// Bill of materials: every part the drawing needs, counted once, with where it goes and the tags that link it to the
// drawings. Prices and deliveries are left open for the pen.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/part_words.h"
#include "core/deliver/documents/words.h"

#include <array>
#include <set>

namespace streamwright::deliver {

namespace bill_detail {

using analysis::Part;
using analysis::PartKind;
using catalogue::DeviceKind;

constexpr std::array<std::string_view, 11> groups{
    "Endpoints",          "Network",         "Sources", "Displays and sound",       "Racks and chassis",
    "Other devices",      "Installed cable", "Leads",   "Mains leads and supplies", "Licences",
    "Fittings and labels"};
constexpr std::size_t installed_cable = 6;

std::size_t group_of_device(const catalogue::DeviceType* type) {
    if (!type) return 5;
    switch (type->kind) {
        case DeviceKind::encoder:
        case DeviceKind::decoder:
        case DeviceKind::endpoint:
        case DeviceKind::card:
        case DeviceKind::extender_sender:
        case DeviceKind::extender_receiver:
            return 0;
        case DeviceKind::network_switch:
        case DeviceKind::transceiver:
        case DeviceKind::patch_panel:
            return 1;
        case DeviceKind::source:
        case DeviceKind::camera:
            return 2;
        case DeviceKind::display:
        case DeviceKind::projector:
        case DeviceKind::wall_tile:
        case DeviceKind::speaker:
        case DeviceKind::amplifier:
            return 3;
        case DeviceKind::rack:
        case DeviceKind::chassis:
            return 4;
        default:
            return 5;
    }
}

bool is_lead(const catalogue::CableType* type) { return type && type->use == catalogue::CableUse::lead; }

std::size_t group_of(const model::Design& design, const Part& part) {
    switch (part.kind) {
        case PartKind::patch_lead:
            return 7;
        case PartKind::mains_lead:
        case PartKind::plug_in_supply:
            return 8;
        case PartKind::licence:
            return 9;
        case PartKind::fixing_set:
        case PartKind::rack_shelf:
        case PartKind::blank_panel:
        case PartKind::earthing_kit:
        case PartKind::cable_label:
            return 10;
        case PartKind::cable: {
            const auto* row = design.cable_types.find(model::CableTypeKey{part.key});
            return row && is_lead(row->type.get()) ? 7 : installed_cable;
        }
        default: {
            const auto* row = design.device_types.find(model::TypeKey{part.key});
            return group_of_device(row ? row->type.get() : nullptr);
        }
    }
}

std::string tags_of(const model::Design& design, const Part& part) {
    std::vector<std::string> tags;
    // A lead is found by the cable whose end it serves.
    const auto devices = part.cables.empty() ? part.devices : std::vector<model::DeviceId>{};
    for (const auto id : devices)
        if (const auto* device = design.devices.find(id)) tags.push_back(device->tag);
    for (const auto id : part.cables)
        if (const auto* cable = design.cables.find(id)) tags.push_back(cable->tag);
    for (const auto id : part.racks)
        if (const auto* rack = design.racks.find(id)) tags.push_back(rack->name);
    std::erase(tags, std::string{});
    std::ranges::sort(tags, counts_before);
    tags.erase(std::unique(tags.begin(), tags.end()), tags.end());
    return listed_in_runs(tags);
}

std::string rooms_of(const model::Design& design, const Part& part) {
    std::set<std::string, decltype(&counts_before)> rooms(&counts_before);
    for (const auto id : part.devices)
        if (const auto* device = design.devices.find(id))
            if (auto room = room_words(design, *device); !room.empty()) rooms.insert(room);
    for (const auto id : part.racks) {
        const auto* rack = design.racks.find(id);
        const auto* room = rack && rack->room ? design.rooms.find(*rack->room) : nullptr;
        if (room) rooms.insert(room->number.empty() ? room->name : room->number);
    }
    return listed({rooms.begin(), rooms.end()});
}

/// Supplies and licences have no type of their own, only one that needs them.
std::string type_words(const Part& part) {
    return part.kind == PartKind::device || part.kind == PartKind::cable ? part.key : std::string{};
}

Cell count_cell(int pieces) { return pieces > 0 ? Cell(std::int64_t{pieces}) : Cell(); }

std::vector<Column> columns() {
    return {{"Line", ColumnKind::number, 10},
            {"Description", ColumnKind::text, 58, true},
            {"Maker", ColumnKind::text, 22},
            {"Type", ColumnKind::text, 32},
            {"Quantity", ColumnKind::number, 16, true},
            {"Spare", ColumnKind::number, 12},
            {"To order", ColumnKind::number, 16, true},
            {"Length, m", ColumnKind::length_m, 16, true},
            {"How counted", ColumnKind::text, 60},
            {"Tags", ColumnKind::text, 62},
            {"Rooms", ColumnKind::text, 28},
            {"Unit price", ColumnKind::tick, 18},
            {"Ordered", ColumnKind::tick, 16},
            {"Delivered", ColumnKind::tick, 16}};
}

TableRow row_of(const model::Design& design, const Part& part, int line, std::size_t group) {
    TableRow row;
    row.group = groups[group];
    row.cells = {std::int64_t{line},
                 text_cell(part_name(part)),
                 text_cell(part.maker),
                 text_cell(type_words(part)),
                 std::int64_t{part.quantity},
                 count_cell(part.spare),
                 group == installed_cable ? Cell() : std::int64_t{part.quantity + part.spare},
                 group == installed_cable ? quantity_cell(part.length) : Cell(),
                 text_cell(part_counting(design, part)),
                 text_cell(tags_of(design, part)),
                 text_cell(rooms_of(design, part)),
                 Cell(),
                 Cell(),
                 Cell()};
    return row;
}

std::vector<std::string> notes() {
    return {
        "Quantity of installed cable: number of cables; its length is the sum of the known lengths, without waste.",
        "A direct-attach cable is one line: it stands in place of two transceivers and a lead.",
        "A panel's way that is patched nowhere needs no lead.",
        "Caution: plugs, cross-sections and fuses of mains leads, and earthing, follow the local electrical code; an "
        "electrician decides.",
        "Caution: displays, projectors and racks are heavy. Lift with enough people or a lift, fix to structure that "
        "bears the weight, and follow the local rules for lifting and for work at height."};
}

}  // namespace bill_detail

Content make_bill_of_materials(const Source& source) {
    using namespace bill_detail;
    TablePart table;
    table.name = "Bill of materials";
    table.title = "Bill of materials";
    table.columns = columns();
    table.notes = notes();
    const auto& facts = source.analysis.facts;
    const auto parts = analysis::find_parts(facts.get<graph::Wiring>(), facts.get<analysis::PowerBudget>()).list;
    int line = 0;
    for (std::size_t group = 0; group < groups.size(); ++group)
        for (const analysis::Part& part : parts)
            if (group_of(source.design, part) == group)
                table.rows.push_back(row_of(source.design, part, ++line, group));
    return {"bill-of-materials", "Bill of materials", {std::move(table)}};
}

}  // namespace streamwright::deliver
