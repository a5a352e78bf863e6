#include "core/base/id.h"
#include "core/base/net_address.h"
#include "core/io/design_json.h"
#include "tests/lab/lab_predict.h"

#include <algorithm>
#include <stdexcept>

namespace streamwright::lab {
namespace {

/// What every lab's design file holds: the Linux bridge as SOURCE.md tells of it, a host, a VLAN and a preset.
constexpr auto frame = R"({"format": "streamwright", "version": 1,
    "vlans": [{"id": "000000000001"}], "presets": [{"id": "000000000001"}], "cable_types": [
    {"key": "lab-wire", "name": "Wire", "maker": "Generic", "signal": "copper", "plugs": ["rj45"]}], "device_types": [
    {"key": "lab-bridge", "name": "Linux bridge", "maker": "Generic", "kind": "switch", "bridging": {"snooping": true,
        "unknown_groups": "router_ports", "lookup": "ip", "floods_without_querier": true, "bpdus": "run",
        "zero_query_makes_router_port": true, "queries_without_snooping": false, "trees": "common"}},
    {"key": "lab-host", "name": "Host", "maker": "Generic", "kind": "endpoint", "codec": {"family": "lab",
        "roles": ["encoder", "decoder"], "roles_at_once": true, "inputs": [{"key": "picture"}]}}]})";

/// A design file in the making: ids are counted in the order of the lab's lists, ports in the order of use.
struct Builder {
    const json& input;
    json file = json::parse(frame);
    std::map<std::string, std::map<std::string, std::string>> ids;  // per kind, by name
    std::map<std::string, std::size_t> ports_used;                  // per device
    std::uint64_t last_id = 0;

    json list(const char* name) const { return input.value(name, json::array()); }
    std::string id(const std::string& kind, const std::string& name) {
        if (!ids[kind].contains(name)) throw std::invalid_argument("there is no " + kind + " named " + name);
        return ids[kind][name];
    }
    void add(const char* table, const std::string& kind, const std::string& name, json row) {
        row.update({{"id", base::print_id_bits(++last_id)}, {"tag", name}});
        file[table].push_back(row);
        if (!ids[kind].emplace(name, row["id"]).second) throw std::invalid_argument(kind + " named twice: " + name);
    }
    json next_port(const std::string& kind, const std::string& name) {
        const auto key = std::to_string(++ports_used[kind + name]);
        auto& ports = file["device_types"][kind == "switch" ? 0 : 1]["ports"];
        if (ports.size() < ports_used[kind + name])
            ports.push_back({{"key", key}, {"signal", "copper"}, {"connector", "rj45"}, {"rates_bps", {1000000000}}});
        return {{"device", id(kind, name)}, {"port", key}};
    }
    void add_switches() {
        const auto querier = input.value("querier", json());
        for (const auto& each : input.at("switches")) {
            json row{{"address", each.value("mac", print(base::MacAddress{0x026836000001 + ids["switch"].size()}))}};
            row["tree_off"] = !input.value("stp", true);
            row["snooping_off"] = !each.value("snooping", input.value("snooping", true));
            if (const auto address = input.value("querier_address", "auto"); querier == each.at("id")) {
                row["queriers"][0] = {{"vlan", file["vlans"][0]["id"]}};
                if (address != "0.0.0.0") row["queriers"][0]["address"] = address == "auto" ? "10.0.0.1" : address;
            }
            add("devices", "switch", each.at("id"), {{"type", "lab-bridge"}, {"bridging", row}});
        }
        if (!querier.is_null()) id("switch", querier);
    }
    void add_links(std::size_t cuts) {
        const auto cut = list("cut");
        std::map<std::string, int> seen;
        for (const auto& each : list("links")) {
            auto name = each.value("id", each.at("a").get<std::string>() + '-' + each.at("b").get<std::string>());
            if (const int count = ++seen[name]; count > 1) name += "#" + std::to_string(count);
            json row{{"type", "lab-wire"}};
            for (const std::string end : {"a", "b"}) {
                auto port = row[end] = next_port("switch", each.at(end));
                port["path_cost"] = each.value("cost_" + end, each.value("cost", 2000));
                port["disabled"] = std::count(cut.begin(), cut.begin() + static_cast<int>(cuts), name) > 0;
                file["port_overrides"].push_back(port);
            }
            add("cables", "link", name, row);
        }
        for (const auto& link : cut) id("link", link);
        for (const auto& each : list("endpoints")) {
            add("devices", "endpoint", each.at("id"), {{"type", "lab-host"}});
            json row{{"type", "lab-wire"}, {"a", next_port("endpoint", each.at("id"))}};
            row["b"] = next_port("switch", each.at("switch"));
            add("cables", "access link", each.at("id"), row);
        }
    }
    void add_streams() {
        for (const auto& each : list("streams")) {
            json row{{"encoder", id("endpoint", each.at("source"))}, {"group", each.at("group")}, {"rtp", false}};
            row["payload_octets"] = each.value("bytes", 1000);
            row["payload_rate_bps"] = each.value("pps", 200) * 8LL * each.value("bytes", 1000);
            add("streams", "stream", each.at("id"), row);
        }
        for (const auto& each : list("subscriptions")) {
            json row{{"stream", id("stream", each.at("stream"))}, {"decoder", id("endpoint", each.at("receiver"))}};
            row.update({{"preset", file["presets"][0]["id"]}, {"input", std::to_string(last_id)}});
            add("subscriptions", "subscription", std::to_string(last_id), row);
        }
    }
};

}  // namespace

model::Design lab_design(const json& input, std::size_t cuts) {
    Builder builder{input};
    builder.add_switches();
    builder.add_links(cuts);
    builder.add_streams();
    auto design = io::read_design(builder.file.dump(), "lab input");
    if (!design) throw std::invalid_argument(design.error().english());
    for (const auto& each : input.at("switches")) {  // the kernel takes priorities that a design file refuses
        auto row = *design->devices.find(*model::DeviceId::parse(builder.id("switch", each.at("id"))));
        row.bridging.priority = each.value("priority", 32768);
        if (*row.bridging.priority >> 16 != 0) throw std::invalid_argument("a priority is no number of 16 bits");
        design->devices.put(row);
    }
    return *design;
}

}  // namespace streamwright::lab
