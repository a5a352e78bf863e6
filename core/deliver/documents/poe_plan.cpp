// Power over Ethernet: what each switch has and sets aside, and port by port who is fed, by which class, and what
// arrives at the end of the cable.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"
#include "core/standards/powered_bundles.h"

namespace streamwright::deliver {

namespace poe_plan_detail {

using catalogue::PoeAllocation;
using catalogue::SupplySet;

std::string supplies_words(SupplySet supplies) {
    if (supplies == SupplySet::two_added) return "two, added";
    if (supplies == SupplySet::two_redundant) return "two, one stands by";
    return "one";
}

std::string allocation_words(const std::optional<PoeAllocation>& by) {
    if (!by) return "not stated; by class here";
    if (*by == PoeAllocation::by_draw) return "by measured draw";
    return *by == PoeAllocation::by_class ? "by class" : "as asked by LLDP";
}

TablePart switch_table() {
    return {
        "Switches",
        "Switches that give power",
        {{"Switch", ColumnKind::text, 28, true},
         {"Room", ColumnKind::text, 16},
         {"Supplies", ColumnKind::text, 28},
         {"Reserves", ColumnKind::text, 34},
         {"Budget, W", ColumnKind::power_w, 18},
         {"Reserved, W", ColumnKind::power_w, 18},
         {"Drawn, W", ColumnKind::power_w, 18},
         {"Devices", ColumnKind::number, 16},
         {"of these start", ColumnKind::number, 18}},
        {},
        {"Reserved: watts at the switch, set aside by class, by draw or as devices ask; drawn: with the loss of the "
         "cables.",
         "Caution, mains: only persons whom the local rules allow open supplies or work on their feeds."}};
}

TablePart port_table() {
    return {"Ports",
            "Ports that give power, in the order of their priority",
            {{"Switch", ColumnKind::text, 28, true},
             {"Port", ColumnKind::text, 16, true},
             {"Priority", ColumnKind::text, 18},
             {"Limit, W", ColumnKind::power_w, 16},
             {"Device", ColumnKind::text, 28},
             {"Class asked", ColumnKind::number, 16},
             {"Class given", ColumnKind::number, 16},
             {"Reserved, W", ColumnKind::power_w, 18},
             {"Drawn at the device, W", ColumnKind::power_w, 22},
             {"Cable, m", ColumnKind::length_m, 16},
             {"Loop, ohm", ColumnKind::text, 16},
             {"Arriving at most, W", ColumnKind::power_w, 20},
             {"Starts", ColumnKind::text, 14},
             {"Seen on site", ColumnKind::tick, 22}},
            {},
            {"Loop: by gauge, length and warmth where every cable states its gauge, else as IEEE 802.3 assumes.",
             "Caution, heat: powered cables warm their bundle, its centre most; bundles of " +
                 std::to_string(standards::most_cables_in_powered_bundle) + " at most are advised (" +
                 standards::powered_bundle_source.text() +
                 "). Local electrical codes limit bundles and gauges and come before this table."}};
}

TableRow switch_row(const Source& source, const analysis::PowerBudget& power, const analysis::SwitchPower& supplier) {
    const auto& device = *wiring_of(source).devices[static_cast<std::size_t>(supplier.device)].row;
    std::int64_t starting = 0;
    for (const int feed : supplier.feeds) starting += power.feeds[static_cast<std::size_t>(feed)].starts ? 1 : 0;
    TableRow row;
    row.subject = "device:" + device.id.text();
    row.cells = {text_cell(device.tag),
                 text_cell(room_words(source.design, device)),
                 text_cell(supplies_words(supplier.supplies)),
                 text_cell(allocation_words(supplier.allocation)),
                 quantity_cell(supplier.budget),
                 Cell(supplier.reserved),
                 Cell(supplier.drawn),
                 Cell(static_cast<std::int64_t>(supplier.feeds.size())),
                 supplier.budget ? Cell(starting) : text_cell("not known")};
    return row;
}

TableRow port_row(const Source& source, const analysis::SwitchPower& supplier, const analysis::PoeFeed& feed) {
    const auto& wiring = wiring_of(source);
    TableRow row;
    row.subject = "device:" + wiring.devices[static_cast<std::size_t>(feed.supply.device)].row->id.text();
    row.cells = {text_cell(device_tag(wiring, feed.supply.device)),
                 text_cell(port_label(wiring, feed.supply)),
                 text_cell(std::string(base::enum_text(feed.priority))),
                 quantity_cell(feed.port_limit),
                 text_cell(device_tag(wiring, feed.device.device)),
                 Cell(std::int64_t{feed.wanted_class}),
                 Cell(std::int64_t{feed.granted_class}),
                 Cell(feed.reserved),
                 Cell(feed.drawn),
                 feed.cable.length_known ? Cell(feed.cable.length) : text_cell("not known"),
                 text_cell(base::print_decimal((feed.cable.microohm + 5'000) / 10'000, 2)),
                 Cell(feed.arriving),
                 text_cell(!supplier.budget ? "not known"
                           : feed.starts    ? "yes"
                                            : "no"),
                 Cell()};
    return row;
}

}  // namespace poe_plan_detail

Content make_poe_plan(const Source& source) {
    using namespace poe_plan_detail;
    const auto& power = source.analysis.facts.get<analysis::PowerBudget>();
    auto switches = switch_table(), ports = port_table();
    for (const auto& supplier : power.switches) {
        switches.rows.push_back(switch_row(source, power, supplier));
        for (const int feed : supplier.feeds)
            ports.rows.push_back(port_row(source, supplier, power.feeds[static_cast<std::size_t>(feed)]));
    }
    return {"poe-plan", "Power over Ethernet", {std::move(switches), std::move(ports)}};
}

}  // namespace streamwright::deliver
