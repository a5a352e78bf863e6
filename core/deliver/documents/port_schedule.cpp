// Port schedule: a table for each switch, one row a port, spare ones too: what is plugged, how the port is set, what it
// carries at worst, what it feeds; columns for acceptance are left open for the pen.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

namespace streamwright::deliver {

namespace port_schedule_detail {

using graph::PortAt;

/// The two directions of a port, as arcs of the network, and the VLANs it bears.
struct NetworkPort {
    std::optional<int> arc_in, arc_out;  // into the switch, out of it
    const analysis::PortVlans* vlans = nullptr;
    int run = -1;
    bool trunk = false, blocked = false;
};

class NetworkPorts {
public:
    explicit NetworkPorts(const Source& source) : source_(source) {}

    NetworkPort at(PortAt port) const {
        const auto& network = source_.analysis.facts.get<graph::NetworkGraph>();
        for (std::size_t i = 0; i < network.leaves.size(); ++i)
            if (network.leaves[i].bridge_port == port) return leaf(static_cast<int>(i));
        for (std::size_t i = 0; i < network.links.size(); ++i) {
            const auto& link = network.links[i];
            for (std::size_t run = 0; run < link.runs.size(); ++run) {
                if (link.a_ports[run] == port) return link_end(static_cast<int>(i), run, true);
                if (link.b_ports[run] == port) return link_end(static_cast<int>(i), run, false);
            }
        }
        return {};
    }

private:
    NetworkPort leaf(int index) const {
        const auto& network = source_.analysis.facts.get<graph::NetworkGraph>();
        const auto& vlans = source_.analysis.facts.get<analysis::VlanPaths>().leaves;
        const auto i = static_cast<std::size_t>(index);
        return {network.leaf_arc(index, true),
                network.leaf_arc(index, false),
                i < vlans.size() ? &vlans[i] : nullptr,
                network.leaves[i].run,
                false,
                false};
    }
    NetworkPort link_end(int index, std::size_t run, bool at_a) const {
        const auto& network = source_.analysis.facts.get<graph::NetworkGraph>();
        const auto& vlans = source_.analysis.facts.get<analysis::VlanPaths>().links;
        const auto i = static_cast<std::size_t>(index);
        NetworkPort port{network.link_arc(index, !at_a),
                         network.link_arc(index, at_a),
                         nullptr,
                         network.links[i].runs[run],
                         true,
                         blocked(index, at_a)};
        if (i < vlans.size()) port.vlans = at_a ? &vlans[i].a : &vlans[i].b;
        return port;
    }
    bool blocked(int link, bool at_a) const {
        for (const auto& tree : source_.analysis.facts.get<analysis::SpanningTrees>().trees) {
            const auto& roles = at_a ? tree.a_role : tree.b_role;
            const auto i = static_cast<std::size_t>(link);
            if (i < roles.size() && roles[i] == analysis::TreeRole::alternate) return true;
        }
        return false;
    }
    const Source& source_;
};

std::vector<Column> columns() {
    return {{"Port", ColumnKind::text, 16, true},
            {"Medium", ColumnKind::text, 24},
            {"Far device", ColumnKind::text, 24, true},
            {"Far port", ColumnKind::text, 18},
            {"Role", ColumnKind::text, 18},
            {"Room", ColumnKind::text, 14},
            {"Cable", ColumnKind::text, 16},
            {"Patch", ColumnKind::text, 24},
            {"VLAN, untagged", ColumnKind::text, 14},
            {"VLANs, tagged", ColumnKind::text, 20},
            {"Address", ColumnKind::text, 26},
            {"Snooping", ColumnKind::text, 22},
            {"Edge port", ColumnKind::text, 11},
            {"BPDU guard", ColumnKind::text, 11},
            {"Loop guard", ColumnKind::text, 11},
            {"Streams to switch", ColumnKind::number, 13},
            {"Streams from switch", ColumnKind::number, 13},
            {"Mb/s to switch, worst", ColumnKind::rate_mbps, 16},
            {"Mb/s from switch, worst", ColumnKind::rate_mbps, 16},
            {"PoE class", ColumnKind::number, 11},
            {"Reserved, W", ColumnKind::power_w, 14},
            {"Drawn, W", ColumnKind::power_w, 14},
            {"Speed measured", ColumnKind::tick, 18},
            {"Errors", ColumnKind::tick, 14},
            {"Date, initials", ColumnKind::tick, 22},
            {"Rev.", ColumnKind::text, 10}};
}

std::string medium_of(const Source& source, PortAt at, const NetworkPort& network) {
    const auto& speeds = source.analysis.facts.get<analysis::LinkCapacity>().runs;
    if (network.run >= 0 && static_cast<std::size_t>(network.run) < speeds.size()) {
        const auto& speed = speeds[static_cast<std::size_t>(network.run)];
        if (!speed.phy.empty()) return speed.phy;
        if (speed.rate) return print(*speed.rate);
    }
    const auto& wiring = wiring_of(source);
    if (const auto* module = wiring.module_at(at); module && module->module) return module->module->phy;
    return std::string(connector_words(wiring.port_type(at).connector));
}

std::string vlan_number(const Source& source, analysis::VlanIndex index) {
    const auto& vlans = source.analysis.facts.get<analysis::VlanPaths>().vlans;
    const auto& id = vlans[static_cast<std::size_t>(index)];
    const auto* row = id ? source.design.vlans.find(*id) : nullptr;
    return row ? std::to_string(row->vid) : std::string{};
}

/// Spare ports have no place in the network's facts; what is set on them stands on their row.
std::pair<std::string, std::string> vlans_set(const Source& source, PortAt at) {
    const auto* row = wiring_of(source).port_override(at);
    const auto vid = [&](model::VlanId id) {
        const auto* vlan = source.design.vlans.find(id);
        return vlan ? std::to_string(vlan->vid) : std::string("?");
    };
    auto untagged = row ? row->untagged : std::nullopt;
    if (!untagged && !(row && row->no_untagged)) untagged = source.design.settings().usual_vlan;
    std::vector<std::string> tagged;
    if (row)
        for (const auto id : row->tagged) tagged.push_back(vid(id));
    std::ranges::sort(tagged, counts_before);
    return {untagged ? vid(*untagged) : std::string{}, listed(tagged)};
}

std::pair<std::string, std::string> vlans_of(const Source& source, PortAt at, const NetworkPort& network) {
    if (!network.vlans) return vlans_set(source, at);
    std::vector<std::string> tagged;
    for (const auto index : network.vlans->tagged) tagged.push_back(vlan_number(source, index));
    return {network.vlans->untagged ? vlan_number(source, *network.vlans->untagged) : std::string{}, listed(tagged)};
}

std::string address_of(const model::Device& device) {
    std::vector<std::string> texts;
    for (const auto& address : device.addresses) texts.push_back(address.address ? print(*address.address) : "lease");
    return listed(texts);
}

std::string snooping_of(const Source& source, PortAt at) {
    const auto* row = wiring_of(source).port_override(at);
    std::vector<std::string> words;
    if (row && row->router_port) words.push_back("router port");
    const auto& device = *wiring_of(source).devices[static_cast<std::size_t>(at.device)].row;
    if ((row && row->fast_leave) || device.bridging.fast_leave) words.push_back("fast leave");
    return listed(words);
}

const analysis::PoeFeed* feed_at(const Source& source, PortAt at) {
    for (const auto& feed : source.analysis.facts.get<analysis::PowerBudget>().feeds)
        if (feed.supply == at) return &feed;
    return nullptr;
}

struct Traffic {
    Cell streams, worst;
};

Traffic traffic_of(const Source& source, const std::optional<int>& arc) {
    if (!arc) return {};
    const auto& facts = source.analysis.facts;
    const auto& presets = facts.get<analysis::LinkLoads>().presets;
    const auto& worst = facts.get<analysis::WorstCase>().arcs;
    const auto i = static_cast<std::size_t>(*arc);
    Traffic traffic;
    if (!presets.empty() && i < presets.front().arcs.size())
        traffic.streams = static_cast<std::int64_t>(presets.front().arcs[i].streams.size());
    if (i < worst.size()) traffic.worst = worst[i].wire.ceil();
    return traffic;
}

struct FarWords {
    std::string device = "spare", port, role, room, cable, patch, address;
};

FarWords far_words(const Source& source, PortAt at, const NetworkPort& network) {
    const auto far = far_end_of(source, at);
    FarWords words;
    if (!far) return words;
    const auto& wiring = wiring_of(source);
    words.cable = wiring.cables[static_cast<std::size_t>(far->cables.front())].row->tag;
    if (far->panel) words.patch = device_tag(wiring, far->panel->device) + "/" + port_label(wiring, *far->panel);
    words.device = "open end";
    if (!far->device) return words;
    const auto& device = *wiring.devices[static_cast<std::size_t>(far->device->device)].row;
    words.device = device.tag;
    words.port = port_label(wiring, *far->device);
    words.role = network.blocked ? "trunk, blocked" : role_words(wiring, far->device->device);
    words.room = room_words(source.design, device);
    words.address = address_of(device);
    return words;
}

TableRow row_of(const Source& source, const NetworkPorts& ports, PortAt at, const std::string& revision) {
    const auto& wiring = wiring_of(source);
    const auto network = ports.at(at);
    const auto far = far_words(source, at, network);
    const auto [untagged, tagged] = vlans_of(source, at, network);
    const auto* set = wiring.port_override(at);
    const auto* feed = feed_at(source, at);
    const auto in = traffic_of(source, network.arc_in), out = traffic_of(source, network.arc_out);
    const auto ref = wiring.ref(at);
    TableRow row;
    row.subject = "port:" + ref.device.text() + "/" + ref.port.text;
    row.cells = {text_cell(port_label(wiring, at)),
                 text_cell(medium_of(source, at, network)),
                 text_cell(far.device),
                 text_cell(far.port),
                 text_cell(far.role),
                 text_cell(far.room),
                 text_cell(far.cable),
                 text_cell(far.patch),
                 text_cell(untagged),
                 text_cell(tagged),
                 text_cell(far.address),
                 text_cell(snooping_of(source, at)),
                 yes_cell(set && set->edge),
                 yes_cell(set && set->bpdu_guard),
                 yes_cell(set && set->loop_guard),
                 in.streams,
                 out.streams,
                 in.worst,
                 out.worst,
                 feed ? Cell(std::int64_t{feed->wanted_class}) : Cell(),
                 feed ? Cell(feed->reserved) : Cell(),
                 feed ? Cell(feed->drawn) : Cell(),
                 Cell(),
                 Cell(),
                 Cell(),
                 text_cell(revision)};
    return row;
}

/// "PoE switch, 24 + 2 ports, rack S-A U21, room 0.11, management 10.20.0.12"
std::string title_of(const Source& source, const graph::WiredDevice& device) {
    std::string title = device.row->tag;
    if (device.type) title += ": " + device.type->name;
    if (const auto rack = rack_words(source.design, *device.row); !rack.empty()) title += ", rack " + rack;
    if (const auto room = room_words(source.design, *device.row); !room.empty()) title += ", room " + room;
    if (const auto address = address_of(*device.row); !address.empty()) title += ", management " + address;
    return title;
}

std::vector<std::string> notes_of(const Source& source, int device, const TablePart& table) {
    const auto spare = std::ranges::count_if(table.rows, [](const TableRow& row) {
        const auto* far = std::get_if<std::string>(&row.cells[2]);
        return far && *far == "spare";
    });
    const auto used = static_cast<std::ptrdiff_t>(table.rows.size()) - spare;
    std::vector<std::string> notes{std::to_string(used) + " ports in use, " + std::to_string(spare) + " spare."};
    for (const auto& power : source.analysis.facts.get<analysis::PowerBudget>().switches)
        if (power.device == device)
            notes.push_back("PoE reserved " + print(power.reserved, source.book.numbers) + ", drawn " +
                            print(power.drawn, source.book.numbers) + ", budget " +
                            (power.budget ? print(*power.budget, source.book.numbers) : "not known") + ".");
    notes.push_back("Rates are wire rates; worst: of any allowed routing. Streams: of the first preset.");
    notes.push_back("Caution, fibre: invisible laser light. Never look into a cage or a connector; cap open ones.");
    return notes;
}

TablePart table_of(const Source& source, const NetworkPorts& ports, int device) {
    const auto& wired = wiring_of(source).devices[static_cast<std::size_t>(device)];
    const auto revision = revision_letter(source.design);
    TablePart table;
    table.name = wired.row->tag;
    table.title = title_of(source, wired);
    table.columns = columns();
    for (std::size_t port = 0; port < wired.type->ports.size(); ++port)
        if (is_network(wired.type->ports[port].signal))
            table.rows.push_back(row_of(source, ports, {device, static_cast<int>(port)}, revision));
    table.notes = notes_of(source, device, table);
    return table;
}

}  // namespace port_schedule_detail

Content make_port_schedule(const Source& source) {
    using namespace port_schedule_detail;
    const auto& wiring = wiring_of(source);
    std::vector<int> switches;
    for (std::size_t i = 0; i < wiring.devices.size(); ++i) {
        const auto* type = wiring.devices[i].type;
        if (type && type->kind == catalogue::DeviceKind::network_switch) switches.push_back(static_cast<int>(i));
    }
    std::ranges::stable_sort(switches,
                             [&](int a, int b) { return counts_before(device_tag(wiring, a), device_tag(wiring, b)); });
    Content content{"port-schedule", "Port schedule", {}};
    const NetworkPorts ports(source);
    for (const int device : switches) content.parts.emplace_back(table_of(source, ports, device));
    return content;
}

}  // namespace streamwright::deliver
