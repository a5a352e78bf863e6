#include "tests/lab/lab_design.h"

#include "core/model/delta.h"

#include <memory>

namespace streamwright::lab {

namespace {

using nlohmann::json;
namespace cat = streamwright::catalogue;
namespace mod = streamwright::model;
using namespace base::literals;

cat::PortType copper_port(int number) {
    return {{std::to_string(number)}, {}, cat::Signal::copper, cat::Way::both, cat::Connector::rj45, {1_Gbps}};
}

/// The facts of the Linux bridge, as SOURCE.md tells them.
cat::SwitchFacts bridge_facts() {
    cat::SwitchFacts facts;
    facts.snooping = true;
    facts.unknown_groups = cat::UnknownGroups::router_ports;
    facts.lookup = cat::GroupLookup::ip;
    facts.floods_without_querier = true;
    facts.zero_query_makes_router_port = true;
    facts.queries_without_snooping = false;
    facts.bpdus = cat::Bpdus::run;
    facts.trees = cat::TreeKind::common;
    return facts;
}

/// Builds rows through Editing, ids counted in the order of the lab's lists.
struct Builder {
    const json& input;
    mod::Editing edit{mod::Design{}};
    LabDesign made;
    std::uint64_t last_id = 0;
    std::map<std::string, mod::DeviceId> devices;
    std::map<std::string, int> ports_used;

    template <class Id>
    Id next() {
        return Id(++last_id);
    }

    mod::DeviceId add_device(const std::string& name, const std::string& type) {
        auto row = mod::Device::blank(next<mod::DeviceId>());
        row.type = {type};
        row.tag = name;
        edit.put(row);
        devices.emplace(name, row.id);
        return row.id;
    }

    void add_types() {
        cat::DeviceType bridge, host;
        bridge.key = {"lab.bridge"};
        bridge.kind = cat::DeviceKind::network_switch;
        bridge.bridging = bridge_facts();
        for (int i = 1; i <= 192; ++i) bridge.ports.push_back(copper_port(i));
        host.key = {"lab.host"};
        host.kind = cat::DeviceKind::endpoint;
        host.ports = {copper_port(1)};
        host.codec = cat::Codec{};
        host.codec->family = "lab";
        host.codec->roles = {cat::Role::encoder, cat::Role::decoder};
        host.codec->roles_at_once = true;
        cat::CableType wire;
        wire.key = {"lab.wire"};
        edit.put(mod::DeviceTypeRow{std::make_shared<const cat::DeviceType>(bridge)});
        edit.put(mod::DeviceTypeRow{std::make_shared<const cat::DeviceType>(host)});
        edit.put(mod::CableTypeRow{std::make_shared<const cat::CableType>(wire)});
    }

    void add_switches() {
        mod::Vlan vlan = mod::Vlan::blank(next<mod::VlanId>());
        edit.put(vlan);
        std::uint64_t place = 0;
        for (const auto& each : input.at("switches")) {
            auto row = *edit.now.devices.find(add_device(each.at("id"), "lab.bridge"));
            row.bridging.priority = each.value("priority", 32768);
            row.bridging.address = base::MacAddress{0x026836000000 + ++place};
            if (each.contains("mac")) row.bridging.address = base::parse_mac(each.at("mac").get<std::string>());
            row.bridging.tree_off = !input.value("stp", true);
            row.bridging.snooping_off = !each.value("snooping", input.value("snooping", true));
            if (input.contains("querier") && input.at("querier") == each.at("id")) {
                const auto address = input.value("querier_address", "auto");
                row.bridging.queriers = {{vlan.id, base::parse_ipv4(address == "auto" ? "10.0.0.1" : address)}};
                if (address == "0.0.0.0") row.bridging.queriers[0].address.reset();
            }
            edit.put(row);
        }
    }

    mod::PortRef next_port(const std::string& name) { return {devices.at(name), {std::to_string(++ports_used[name])}}; }

    void add_cable(const std::string& name, const mod::PortRef& a, const mod::PortRef& b) {
        auto row = mod::Cable::blank(next<mod::CableId>());
        row.type = {"lab.wire"};
        row.tag = name;
        row.a = mod::CableEnd{a};
        row.b = mod::CableEnd{b};
        edit.put(row);
    }

    void set_cost(const mod::PortRef& port, int cost) {
        auto row = mod::PortOverride::blank(port);
        row.path_cost = cost;
        edit.put(row);
    }

    void add_links() {
        std::map<std::string, int> seen;
        for (const auto& each : input.value("links", json::array())) {
            const std::string a = each.at("a"), b = each.at("b");
            auto name = each.value("id", a + "-" + b);
            if (const int count = ++seen[name]; count > 1) name += "#" + std::to_string(count);
            const auto port_a = next_port(a), port_b = next_port(b);
            set_cost(port_a, each.value("cost_a", each.value("cost", 2000)));
            set_cost(port_b, each.value("cost_b", each.value("cost", 2000)));
            made.link_port.emplace(name, port_a);
            add_cable(name, port_a, port_b);
        }
        for (const auto& each : input.value("endpoints", json::array())) {
            add_device(each.at("id"), "lab.host");
            add_cable(each.at("id"), next_port(each.at("id")), next_port(each.at("switch")));
        }
    }

    void add_streams() {
        for (const auto& each : input.value("streams", json::array())) {
            auto row = mod::Stream::blank(next<mod::StreamId>());
            row.tag = each.at("id");
            row.encoder = devices.at(each.at("source"));
            row.group = base::parse_ipv4(each.at("group").get<std::string>());
            row.payload_octets = each.value("bytes", 1000);
            row.payload_rate = base::BitRate::from_count(each.value("pps", 200) * row.payload_octets * 8);
            row.rtp = false;
            edit.put(row);
            made.streams.emplace(row.tag, row.id);
        }
        auto preset = mod::Preset::blank(next<mod::PresetId>());
        edit.put(preset);
        for (const auto& each : input.value("subscriptions", json::array())) {
            auto row = mod::Subscription::blank(next<mod::SubscriptionId>());
            row.preset = preset.id;
            row.stream = made.streams.at(each.at("stream"));
            row.decoder = devices.at(each.at("receiver"));
            edit.put(row);
        }
    }
};

}  // namespace

LabDesign lab_design(const json& input) {
    Builder builder{input};
    builder.add_types();
    builder.add_switches();
    builder.add_links();
    builder.add_streams();
    builder.made.design = builder.edit.now;
    return std::move(builder.made);
}

}  // namespace streamwright::lab
