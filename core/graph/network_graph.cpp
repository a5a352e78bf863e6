#include "core/graph/network_graph.h"

#include "core/graph/run_arcs.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <string_view>
#include <tuple>

namespace streamwright::graph {

namespace network_detail {

bool bridges_frames(const WiredDevice& device) { return device.type && device.type->bridging.has_value(); }

/// Devices that act as one bridge carry the number of the first of them.
std::vector<int> first_of_bridge(const Wiring& wiring) {
    std::vector<int> first(wiring.devices.size(), -1);
    std::map<std::string_view, int> stacks;
    std::map<base::MacAddress, int> addresses;
    for (std::size_t i = 0; i < wiring.devices.size(); ++i) {
        if (!bridges_frames(wiring.devices[i])) continue;
        first[i] = static_cast<int>(i);
        const auto& set = wiring.devices[i].row->bridging;
        if (!set.stack.empty()) first[i] = stacks.try_emplace(set.stack, first[i]).first->second;
        if (!set.address) continue;
        const auto [at, fresh] = addresses.try_emplace(*set.address, first[i]);
        if (fresh || at->second == first[i]) continue;
        // A stack and a bridge address can both join: the later group goes over to the earlier one.
        const auto [to, from] = std::minmax(at->second, first[i]);
        const int keep = to, drop = from;
        for (auto& each : first)
            if (each == drop) each = keep;
        for (auto& [name, member] : stacks)
            if (member == drop) member = keep;
        for (auto& [address, member] : addresses)
            if (member == drop) member = keep;
    }
    return first;
}

void add_bridges(const Wiring& wiring, NetworkGraph& network) {
    const auto first = first_of_bridge(wiring);
    network.bridge_of_device.assign(wiring.devices.size(), -1);
    for (std::size_t i = 0; i < first.size(); ++i) {
        if (first[i] < 0) continue;
        auto& bridge = network.bridge_of_device[static_cast<std::size_t>(first[i])];
        if (bridge < 0) {
            bridge = static_cast<int>(network.bridges.size());
            network.bridges.push_back({{}, wiring.devices[i].type->kind != catalogue::DeviceKind::network_switch});
        }
        network.bridge_of_device[i] = bridge;
        network.bridges[static_cast<std::size_t>(bridge)].devices.push_back(static_cast<int>(i));
    }
}

std::string_view aggregate_at(const Wiring& wiring, PortAt port) {
    const auto* set = wiring.port_override(port);
    return set ? std::string_view(set->aggregate) : std::string_view();
}

/// Collects links; runs between the same two groups become one.
struct LinkList {
    using Group = std::tuple<int, std::string_view, int, std::string_view>;
    const Wiring& wiring;
    NetworkGraph& network;
    std::map<Group, int> groups;

    void add(int run, PortAt a, PortAt b, int bridge_a, int bridge_b) {
        const auto name_a = aggregate_at(wiring, a), name_b = aggregate_at(wiring, b);
        const bool aggregated = !name_a.empty() && !name_b.empty();
        if (aggregated) {
            if (join({bridge_a, name_a, bridge_b, name_b}, run, a, b)) return;
            if (join({bridge_b, name_b, bridge_a, name_a}, run, b, a)) return;
            groups[{bridge_a, name_a, bridge_b, name_b}] = static_cast<int>(network.links.size());
        }
        network.links.push_back({bridge_a, bridge_b, {run}, {a}, {b}, aggregated});
    }

    bool join(const Group& group, int run, PortAt a, PortAt b) {
        const auto at = groups.find(group);
        if (at == groups.end()) return false;
        auto& link = network.links[static_cast<std::size_t>(at->second)];
        link.runs.push_back(run);
        link.a_ports.push_back(a);
        link.b_ports.push_back(b);
        return true;
    }
};

void add_run(LinkList& links, int index, const Run& run) {
    auto& network = links.network;
    if (!run.a || !run.b || !links.wiring.is_network_port(*run.a) || !links.wiring.is_network_port(*run.b)) return;
    const int a = network.bridge_of_device[static_cast<std::size_t>(run.a->device)];
    const int b = network.bridge_of_device[static_cast<std::size_t>(run.b->device)];
    if (a >= 0 && b >= 0) return links.add(index, *run.a, *run.b, a, b);
    if (a < 0 && b < 0) return network.directs.push_back({*run.a, *run.b, index});
    if (a >= 0) return network.leaves.push_back({a, *run.b, *run.a, index});
    network.leaves.push_back({b, *run.a, *run.b, index});
}

void list_leaves(NetworkGraph& network) {
    for (std::size_t i = 0; i < network.leaves.size(); ++i) {
        const auto device = static_cast<std::size_t>(network.leaves[i].device_port.device);
        network.leaves_of_device[device].push_back(static_cast<int>(i));
    }
    for (auto& leaves : network.leaves_of_device)
        if (leaves.size() > 1)
            std::sort(leaves.begin(), leaves.end(), [&](int x, int y) {
                const auto& a = network.leaves[static_cast<std::size_t>(x)];
                const auto& b = network.leaves[static_cast<std::size_t>(y)];
                return std::pair(a.device_port, x) < std::pair(b.device_port, y);
            });
}

}  // namespace network_detail

NetworkGraph build_network(const Wiring& wiring, const Runs& runs) {
    NetworkGraph network;
    network_detail::add_bridges(wiring, network);
    network_detail::LinkList links{wiring, network, {}};
    network.leaves.reserve(wiring.devices.size());
    for (std::size_t i = 0; i < runs.list.size(); ++i)
        network_detail::add_run(links, static_cast<int>(i), runs.list[i]);
    network.leaves_of_device.resize(wiring.devices.size());
    network_detail::list_leaves(network);
    return network;
}

ArcEnds arc_ends(const Wiring& wiring, const Runs& runs, const NetworkGraph& network, int arc) {
    const auto index = static_cast<std::size_t>(arc / 2);
    const bool forward = arc % 2 == 0;
    const bool is_link = index < network.links.size();
    PortAt from, to;
    int run = 0;
    if (is_link) {
        const auto& link = network.links[index];
        from = link.a_ports.front();
        to = link.b_ports.front();
        run = link.runs.front();
    } else {
        const auto& leaf = network.leaves[index - network.links.size()];
        from = leaf.device_port;
        to = leaf.bridge_port;
        run = leaf.run;
    }
    if (!forward) std::swap(from, to);
    const int cable = runs.list[static_cast<std::size_t>(run)].cables.front();
    const auto id = [&](PortAt at) { return wiring.devices[static_cast<std::size_t>(at.device)].row->id; };
    return {wiring.cables[static_cast<std::size_t>(cable)].row->id, id(from), id(to), from, to, is_link};
}

std::vector<int> arcs_of_run(const NetworkGraph& network, int run) {
    for (std::size_t i = 0; i < network.links.size(); ++i)
        if (std::ranges::find(network.links[i].runs, run) != network.links[i].runs.end())
            return {network.link_arc(static_cast<int>(i), true), network.link_arc(static_cast<int>(i), false)};
    for (std::size_t i = 0; i < network.leaves.size(); ++i)
        if (network.leaves[i].run == run)
            return {network.leaf_arc(static_cast<int>(i), true), network.leaf_arc(static_cast<int>(i), false)};
    return {};
}

}  // namespace streamwright::graph
