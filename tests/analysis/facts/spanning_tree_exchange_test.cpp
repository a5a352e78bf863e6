// Spanning trees of thousands of random networks, held equal to what the bridges would work out by themselves: here
// each bridge knows only its own settings and what it hears, and messages are exchanged until nothing changes any more
// (IEEE 802.1D-1998, 8.6: root identifier, root path cost, bridge identifier, port identifier; the lower is better).
#include "core/analysis/facts/spanning_tree.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <map>
#include <random>
#include <tuple>

namespace streamwright::analysis {
namespace spanning_tree_exchange_test {

using namespace base::literals;
using catalogue::Bpdus;
using test::port_of;
namespace types = test::types;

using BridgeName = std::pair<int, std::uint64_t>;  // priority, address
using PortName = std::pair<int, int>;              // priority, number
using Message = std::tuple<BridgeName, std::int64_t, BridgeName, PortName>;

struct SimPort {
    int bridge = 0, link = 0;
    bool at_a = true;
    std::int64_t cost = 0;
    PortName name;
    std::optional<Message> heard;  // the best so far
};

struct SimBridge {
    BridgeName name;
    Bpdus bpdus = Bpdus::run;
    bool per_vlan = false, long_costs = true;
    int ports = 0;  // taken so far
};

struct SimLink {
    int a = 0, b = 0, a_number = 0, b_number = 0;
    int speed = 0;  // index into speeds
    bool up = true;
    std::array<bool, 2> carries{true, true};  // per VLAN
    std::array<std::optional<int>, 2> cost_set, priority_set;
};

// IEEE 802.1Q, Table 13-4, and IEEE 802.1D-1998, Table 8-5.
constexpr std::array speeds{100_Mbps, 1_Gbps, 10_Gbps};
constexpr std::array<std::int64_t, 3> long_costs{200000, 20000, 2000}, short_costs{19, 4, 2};

struct SimNetwork {
    std::vector<SimBridge> bridges;
    std::vector<SimLink> links;

    bool one_tree() const {
        return std::any_of(bridges.begin(), bridges.end(),
                           [](const auto& b) { return b.bpdus == Bpdus::run && !b.per_vlan; });
    }
};

/// The exchange of messages in one tree.
struct Exchange {
    const SimNetwork& network;
    std::vector<bool> usable;
    std::vector<SimPort> ports;  // of bridges that run the tree
    std::vector<BridgeName> root;
    std::vector<std::int64_t> cost;
    std::vector<int> root_port;

    explicit Exchange(const SimNetwork& n, std::vector<bool> links) : network(n), usable(std::move(links)) {
        for (int i = 0; i < static_cast<int>(network.links.size()); ++i)
            for (const bool at_a : {true, false}) {
                const auto& link = network.links[i];
                const auto& bridge = network.bridges[at_a ? link.a : link.b];
                if (!usable[i] || bridge.bpdus != Bpdus::run) continue;
                const auto usual = (bridge.long_costs ? long_costs : short_costs)[link.speed];
                ports.push_back({at_a ? link.a : link.b,
                                 i,
                                 at_a,
                                 link.cost_set[at_a ? 0 : 1].value_or(usual),
                                 {link.priority_set[at_a ? 0 : 1].value_or(128), at_a ? link.a_number : link.b_number},
                                 {}});
            }
        settle();
        while (speak()) settle();
    }

    Message message(const SimPort& port) const {
        return {root[port.bridge], cost[port.bridge], network.bridges[port.bridge].name, port.name};
    }

    /// Each bridge makes up its mind from what it has heard.
    void settle() {
        root.clear();
        for (const auto& bridge : network.bridges) root.push_back(bridge.name);
        cost.assign(root.size(), 0);
        root_port.assign(root.size(), -1);
        using Way = std::tuple<BridgeName, std::int64_t, BridgeName, PortName, PortName>;
        std::vector<std::optional<Way>> best(root.size());
        for (int p = 0; p < static_cast<int>(ports.size()); ++p) {
            const auto& port = ports[p];
            if (!port.heard) continue;
            const auto& [its_root, its_cost, sender, sender_port] = *port.heard;
            if (its_root >= network.bridges[port.bridge].name) continue;
            const Way way{its_root, its_cost + port.cost, sender, sender_port, port.name};
            auto& known = best[port.bridge];
            if (known && *known <= way) continue;
            known = way;
            root[port.bridge] = its_root;
            cost[port.bridge] = its_cost + port.cost;
            root_port[port.bridge] = p;
        }
    }

