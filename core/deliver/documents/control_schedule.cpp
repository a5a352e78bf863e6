// Control schedule: each device that is switched on and set from outside, by what, over which lead, and what must be
// set on it first.
#include "core/analysis/control_help.h"
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

#include <algorithm>

namespace streamwright::deliver {

namespace control_schedule_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// A lead between a port that controls and one that is controlled.
struct ControlLead {
    int device;
    graph::PortAt controlled;
    std::optional<graph::PortAt> controls;
    std::vector<int> cables;
};

bool is_control(const catalogue::PortType& port) { return port.signal == catalogue::Signal::control; }

/// The leads of the device's control ports, with what stands at the other end.
std::vector<ControlLead> leads_of(const Source& source, int device) {
    const auto& wiring = wiring_of(source);
    std::vector<ControlLead> leads;
    const auto& ports = wiring.devices[at(device)].type->ports;
    for (int p = 0; p < static_cast<int>(ports.size()); ++p) {
        if (!is_control(ports[at(p)])) continue;
        const auto far = far_end_of(source, {device, p});
        if (far) leads.push_back({device, {device, p}, far->device, far->cables});
    }
    return leads;
}

/// "RS-232, screw terminal to DE-9".
std::string wiring_words(const graph::Wiring& wiring, const ControlLead& lead) {
    const auto& own = wiring.port_type(lead.controlled);
    std::string words = own.standards.empty() ? std::string() : own.standards.front();
    if (!lead.controls) return words;
    const auto& other = wiring.port_type(*lead.controls);
    return words + (words.empty() ? "" : ", ") + catalogue::connector_name(other.connector) + " to " +
           catalogue::connector_name(own.connector);
}

TableRow row_of(const Source& source, int device, const ControlLead* lead) {
    const auto& wiring = wiring_of(source);
    const auto& wired = wiring.devices[at(device)];
    std::string port, cables, by;
    if (lead) {
        port = port_label(wiring, lead->controlled);
        for (const int cable : lead->cables)
            cables += (cables.empty() ? "" : " + ") + wiring.cables[at(cable)].row->tag;
        if (lead->controls) by = device_tag(wiring, lead->controls->device) + " " + port_label(wiring, *lead->controls);
    }
    TableRow row;
    row.subject = "device:" + wired.row->id.text();
    row.cells = {text_cell(wired.row->tag),
                 text_cell(room_words(source.design, *wired.row)),
                 text_cell(analysis::control_words(analysis::asked_control(wired))),
                 text_cell(port),
                 text_cell(by),
                 text_cell(cables),
                 text_cell(lead ? wiring_words(wiring, *lead) : std::string()),
                 text_cell(wired.type->control_note),
                 Cell()};
    return row;
}

std::vector<Column> columns() {
    return {{"Device", ColumnKind::text, 34, true},    {"Room", ColumnKind::text, 34},
            {"Controlled over", ColumnKind::text, 34}, {"Its port", ColumnKind::text, 34},
            {"Controlled by", ColumnKind::text, 52},   {"Cables", ColumnKind::text, 34},
            {"Wiring", ColumnKind::text, 62},          {"Set first", ColumnKind::text, 74},
            {"Works on site", ColumnKind::tick, 24}};
}

}  // namespace control_schedule_detail

Content make_control_schedule(const Source& source) {
    using namespace control_schedule_detail;
    TablePart table;
    table.name = "Control";
    table.title = "What controls which device";
    table.columns = columns();
    const auto& wiring = wiring_of(source);
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto& device = wiring.devices[at(i)];
        if (!device.type || analysis::gives_control(device)) continue;
        const auto leads = leads_of(source, i);
        for (const auto& lead : leads) table.rows.push_back(row_of(source, i, &lead));
        if (leads.empty() && !analysis::asked_control(device).empty()) table.rows.push_back(row_of(source, i, nullptr));
    }
    std::ranges::stable_sort(table.rows, [](const TableRow& a, const TableRow& b) {
        return counts_before(std::get<std::string>(a.cells.front()), std::get<std::string>(b.cells.front()));
    });
    table.notes = {
        "A device without a port here takes its commands by IR at its front or over the network.",
        "Serial leads: transmit of one end goes to receive of the other; whether a lead must cross depends on both "
        "ends, so measure before terminating. Rates and codes stand in the program of the control processor.",
        "Try each device before ceilings are closed."};
    return {"control-schedule", "Control schedule", {std::move(table)}};
}

}  // namespace streamwright::deliver
