// The network of Ferrow Quay: nine switches, their trunks, panels and racks, the queriers and the root of the tree.
#include "tests/support/ferrow_quay_parts.h"

namespace streamwright::test::ferrow_quay_parts {

namespace {

struct SwitchPlan {
    std::string tag, type;
    int number;  // last octet of its management and bridge address
    int priority;
};

const std::vector<SwitchPlan>& switch_plans() {
    static const std::vector<SwitchPlan> plans{
        {"SW-CORE", "switch-core-32", 2, 4096},       {"SW-N1", "switch-access-24-poe", 3, 32768},
        {"SW-N2", "switch-aggregation-24", 4, 32768}, {"SW-N3", "switch-access-24-poe", 5, 32768},
        {"SW-CR", "switch-access-24-poe", 6, 32768},  {"SW-S1", "switch-aggregation-24", 7, 8192},
        {"SW-S2", "switch-access-24-poe", 8, 32768},  {"SW-S3", "switch-access-24-poe", 9, 32768},
        {"SW-MQ", "switch-access-24-poe", 10, 32768},
    };
    return plans;
}

model::RoomId room_of(const Quay& quay, const std::string& tag) {
    if (tag == "SW-CR") return quay.control;
    if (tag == "SW-MQ") return quay.marquee;
    return tag[3] == 'S' ? quay.south : quay.north;
}

void place_switches(Quay& quay) {
    for (const auto& plan : switch_plans()) {
        const auto id = quay.make.device(plan.type, plan.tag, room_of(quay, plan.tag));
        const auto number = std::to_string(plan.number);
        quay.make.address(id, quay.control_vlan, "10.20.2." + number);
        quay.make.configure(id, [&](model::Device& row) {
            row.bridging.priority = plan.priority;
            row.bridging.fast_leave = true;  // presets change pictures of which a port holds one
            row.bridging.address = base::MacAddress{0x02F000000000ULL + static_cast<std::uint64_t>(plan.number)};
        });
    }
    // Every stream goes to the querier of its VLAN: it stands where most of them are sent, so that trunks carry less.
    quay.make.configure(quay.make.tagged("SW-N2"), [&](model::Device& row) {
        row.bridging.queriers = {{quay.av, base::parse_ipv4("10.20.0.1")}};
    });
    quay.make.configure(quay.make.tagged("SW-CORE"), [&](model::Device& row) {
        // Of two that ask the lower address does it; this one takes over when the other is gone.
        row.bridging.queriers = {{quay.av, base::parse_ipv4("10.20.0.2")},
                                 {quay.control_vlan, base::parse_ipv4("10.20.2.250")},
                                 {quay.corporate, base::parse_ipv4("10.20.8.250")}};
    });
}

void place_panels(Quay& quay) {
    quay.make.device("panel-fibre-12", "PF-N", quay.north);
    quay.make.device("panel-fibre-12", "PF-S", quay.south);
    quay.make.device("panel-copper-24", "PC-N3", quay.north, "Foyer");
    quay.make.device("panel-copper-24", "PC-S2", quay.south, "Seminar 1 to 3");
    quay.make.device("panel-copper-24", "PC-S3", quay.south, "Seminar 4 to 6");
}

void mount_all(Quay& quay) {
    const std::vector<std::tuple<std::string, model::RackId, int>> places{
        {"PF-N", quay.north_a, 42},      {"SW-CORE", quay.north_a, 40}, {"SW-N2", quay.north_a, 38},
        {"PC-N3", quay.north_b, 42},     {"SW-N3", quay.north_b, 41},   {"SW-N1", quay.north_b, 39},
        {"PF-S", quay.south_a, 42},      {"SW-S1", quay.south_a, 40},   {"PC-S2", quay.south_a, 38},
        {"SW-S2", quay.south_a, 37},     {"PC-S3", quay.south_a, 35},   {"SW-S3", quay.south_a, 34},
        {"SW-CR", quay.control_rack, 22}};
    for (const auto& [tag, rack, unit] : places) quay.make.mount(quay.make.tagged(tag), rack, unit);
}

/// All VLANs tagged and none untagged: the same at both ends of every trunk.
void trunk_port(Quay& quay, const std::string& tag, const std::string& port, const std::string& module = "",
                const std::string& aggregate = "") {
    const auto id = quay.make.tagged(tag);
    if (!module.empty()) quay.make.module(id, port, module);
    quay.make.configure_port(id, port, [&](model::PortOverride& row) {
        row.no_untagged = true;
        row.tagged = {quay.av, quay.control_vlan, quay.corporate};
        row.aggregate = aggregate;
    });
}

void attach(Quay& quay, const std::string& cable, const std::string& core_port, const std::string& tag,
            const std::string& port, const std::string& at = "SW-CORE") {
    trunk_port(quay, at, core_port);
    trunk_port(quay, tag, port);
    quay.make.cable(cable, quay.make.tagged(at), core_port, quay.make.tagged(tag), port);
}

/// How often the fibre swaps its two strands, so that with the crossed leads beside it the sum is odd.
void wired(Quay& quay, model::CableId fibre, int pair_swaps) {
    quay.make.run(model::SetFibreWork{fibre, {pair_swaps, 0, 0}});
}

/// From a cage in comms North by lead, panel and fibre to a cage in comms South.
void north_to_south(Quay& quay, const std::string& north_switch, const std::string& north_port,
                    const std::string& south_port, const std::string& panel_port, const std::string& grade,
                    int metres) {
    auto& make = quay.make;
    const auto lead = "patch-" + grade + "-2m";
    make.cable(lead, make.tagged(north_switch), north_port, make.tagged("PF-N"), "front-" + panel_port);
    wired(quay,
          make.cable("fibre-" + grade, make.tagged("PF-N"), "rear-" + panel_port, make.tagged("PF-S"),
                     "rear-" + panel_port, metres),
          1);
    make.cable(lead, make.tagged("PF-S"), "front-" + panel_port, make.tagged("SW-S1"), south_port);
}

void trunks(Quay& quay) {
    auto& make = quay.make;
    attach(quay, "dac-10g-3m", "1", "SW-N1", "25");
    attach(quay, "dac-10g-3m", "3", "SW-N3", "25");
    attach(quay, "dac-40g-3m", "25", "SW-N2", "26");
    attach(quay, "dac-10g-3m", "2", "SW-S2", "25", "SW-S1");
    attach(quay, "dac-10g-3m", "4", "SW-S3", "25", "SW-S1");
    const std::vector<std::tuple<std::string, std::string, std::string>> pair{{"2", "1", "1"}, {"4", "3", "2"}};
    for (const auto& [north, south, panel] : pair) {
        trunk_port(quay, "SW-CORE", north, "sfp-10gbase-lr", "south");
        trunk_port(quay, "SW-S1", south, "sfp-10gbase-lr", "north");
        north_to_south(quay, "SW-CORE", north, south, panel, "os2", 124);
    }
    trunk_port(quay, "SW-N1", "28", "sfp-10gbase-sr");
    trunk_port(quay, "SW-S1", "5", "sfp-10gbase-sr");
    north_to_south(quay, "SW-N1", "28", "5", "12", "om4", 142);
    trunk_port(quay, "SW-CORE", "8", "sfp-10gbase-sr");
    trunk_port(quay, "SW-CR", "25", "sfp-10gbase-sr");
    wired(quay, make.cable("fibre-om4", make.tagged("SW-CORE"), "8", make.tagged("SW-CR"), "25", 64), 1);
    trunk_port(quay, "SW-CORE", "6", "sfp-1000base-lx");
    trunk_port(quay, "SW-MQ", "25", "sfp-1000base-lx");
    make.cable("patch-os2-2m", make.tagged("SW-CORE"), "6", make.tagged("PF-N"), "front-3");
    wired(quay, make.cable("fibre-os2", make.tagged("PF-N"), "rear-3", make.tagged("SW-MQ"), "25", 340), 0);
}

void servers(Quay& quay) {
    auto& make = quay.make;
    const auto server = make.device("management-server", "MS-001", quay.north);
    make.mount(server, quay.north_a, 20);
    quay.control_address(server);
    make.module(make.tagged("SW-CORE"), "5", "sfp-1000base-t");
    quay.set_vlan("SW-CORE", "5", quay.control_vlan);
    make.cable("patch-cat6a-2m", server, "lan-1", make.tagged("SW-CORE"), "5");
}

}  // namespace

void switches_and_trunks(Quay& quay) {
    place_switches(quay);
    place_panels(quay);
    mount_all(quay);
    trunks(quay);
    servers(quay);
}

}  // namespace streamwright::test::ferrow_quay_parts