    /// Where a message that leaves by the link's far end turns up: at running bridges, through those that hand it on.
    void carry(int link, bool toward_a, const Message& sent, std::vector<bool>& crossed, bool& changed) {
        if (!usable[link] || crossed[link]) return;
        crossed[link] = true;
        const int there = toward_a ? network.links[link].a : network.links[link].b;
        const auto bpdus = network.bridges[there].bpdus;
        if (bpdus == Bpdus::run)
            for (auto& port : ports)
                if (port.link == link && port.at_a == toward_a && (!port.heard || sent < *port.heard)) {
                    port.heard = sent;
                    changed = true;
                }
        if (bpdus != Bpdus::passed) return;
        for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
            if (network.links[i].a == there) carry(i, false, sent, crossed, changed);
            if (network.links[i].b == there) carry(i, true, sent, crossed, changed);
        }
    }

    /// Ports whose own message is better than what they hear speak. Whether anybody learned something.
    bool speak() {
        bool changed = false;
        std::vector<std::pair<const SimPort*, Message>> sent;
        for (const auto& port : ports)
            if (designated(port)) sent.emplace_back(&port, message(port));
        for (const auto& [port, what] : sent) {
            std::vector<bool> crossed(network.links.size(), false);
            carry(port->link, !port->at_a, what, crossed, changed);
        }
        return changed;
    }

    /// What it hears may be its own message, come round.
    bool designated(const SimPort& port) const { return !port.heard || message(port) <= *port.heard; }

