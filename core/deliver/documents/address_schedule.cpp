// Address schedule: one row a network interface, so that addresses can be given before the work on site.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

namespace streamwright::deliver {

namespace address_schedule_detail {

std::vector<Column> columns() {
    return {{"Device", ColumnKind::text, 24, true},  {"Interface", ColumnKind::text, 18},
            {"Type", ColumnKind::text, 50},          {"Role", ColumnKind::text, 24},
            {"Room", ColumnKind::text, 14},          {"Switch", ColumnKind::text, 20},
            {"Switch port", ColumnKind::text, 16},   {"Host name", ColumnKind::text, 32},
            {"MAC address", ColumnKind::text, 34},   {"VLAN", ColumnKind::text, 12},
            {"Address", ColumnKind::text, 28},       {"Subnet", ColumnKind::text, 30},
            {"Gateway", ColumnKind::text, 28},       {"Fixed or lease", ColumnKind::text, 18},
            {"Serial number", ColumnKind::text, 30}, {"Rev.", ColumnKind::text, 10}};
}

const model::HostAddress* address_at(const model::Device& device, const model::PortKey& port, bool first) {
    for (const auto& address : device.addresses)
        if (address.port == port) return &address;
    if (first)
        for (const auto& address : device.addresses)
            if (!address.port) return &address;
    return nullptr;
}

const model::Vlan* vlan_of(const Source& source, graph::PortAt at, const model::HostAddress* address) {
    auto id = address ? address->vlan : std::nullopt;
    const auto& wiring = wiring_of(source);
    const auto far = id ? std::nullopt : far_end_of(source, at);
    if (far && far->device)
        if (const auto* set = wiring.port_override(*far->device)) id = set->untagged;
    if (!id) id = source.design.settings().usual_vlan;
    return id ? source.design.vlans.find(*id) : nullptr;
}

TableRow row_of(const Source& source, graph::PortAt at, bool first) {
    const auto& wiring = wiring_of(source);
    const auto& wired = wiring.devices[static_cast<std::size_t>(at.device)];
    const auto* address = address_at(*wired.row, wiring.port_type(at).key, first);
    const auto* vlan = vlan_of(source, at, address);
    const auto far = far_end_of(source, at);
    const bool has_far = far && far->device;
    const bool fixed = address && address->address;
    TableRow row;
    row.subject = "device:" + wired.row->id.text();
    row.cells = {text_cell(wired.row->tag),
                 text_cell(port_label(wiring, at)),
                 text_cell(wired.type->name),
                 text_cell(role_words(wiring, at.device)),
                 text_cell(room_words(source.design, *wired.row)),
                 has_far ? text_cell(device_tag(wiring, far->device->device)) : Cell(),
                 has_far ? text_cell(port_label(wiring, *far->device)) : Cell(),
                 text_cell(wired.row->host_name),
                 address && address->mac ? text_cell(print(*address->mac)) : Cell(),
                 vlan ? text_cell(std::to_string(vlan->vid)) : Cell(),
                 fixed ? text_cell(print(*address->address)) : Cell(),
                 vlan && vlan->subnet ? text_cell(print(*vlan->subnet)) : Cell(),
                 vlan && vlan->gateway ? text_cell(print(*vlan->gateway)) : Cell(),
                 text_cell(fixed ? "fixed" : "lease"),
                 text_cell(wired.row->serial),
                 text_cell(revision_letter(source.design))};
    return row;
}

bool is_interface(const catalogue::DeviceType& type, const catalogue::PortType& port, bool cabled) {
    using catalogue::DeviceKind;
    if (!is_network(port.signal) || type.kind == DeviceKind::patch_panel) return false;
    return type.kind != DeviceKind::network_switch && (cabled || !port.auxiliary);
}

/// A switch has one interface, for its management.
TableRow switch_row(const Source& source, int device) {
    const auto& wired = wiring_of(source).devices[static_cast<std::size_t>(device)];
    const auto* address = wired.row->addresses.empty() ? nullptr : &wired.row->addresses.front();
    const auto* vlan = address && address->vlan ? source.design.vlans.find(*address->vlan) : nullptr;
    const bool fixed = address && address->address;
    TableRow row;
    row.subject = "device:" + wired.row->id.text();
    row.cells = {text_cell(wired.row->tag),
                 text_cell("management"),
                 text_cell(wired.type->name),
                 text_cell("switch"),
                 text_cell(room_words(source.design, *wired.row)),
                 Cell(),
                 Cell(),
                 text_cell(wired.row->host_name),
                 address && address->mac ? text_cell(print(*address->mac)) : Cell(),
                 vlan ? text_cell(std::to_string(vlan->vid)) : Cell(),
                 fixed ? text_cell(print(*address->address)) : Cell(),
                 vlan && vlan->subnet ? text_cell(print(*vlan->subnet)) : Cell(),
                 vlan && vlan->gateway ? text_cell(print(*vlan->gateway)) : Cell(),
                 text_cell(fixed ? "fixed" : "lease"),
                 text_cell(wired.row->serial),
                 text_cell(revision_letter(source.design))};
    return row;
}

void add_rows(const Source& source, int device, std::vector<TableRow>& rows) {
    const auto& wiring = wiring_of(source);
    const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
    if (!type) return;
    if (type->kind == catalogue::DeviceKind::network_switch) return rows.push_back(switch_row(source, device));
    bool first = true;
    for (std::size_t port = 0; port < type->ports.size(); ++port) {
        const graph::PortAt at{device, static_cast<int>(port)};
        if (!is_interface(*type, type->ports[port], !wiring.cables_at(at).empty())) continue;
        rows.push_back(row_of(source, at, first));
        first = false;
    }
}

}  // namespace address_schedule_detail

Content make_address_schedule(const Source& source) {
    using namespace address_schedule_detail;
    TablePart table;
    table.name = "Addresses";
    table.title = "Address schedule";
    table.columns = columns();
    for (std::size_t i = 0; i < wiring_of(source).devices.size(); ++i)
        add_rows(source, static_cast<int>(i), table.rows);
    std::ranges::stable_sort(table.rows, [](const TableRow& a, const TableRow& b) {
        const auto *x = std::get_if<std::string>(&a.cells[0]), *y = std::get_if<std::string>(&b.cells[0]);
        return counts_before(x ? *x : "", y ? *y : "");
    });
    table.notes = {"Give the MAC addresses before addresses are issued; where passwords are kept is agreed apart."};
    return {"address-schedule", "Address schedule", {std::move(table)}};
}

}  // namespace streamwright::deliver
