// Bridges, links, leaves and islands. Expected values: by hand from each drawing.
#include "core/graph/network_graph.h"

#include "core/graph/islands.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::graph {
namespace {

using test::DesignBuilder;
using test::port_of;
namespace types = test::types;

NetworkGraph network_of(const model::Design& design) {
    const auto wiring = wire(design);
    return build_network(wiring, find_runs(wiring));
}

TEST(NetworkGraph, SortsCablesIntoLinksLeavesAndDirects) {
    DesignBuilder b;
    const auto a = b.device(types::switch_24(), "A");
    const auto c = b.device(types::switch_24(), "C");
    const auto enc = b.device(types::encoder(), "ENC");
    b.cable(types::cat6a(), port_of(a, "1"), port_of(c, "1"));
    b.cable(types::cat6a(), port_of(enc, "net"), port_of(a, "2"));
    b.cable(types::cat6a(), port_of(b.device(types::encoder(), "E2"), "net"),
            port_of(b.device(types::decoder(), "D2"), "net"));
    b.cable(types::hdmi(), port_of(b.device(types::source(), "PC"), "out"), port_of(enc, "in"));
    const auto wiring = wire(b.design);
    const auto runs = find_runs(wiring);
    const auto network = build_network(wiring, runs);
    ASSERT_EQ(network.links.size(), 1U);
    ASSERT_EQ(network.leaves.size(), 1U);
    EXPECT_EQ(network.directs.size(), 1U);
    EXPECT_EQ(network.arc_count(), 4);
    const auto ends = arc_ends(wiring, runs, network, network.leaf_arc(0, true));
    EXPECT_EQ(ends.from, enc);
    EXPECT_EQ(ends.to, a);
    EXPECT_FALSE(ends.is_link);
    EXPECT_EQ(network.bridge_after(network.leaf_arc(0, true)), network.bridge_of_device[*wiring.device_index(a)]);
    EXPECT_EQ(network.bridge_after(network.leaf_arc(0, false)), -1);
}

TEST(NetworkGraph, AStackIsOneBridgeAndSoIsAPairWithOneAddress) {
    DesignBuilder b;
    for (const char* tag : {"A", "B"})
        b.change<model::Device>(b.device(types::switch_24(), tag), [](auto& row) { row.bridging.stack = "core"; });
    for (const char* tag : {"C", "D"})
        b.change<model::Device>(b.device(types::switch_24(), tag),
                                [](auto& row) { row.bridging.address = base::MacAddress{7}; });
    b.device(types::switch_24(), "E");
    const auto network = network_of(b.design);
    ASSERT_EQ(network.bridges.size(), 3U);
    std::size_t members = 0;
    for (const auto& bridge : network.bridges) members += bridge.devices.size();
    EXPECT_EQ(members, 5U);
}

TEST(NetworkGraph, AggregatedPortsAtBothEndsAreOneLink) {
    DesignBuilder b;
    const auto a = b.device(types::switch_24(), "A");
    const auto c = b.device(types::switch_24(), "C");
    for (const char* port : {"1", "2", "3"}) {
        // The second cable is drawn the other way round.
        const bool turned = std::string(port) == "2";
        b.cable(types::cat6a(), port_of(turned ? c : a, port), port_of(turned ? a : c, port));
        for (const auto device : {a, c})
            if (std::string(port) != "3") b.port(port_of(device, port), [](auto& row) { row.aggregate = "trunk"; });
    }
    b.port(port_of(a, "3"), [](auto& row) { row.aggregate = "trunk"; });  // a group at one end only is none
    const auto network = network_of(b.design);
    ASSERT_EQ(network.links.size(), 2U);
    int aggregated = 0;
    for (const auto& link : network.links) {
        if (!link.aggregated) continue;
        ++aggregated;
        ASSERT_EQ(link.runs.size(), 2U);
        EXPECT_EQ(link.a_ports[0].device, link.a_ports[1].device);
    }
    EXPECT_EQ(aggregated, 1);
}

TEST(NetworkGraph, IslandsAreCountedOverTheLinksInUse) {
    DesignBuilder b;
    const auto a = b.device(types::switch_24(), "A");
    const auto c = b.device(types::switch_24(), "C");
    b.device(types::switch_24(), "E");
    b.cable(types::cat6a(), port_of(a, "1"), port_of(c, "1"));
    const auto network = network_of(b.design);
    EXPECT_EQ(find_islands(network).count, 2);
    EXPECT_EQ(find_islands(network, {false}).count, 3);
    EXPECT_EQ(find_islands(network_of(model::Design{})).count, 0);
}

TEST(NetworkGraph, ACableFromASwitchToItselfIsALoopNotACrash) {
    DesignBuilder b;
    const auto a = b.device(types::switch_24(), "A");
    b.cable(types::cat6a(), port_of(a, "1"), port_of(a, "2"));
    b.cable(types::cat6a(), port_of(a, "3"), port_of(a, "3"));
    const auto network = network_of(b.design);
    EXPECT_EQ(network.links.size(), 2U);
}

}  // namespace
}  // namespace streamwright::graph