    TreeRole role(int link, bool at_a) const {
        if (!usable[link]) return TreeRole::down;
        for (int p = 0; p < static_cast<int>(ports.size()); ++p) {
            const auto& port = ports[p];
            if (port.link != link || port.at_a != at_a) continue;
            if (root_port[port.bridge] == p) return TreeRole::root;
            return designated(port) ? TreeRole::designated : TreeRole::alternate;
        }
        return TreeRole::designated;  // nobody there to block it
    }
};

struct Draw {
    std::mt19937 random;
    int below(int count) { return static_cast<int>(random() % static_cast<unsigned>(count)); }
    bool once_in(int times) { return below(times) == 0; }
};

SimNetwork draw_network(Draw& d) {
    SimNetwork network;
    const int bridges = 2 + d.below(6), links = 1 + d.below(2 * bridges);
    const bool per_vlan = d.once_in(3), alike = d.once_in(2);
    for (int i = 0; i < bridges; ++i) {
        SimBridge bridge;
        bridge.name = {d.once_in(2) ? 32768 : 4096 * d.below(4), 100U + static_cast<unsigned>(d.below(50) * 10 + i)};
        bridge.bpdus = !d.once_in(4) ? Bpdus::run : d.once_in(3) ? Bpdus::dropped : Bpdus::passed;
        bridge.per_vlan = per_vlan;
        bridge.long_costs = alike || d.once_in(2);
        network.bridges.push_back(bridge);
    }
    for (int i = 0; i < links; ++i) {
        SimLink link;
        link.a = d.below(bridges);
        link.b = d.once_in(8) ? link.a : d.below(bridges);
        link.a_number = ++network.bridges[link.a].ports;
        link.b_number = ++network.bridges[link.b].ports;
        link.speed = d.below(3);
        link.up = !d.once_in(10);
        for (const int end : {0, 1}) {
            if (d.once_in(5)) link.cost_set[end] = 1 + d.below(30000);
            if (d.once_in(4)) link.priority_set[end] = 16 * d.below(16);
            link.carries[end] = !d.once_in(4);
        }
        network.links.push_back(link);
    }
    return network;
}

model::Design design_of(const SimNetwork& network) {
    test::DesignBuilder b;
    const std::array vlans{b.vlan(10, "One"), b.vlan(20, "Two")};
    std::vector<model::DeviceId> ids;
    for (std::size_t i = 0; i < network.bridges.size(); ++i) {
        const auto& bridge = network.bridges[i];
        auto type = types::make_switch(30, 10_Gbps, 0);
        type.key.text += '.' + std::to_string(i);
        type.bridging->long_path_costs = bridge.long_costs;
        type.bridging->trees = bridge.per_vlan ? catalogue::TreeKind::per_vlan : catalogue::TreeKind::common;
        if (bridge.bpdus == Bpdus::dropped) type.bridging->bpdus = Bpdus::dropped;
        ids.push_back(b.device(type, 'B' + std::to_string(i)));
        b.change<model::Device>(ids.back(), [&](auto& row) {
            if (bridge.name.first != 32768) row.bridging.priority = bridge.name.first;
            row.bridging.address = base::MacAddress{bridge.name.second};
            row.bridging.tree_off = bridge.bpdus == Bpdus::passed;
        });
    }
    for (const auto& link : network.links) {
        const std::array ends{port_of(ids[link.a], std::to_string(link.a_number)),
                              port_of(ids[link.b], std::to_string(link.b_number))};
        b.cable(types::cat6a(), ends[0], ends[1], 20_m);
        for (const int end : {0, 1})
            b.port(ends[end], [&](auto& row) {
                row.no_untagged = true;
                for (const int v : {0, 1})
                    if (link.carries[v]) row.tagged.push_back(vlans[v]);
                row.rate_limit = speeds[link.speed];
                row.path_cost = link.cost_set[end];
                row.port_priority = link.priority_set[end];
                row.disabled = !link.up && end == 0;
            });
    }
    return b.design;
}

struct Trees {
    graph::Wiring wiring;
    graph::NetworkGraph network;
    SpanningTrees trees;
};

Trees trees_of(const model::Design& design) {
    Trees made;
    made.wiring = graph::wire(design);
    const auto runs = graph::find_runs(made.wiring);
    made.network = graph::build_network(made.wiring, runs);
    const auto capacity = find_link_capacity(made.wiring, runs, made.network);
    const auto paths = find_vlan_paths(made.wiring, runs, made.network, capacity);
    made.trees = find_spanning_trees(made.wiring, runs, made.network, capacity, paths);
    return made;
}

/// The bridge of that number in the drawing, as the facts count bridges.
int fact_bridge(const Trees& made, int bridge) {
    for (std::size_t i = 0; i < made.wiring.devices.size(); ++i)
        if (made.wiring.devices[i].row->tag == 'B' + std::to_string(bridge)) return made.network.bridge_of_device[i];
    return -1;
}

/// The role at the port, as the facts have it.
TreeRole fact_role(const Trees& made, int vlan, const std::string& tag, int number) {
    for (std::size_t i = 0; i < made.network.links.size(); ++i)
        for (const bool at_a : {true, false}) {
            const auto port = (at_a ? made.network.links[i].a_ports : made.network.links[i].b_ports).front();
            if (made.wiring.devices[static_cast<std::size_t>(port.device)].row->tag == tag && port.port + 1 == number)
                return (at_a ? made.trees.trees[vlan].a_role : made.trees.trees[vlan].b_role)[i];
        }
    return TreeRole::down;
}

void compare(const SimNetwork& network, const Trees& made, int vlan, std::map<TreeRole, int>& seen) {
    std::vector<bool> usable;
    for (const auto& link : network.links) usable.push_back(link.up && (network.one_tree() || link.carries[vlan]));
    const Exchange exchange(network, usable);
    const auto& tree = made.trees.trees[vlan];
    for (int b = 0; b < static_cast<int>(network.bridges.size()); ++b) {
        if (network.bridges[b].bpdus != Bpdus::run) continue;
        const int mine = fact_bridge(made, b);
        if (tree.root_of[mine] < 0) continue;  // not in the VLAN
        const auto root = std::find_if(network.bridges.begin(), network.bridges.end(),
                                       [&](const auto& each) { return each.name == exchange.root[b]; });
        EXPECT_EQ(tree.root_of[mine], fact_bridge(made, static_cast<int>(root - network.bridges.begin())));
        EXPECT_EQ(tree.root_cost[mine], exchange.cost[b]);
    }
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i)
        for (const bool at_a : {true, false}) {
            const auto& link = network.links[i];
            const auto role = link.carries[vlan] ? exchange.role(i, at_a) : TreeRole::down;
            const auto tag = 'B' + std::to_string(at_a ? link.a : link.b);
            EXPECT_EQ(fact_role(made, vlan, tag, at_a ? link.a_number : link.b_number), role)
                << tag << " port " << (at_a ? link.a_number : link.b_number) << " VLAN " << vlan;
            ++seen[role];
        }
}

TEST(SpanningTreeExchange, RandomNetworksSettleAsTheFactsSay) {
    std::map<TreeRole, int> seen;
    for (unsigned seed = 1; seed <= 3000; ++seed) {
        Draw draw{std::mt19937(seed)};
        const auto network = draw_network(draw);
        const auto made = trees_of(design_of(network));
        ASSERT_EQ(made.trees.trees.size(), 2U);
        for (const int vlan : {0, 1}) compare(network, made, vlan, seen);
        if (testing::Test::HasFailure()) FAIL() << "network of seed " << seed;
    }
    for (const auto role : {TreeRole::down, TreeRole::root, TreeRole::designated, TreeRole::alternate})
        EXPECT_GT(seen[role], 1000) << static_cast<int>(role);
}

}  // namespace spanning_tree_exchange_test
}  // namespace streamwright::analysis
