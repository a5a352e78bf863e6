// Loads per direction. Expected values: worked examples N-7 and N-8, field cases F01, F06, F07 and F14 as quoted, IEEE
// 802.3 octet counts, and on random trees the closed form that was measured on real bridges.
#include "core/analysis/facts/link_load.h"

#include "tests/graph/switched_room.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

namespace streamwright::analysis {
namespace {

using namespace base::literals;
using test::megabits;
using test::NetworkFacts;
using test::port_of;
using test::SwitchedRoom;
namespace types = test::types;
using Tags = std::vector<std::string>;

// 1,400 octets of payload, RTP 12, UDP 8, IPv4 20, Ethernet 14 + 4, preamble 8, gap 12: 1,478 on the wire; a tag 4
// more.
TEST(LinkLoad, WireRateAddsEveryHeader) {
    auto stream = model::Stream::blank(model::StreamId(1));
    stream.payload_rate = 700_Mbps;
    EXPECT_EQ(wire_rate(stream, false), base::Rate(739_Mbps));
    EXPECT_EQ(wire_rate(stream, true), base::Rate(741_Mbps));
    stream.rtp = false;
    EXPECT_EQ(wire_rate(stream, false), base::Rate(733_Mbps));
}

struct LeafAndSpine : SwitchedRoom {
    LeafAndSpine(int sources, int mbps, const std::string& querier_at) {
        chain({"leaf", "spine"});
        for (int i = 1; i <= sources; ++i) add_encoder("E" + std::to_string(i), "leaf", mbps);
        querier(querier_at);
    }
};

// N-7: 12 sources of 850 Mb/s on a leaf, 1 wanted remotely, querier on the spine: 10,200 Mb/s. N-8: querier on the
// leaf: 850 Mb/s.
TEST(LinkLoad, N7AndN8TheQuerierDecidesWhatTheUplinkCarries) {
    for (const auto& [at, expected] : {std::pair("spine", 10200), std::pair("leaf", 850)}) {
        LeafAndSpine room(12, 850, at);
        room.add_decoder("D", "spine");
        room.show("E3", "D");
        EXPECT_EQ(SwitchedRoom::load(room.facts(), "leaf", "spine"), megabits(expected));
    }
}

// F01: 12 x 0.9 Gb/s on A, querier on C: 10.8 Gb/s of 10; querier on A: 0.
TEST(LinkLoad, F01StreamsReachTheQuerierThoughNobodyWatches) {
    for (const auto& [at, expected] : {std::pair("spine", 10800), std::pair("leaf", 0)}) {
        const auto facts = LeafAndSpine(12, 900, at).facts();
        const int arc = facts.arc("leaf", "spine");
        EXPECT_EQ(facts.loads.presets.at(0).arcs.at(arc).wire, megabits(expected));
        EXPECT_EQ(facts.loads.idle.arcs.at(arc).wire, megabits(expected));
        EXPECT_EQ(facts.capacity.arcs.at(arc), 10_Gbps);
    }
}

// F06: 239.1.1.1 and 239.129.1.1 have one MAC address; by MAC lookup a decoder that asked for one gets both, 1.7 Gb/s.
TEST(LinkLoad, F06GroupsOfOneMacAddress) {
    for (const auto lookup : {catalogue::GroupLookup::ip, catalogue::GroupLookup::mac}) {
        SwitchedRoom room;
        auto type = SwitchedRoom::switch_type();
        type.bridging->lookup = lookup;
        room.add_switch("S", type);
        room.querier("S");
        room.add_encoder("one", "S", 850, "239.1.1.1");
        room.add_encoder("two", "S", 850, "239.129.1.1");
        room.add_decoder("D", "S");
        room.show("one", "D");
        EXPECT_EQ(SwitchedRoom::load(room.facts(), "S", "D"),
                  megabits(lookup == catalogue::GroupLookup::mac ? 1700 : 850));
    }
}

// F07: 40 audio streams on 239.0.0.x, 1,152 octets a millisecond, 9.84 Mb/s each on the wire: 393.6 Mb/s on every port
// of a switch that looks up by MAC.
TEST(LinkLoad, F07GroupsOnTheReservedMacAddressesAreFlooded) {
    SwitchedRoom room;
    auto type = SwitchedRoom::switch_type();
    type.bridging->lookup = catalogue::GroupLookup::mac;
    room.add_switch("S", type);
    room.querier("S");
    room.add_leaf(types::encoder(), "mixer", "S");
    for (int i = 1; i <= 40; ++i) {
        const auto id = room.b.stream(room.devices.at("mixer"), base::BitRate::from_count(1152 * 8 * 1000),
                                      "239.0.0." + std::to_string(i));
        room.b.change<model::Stream>(id, [](auto& row) { row.payload_octets = 1152; });
    }
    room.add_decoder("panel", "S");
    EXPECT_EQ(SwitchedRoom::load(room.facts(), "S", "panel"), base::Rate(base::BitRate::from_count(393600000)));
}

// F14: six decoders in a chain, each its own 200 Mb/s stream: 1.2, 1.0, 0.8, 0.6, 0.4, 0.2 Gb/s; one stream: 0.2 on
// each.
TEST(LinkLoad, F14DaisyChain) {
    const auto type = std::make_shared<const catalogue::DeviceType>(types::make_chained_decoder());
    for (const bool same : {false, true}) {
        SwitchedRoom room;
        room.add_switch("0");
        room.querier("0");
        for (int i = 1; i <= 6; ++i) {
            room.add_encoder("E" + std::to_string(i), "0", 200);
            const auto tag = std::to_string(i);
            const auto before = i == 1 ? room.next_port("0") : port_of(room.devices.at(std::to_string(i - 1)), "aux");
            room.devices.insert_or_assign(tag, room.b.device(type, tag));
            room.b.cable(types::cat6a(), before, port_of(room.devices.at(tag), "net"));
        }
        for (int i = 1; i <= 6; ++i) room.show(same ? "E1" : "E" + std::to_string(i), std::to_string(i));
        const auto facts = room.facts();
        for (int i = 1; i <= 6; ++i)
            EXPECT_EQ(SwitchedRoom::load(facts, std::to_string(i - 1), std::to_string(i)),
                      megabits(same ? 200 : 200 * (7 - i)))
                << i;
        for (const auto& list : facts.loads.presets.at(0).unserved) EXPECT_TRUE(list.empty());
    }
}

// Measured (case 27 of the laboratory's notes): two sources on one group; whoever joins gets both.
TEST(LinkLoad, TwoStreamsOnOneGroupReachBothReceivers) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.querier("B");
    room.add_encoder("one", "A", 100, "239.5.5.5");
    room.add_encoder("two", "B", 100, "239.5.5.5");
    room.add_decoder("D1", "A");
    room.add_decoder("D2", "B");
    room.show("one", "D1");
    room.show("two", "D2");
    const auto facts = room.facts();
    for (const auto& [from, to] : {std::pair("A", "D1"), std::pair("B", "D2")})
        EXPECT_EQ(SwitchedRoom::on(facts, from, to).size(), 2U) << to;
}

TEST(LinkLoad, TheTagCountsOnlyWhereTagged) {
    SwitchedRoom room;
    room.add_switch("A");
    room.add_switch("B");
    const auto [from, to] = room.join("A", "B");
    for (const auto& port : {from, to})
        room.b.port(port, [&](auto& row) {
            row.no_untagged = true;
            row.tagged = {room.vlan};
        });
    room.querier("B");
    room.add_encoder("E", "A", 750);  // 1,504 of 1,500: 752 with a tag
    const auto facts = room.facts();
    EXPECT_EQ(SwitchedRoom::load(facts, "E", "A"), megabits(750));
    EXPECT_EQ(SwitchedRoom::load(facts, "A", "B"), megabits(752));
}

TEST(LinkLoad, SubscriptionsThatCannotBeServedAreNamed) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.add_switch("alone");
    room.querier("A");
    room.add_encoder("E", "A");
    room.add_decoder("near", "B");
    room.add_decoder("far", "alone");
    room.show("E", "near");
    room.show("E", "far");
    const auto facts = room.facts();
    const auto& lost = facts.loads.presets.at(0).unserved.at(0);
    ASSERT_EQ(lost.size(), 1U);
    auto row = room.b.design.subscriptions.begin();
    std::advance(row, lost[0]);
    EXPECT_EQ(row->decoder, room.devices.at("far"));
}

