// Spanning trees. Expected values: worked examples S-1 to S-6 (checked with a separate solver) and field case F11, as
// copied beside each test; IEEE 802.1Q for the rest.
#include "core/analysis/facts/spanning_tree.h"

#include "tests/support/design_builder.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

#include <map>

namespace streamwright::analysis {
namespace {

using namespace base::literals;
using test::DesignBuilder;
using test::NetworkFacts;
using test::port_of;
namespace types = test::types;

/// Switches by letter; addresses 00-00-5E-00-53-0A and up, as in the examples.
struct Bridges {
    DesignBuilder b;
    std::map<std::string, model::DeviceId> ids;
    bool long_costs = true;

    void add(const std::string& name, int priority, unsigned address) {
        auto type = types::make_switch(24, 1_Gbps, 4);
        type.bridging->long_path_costs = long_costs;
        const auto id = b.device(type, name);
        ids.emplace(name, id);
        b.change<model::Device>(id, [&](auto& row) {
            row.bridging.priority = priority;
            row.bridging.address = base::MacAddress{0x00005E005300 + address};
        });
    }
    void link(const std::string& a, const std::string& a_port, const std::string& c, const std::string& c_port,
              std::optional<base::BitRate> limit = {}) {
        b.cable(types::cat6a(), port_of(ids.at(a), a_port), port_of(ids.at(c), c_port));
        if (limit) b.port(port_of(ids.at(a), a_port), [&](auto& row) { row.rate_limit = limit; });
    }
    void triangle(std::optional<base::BitRate> a_to_b = {}) {
        link("A", "1", "B", "1", a_to_b);
        link("A", "2", "C", "1");
        link("B", "2", "C", "2");
    }
};

/// "A/1" -> R, D, A.
std::map<std::string, char> roles(const NetworkFacts& facts) {
    const auto letter = [](TreeRole role) {
        return role == TreeRole::root         ? 'R'
               : role == TreeRole::designated ? 'D'
               : role == TreeRole::alternate  ? 'A'
                                              : '-';
    };
    std::map<std::string, char> all;
    const auto& tree = facts.trees.trees.at(0);
    for (std::size_t i = 0; i < facts.network.links.size(); ++i) {
        const auto name = [&](graph::PortAt at) {
            const auto ref = facts.wiring.ref(at);
            return facts.tag(ref.device) + "/" + ref.port.text;
        };
        all[name(facts.network.links[i].a_ports.front())] = letter(tree.a_role[i]);
        all[name(facts.network.links[i].b_ports.front())] = letter(tree.b_role[i]);
    }
    return all;
}

std::int64_t cost(const NetworkFacts& facts, const std::string& name) {
    for (std::size_t i = 0; i < facts.wiring.devices.size(); ++i)
        if (facts.wiring.devices[i].row->tag == name)
            return facts.trees.trees.at(0).root_cost.at(facts.network.bridge_of_device[i]);
    return -1;
}

std::string root(const NetworkFacts& facts) {
    const int bridge = facts.trees.trees.at(0).root_of.at(0);
    return facts.wiring.devices[facts.network.bridges.at(bridge).devices[0]].row->tag;
}

using Roles = std::map<std::string, char>;

TEST(SpanningTree, S1LowestAddressIsRoot) {
    Bridges s;
    for (const auto& [name, xx] : {std::pair("A", 0x0A), std::pair("B", 0x0B), std::pair("C", 0x0C)})
        s.add(name, 32768, xx);
    s.triangle();
    const NetworkFacts facts(s.b.design);
    EXPECT_EQ(root(facts), "A");
    EXPECT_EQ(cost(facts, "B"), 20000);
    EXPECT_EQ(cost(facts, "C"), 20000);
    EXPECT_EQ(roles(facts),
              (Roles{{"A/1", 'D'}, {"A/2", 'D'}, {"B/1", 'R'}, {"B/2", 'D'}, {"C/1", 'R'}, {"C/2", 'A'}}));
}

TEST(SpanningTree, S2LowestPriorityIsRoot) {
    Bridges s;
    s.add("A", 32768, 0x0A);
    s.add("B", 32768, 0x0B);
    s.add("C", 4096, 0x0C);
    s.triangle();
    const NetworkFacts facts(s.b.design);
    EXPECT_EQ(root(facts), "C");
    EXPECT_EQ(cost(facts, "A"), 20000);
    EXPECT_EQ(cost(facts, "B"), 20000);
    EXPECT_EQ(roles(facts),
              (Roles{{"C/1", 'D'}, {"C/2", 'D'}, {"A/2", 'R'}, {"A/1", 'D'}, {"B/2", 'R'}, {"B/1", 'A'}}));
}

TEST(SpanningTree, S3TheSlowLinkIsBlockedByEitherScale) {
    for (const bool long_costs : {true, false}) {
        Bridges s;
        s.long_costs = long_costs;
        s.add("A", 24576, 0x0A);
        s.add("B", 32768, 0x0B);
        s.add("C", 32768, 0x0C);
        s.triangle(100_Mbps);
        const NetworkFacts facts(s.b.design);
        EXPECT_EQ(cost(facts, "C"), long_costs ? 20000 : 4);
        EXPECT_EQ(cost(facts, "B"), long_costs ? 40000 : 8);
        EXPECT_EQ(roles(facts),
                  (Roles{{"A/1", 'D'}, {"A/2", 'D'}, {"C/1", 'R'}, {"C/2", 'D'}, {"B/2", 'R'}, {"B/1", 'A'}}));
    }
}

TEST(SpanningTree, S5OfParallelLinksTheLowerDesignatedPortWins) {
    Bridges s;
    s.add("A", 24576, 0x0A);
    s.add("B", 32768, 0x0B);
    s.link("A", "1", "B", "3");
    s.link("A", "2", "B", "4");
    EXPECT_EQ(roles(NetworkFacts(s.b.design)), (Roles{{"A/1", 'D'}, {"A/2", 'D'}, {"B/3", 'R'}, {"B/4", 'A'}}));
    s.b.port(port_of(s.ids.at("A"), "2"), [](auto& row) { row.port_priority = 112; });  // better than 128
    EXPECT_EQ(roles(NetworkFacts(s.b.design)), (Roles{{"A/1", 'D'}, {"A/2", 'D'}, {"B/3", 'A'}, {"B/4", 'R'}}));
}

TEST(SpanningTree, S6AggregatedUplinksLeaveNothingBlocked) {
    Bridges s;
    s.add("K", 4096, 1);
    for (const std::string name : {"A", "B"}) {
        s.add(name, 32768, 0x0A);
        s.b.change<model::Device>(s.ids.at(name), [&](auto& row) { row.bridging.address.reset(); });
        for (const std::string port : {"1", "2"}) {
            const auto far = (name == "A" ? "1" : "2") + port;
            s.link(name, port, "K", far);
            s.b.port(port_of(s.ids.at(name), port), [](auto& row) { row.aggregate = "up"; });
            s.b.port(port_of(s.ids.at("K"), far), [&](auto& row) { row.aggregate = "to " + name; });
        }
    }
    const NetworkFacts facts(s.b.design);
    EXPECT_EQ(facts.network.links.size(), 2U);
    EXPECT_TRUE(facts.trees.trees.at(0).blocked().empty());
    EXPECT_EQ(cost(facts, "A"), 10000);  // 2 Gb/s: 20,000,000 / 2,000
}

// Field case F11: cores A and B joined by 2 x 10 Gb/s, an old 1 Gb/s switch L to both. All at the usual priority: root
// L, trunk A-B blocked at B. Priorities A 4096, B 8192: root A, L-B blocked at L.
TEST(SpanningTree, F11TheLecternSwitchBecomesRoot) {
    Bridges s;
    s.add("L", 32768, 1);
    s.add("A", 32768, 0x0A);
    s.add("B", 32768, 0x0B);
    for (const auto& [from, port, path_cost] :
         {std::tuple("A", "1", 1000), std::tuple("A", "2", 20000), std::tuple("L", "2", 20000)})
        s.b.port(port_of(s.ids.at(from), port), [&, cost_set = path_cost](auto& row) { row.path_cost = cost_set; });
    s.b.port(port_of(s.ids.at("B"), "1"), [](auto& row) { row.path_cost = 1000; });
    s.link("A", "1", "B", "1");
    s.link("A", "2", "L", "1");
    s.link("B", "2", "L", "2");
    const NetworkFacts chance(s.b.design);
    EXPECT_EQ(root(chance), "L");
    EXPECT_EQ(roles(chance).at("B/1"), 'A');
    EXPECT_EQ(chance.trees.trees.at(0).blocked().size(), 1U);
    s.b.change<model::Device>(s.ids.at("A"), [](auto& row) { row.bridging.priority = 4096; });
    s.b.change<model::Device>(s.ids.at("B"), [](auto& row) { row.bridging.priority = 8192; });
    const NetworkFacts fixed(s.b.design);
    EXPECT_EQ(root(fixed), "A");
    EXPECT_EQ(roles(fixed).at("L/2"), 'A');
    EXPECT_EQ(fixed.trees.trees.at(0).blocked().size(), 1U);
}

// S-8: 20,000,000 / Mb/s.
TEST(SpanningTree, S8CostsBySpeed) {
    EXPECT_EQ(long_path_cost(100_Mbps), 200000);
    EXPECT_EQ(long_path_cost(2500_Mbps), 8000);
    EXPECT_EQ(long_path_cost(40_Gbps), 500);
    EXPECT_EQ(short_path_cost(1_Gbps), 4);
    EXPECT_EQ(short_path_cost(10_Gbps), 2);
}

// IEEE 802.1Q: a plain switch hands BPDUs on as a cable does, so the loop through it is cut at a bridge beyond it.
TEST(SpanningTree, BridgesThatPassBpdusAreLookedThrough) {
    Bridges s;
    s.add("A", 4096, 0x0A);
    s.add("B", 32768, 0x0B);
    s.add("X", 32768, 0x0C);
    s.b.change<model::Device>(s.ids.at("X"), [](auto& row) { row.bridging.tree_off = true; });
    s.link("A", "1", "B", "1");
    s.link("A", "2", "X", "1");
    s.link("B", "2", "X", "2");
    EXPECT_EQ(roles(NetworkFacts(s.b.design)),
              (Roles{{"A/1", 'D'}, {"A/2", 'D'}, {"B/1", 'R'}, {"B/2", 'A'}, {"X/1", 'D'}, {"X/2", 'D'}}));
}

TEST(SpanningTree, TreesPerVlanGoTheirOwnWays) {
    DesignBuilder b;
    const auto one = b.vlan(1, "One");
    const auto two = b.vlan(2, "Two");
    auto type = types::make_switch(24, 1_Gbps, 4);
    type.bridging->trees = catalogue::TreeKind::per_vlan;
    std::vector<model::DeviceId> ids;
    for (int i = 0; i < 3; ++i) {
        ids.push_back(b.device(type, std::string(1, static_cast<char>('A' + i))));
        b.change<model::Device>(ids.back(), [&](auto& row) {
            row.bridging.address = base::MacAddress{static_cast<std::uint64_t>(10 + i)};
        });
    }
    // VLAN 2 is on A-B and B-C only: a chain; VLAN 1 is on the whole ring.
    for (int i = 0; i < 3; ++i) {
        const auto from = port_of(ids[i], "1"), to = port_of(ids[(i + 1) % 3], "2");
        b.cable(types::cat6a(), from, to);
        for (const auto& port : {from, to})
            b.port(port, [&](auto& row) {
                row.untagged = one;
                if (i < 2) row.tagged = {two};
            });
    }
    const NetworkFacts facts(b.design);
    ASSERT_EQ(facts.trees.trees.size(), 2U);
    EXPECT_EQ(facts.trees.trees[0].blocked().size(), 1U);
    EXPECT_TRUE(facts.trees.trees[1].blocked().empty());
}

TEST(SpanningTree, ALoopOnOneBridgeIsBlockedAtItsHigherPort) {
    Bridges s;
    s.add("A", 32768, 0x0A);
    s.link("A", "7", "A", "3");
    EXPECT_EQ(roles(NetworkFacts(s.b.design)), (Roles{{"A/3", 'D'}, {"A/7", 'A'}}));
}

}  // namespace
}  // namespace streamwright::analysis