TEST(LinkLoad, DevicesCabledDirectlyNeedNoNetwork) {
    SwitchedRoom room;
    room.devices.insert_or_assign("E", room.b.device(types::encoder(), "E"));
    room.devices.insert_or_assign("D", room.b.device(types::decoder(), "D"));
    room.b.cable(types::cat6a(), port_of(room.devices.at("E"), "net"), port_of(room.devices.at("D"), "net"));
    room.add_stream("E", "E", 100);
    room.show("E", "D");
    EXPECT_TRUE(room.facts().loads.presets.at(0).unserved.at(0).empty());
}

/// A random tree of switches with encoders, decoders, one or two queriers, now and then a multicast router and an
/// access port set by hand; snooping everywhere, unknown groups to router ports.
struct RandomTree : SwitchedRoom {
    std::mt19937_64 random;
    int switches;
    std::vector<int> parent, source_at, receiver_at, sinks;  // switches by number
    std::vector<std::pair<int, int>> joined;                 // stream, receiver

    int below(int count) { return static_cast<int>(random() % static_cast<std::uint64_t>(count)); }
    static std::string name(int s) { return "S" + std::to_string(s); }

    explicit RandomTree(std::uint64_t seed) : random(seed), switches(2 + static_cast<int>(seed % 7)) {
        for (int s = 0; s < switches; ++s) add_switch(name(s));
        parent.push_back(-1);
        for (int s = 1; s < switches; ++s) {
            parent.push_back(below(s));
            join(name(s), name(parent.back()));
        }
        for (int i = 0; i < 5; ++i) {
            source_at.push_back(below(switches));
            add_encoder("E" + std::to_string(i), name(source_at.back()));
            receiver_at.push_back(below(switches));
            add_decoder("D" + std::to_string(i), name(receiver_at.back()));
        }
        for (int i = 0; i < 5; ++i) {
            joined.emplace_back(below(5), below(5));
            show("E" + std::to_string(joined.back().first), "D" + std::to_string(joined.back().second));
        }
        sinks.push_back(below(switches));
        querier(name(sinks[0]), "10.0.0.1");
        if (below(2) == 0) querier(name(below(switches)), "10.0.0.2");
        if (below(3) == 0) {
            sinks.push_back(below(switches));
            b.change<model::Device>(devices.at(name(sinks.back())),
                                    [&](auto& row) { row.bridging.multicast_router_vlans = {vlan}; });
        }
        if (below(3) == 0) {
            sinks.push_back(below(switches));
            b.port(add_decoder("X", name(sinks.back())), [](auto& row) { row.router_port = true; });
        }
    }
    /// Whether a switch is in the branch below another.
    bool inside(int s, int branch) const {
        for (; s >= 0; s = parent[s])
            if (s == branch) return true;
        return false;
    }
    /// The closed form: on u->v exactly when the source is behind u and a receiver, the querier or a router is ahead.
    bool expected(int stream, int child, bool upward) const {
        const auto ahead = [&](int s) { return inside(s, child) != upward; };
        if (ahead(source_at[stream])) return false;
        for (const int sink : sinks)
            if (ahead(sink)) return true;
        for (const auto& [s, receiver] : joined)
            if (s == stream && ahead(receiver_at[receiver])) return true;
        return false;
    }
};

TEST(LinkLoad, StepByStepEqualsTheClosedFormOnRandomTrees) {
    int loaded = 0;
    for (std::uint64_t seed = 0; seed < 300; ++seed) {
        const RandomTree room(seed);
        const auto facts = room.facts();
        for (int child = 1; child < room.switches; ++child)
            for (const bool upward : {true, false}) {
                const auto low = RandomTree::name(child), high = RandomTree::name(room.parent[child]);
                Tags expected;
                for (int s = 0; s < 5; ++s)
                    if (room.expected(s, child, upward)) expected.push_back("E" + std::to_string(s));
                const auto streams = SwitchedRoom::on(facts, upward ? low : high, upward ? high : low);
                EXPECT_THAT(streams, testing::UnorderedElementsAreArray(expected)) << "seed " << seed << ' ' << low;
                loaded += static_cast<int>(expected.size());
            }
    }
    EXPECT_GT(loaded, 1000);
}

}  // namespace
}  // namespace streamwright::analysis
