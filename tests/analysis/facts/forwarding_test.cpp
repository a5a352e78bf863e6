// Queriers, router ports and what each bridge does with a group. Expected values: RFC 4541 2.1 by the worked examples
// N-1 to N-6 and I-4, I-5 (source, receiver, bystander and router port of one switch), and the field cases named.
#include "core/analysis/facts/forwarding.h"

#include "core/analysis/facts/stream_walk.h"
#include "tests/graph/switched_room.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>

namespace streamwright::analysis {
namespace {

using test::NetworkFacts;
using test::SwitchedRoom;
using testing::IsEmpty;
using Tags = std::vector<std::string>;
using catalogue::UnknownGroups;

/// Port 1 source of two groups, 2 member of the first, 3 no member, 4 router port: who gets what.
struct OneSwitch : SwitchedRoom {
    explicit OneSwitch(UnknownGroups unknown, const std::string& second_group = "239.192.0.2") {
        auto type = switch_type();
        type.bridging->unknown_groups = unknown;
        add_switch("S", type);
        add_encoder("wanted", "S", 100, "239.192.0.1");
        add_stream("unwanted", "wanted", 100, second_group);
        add_decoder("member", "S");
        add_decoder("bystander", "S");
        const auto router = add_decoder("router", "S");
        b.port(router, [](auto& row) { row.router_port = true; });
        show("wanted", "member");
        querier("S");
    }
};

TEST(Forwarding, N1MembersAndRouterPortsGetAKnownGroup) {
    const auto facts = OneSwitch(UnknownGroups::router_ports).facts();
    EXPECT_EQ(SwitchedRoom::on(facts, "S", "member"), Tags{"wanted"});
    EXPECT_THAT(SwitchedRoom::on(facts, "S", "bystander"), IsEmpty());
    EXPECT_EQ(SwitchedRoom::on(facts, "S", "router").size(), 2U);
}

TEST(Forwarding, N3UnknownGroupsAreFloodedInThatMode) {
    const auto facts = OneSwitch(UnknownGroups::flood).facts();
    for (const char* tag : {"bystander", "router"})
        EXPECT_THAT(SwitchedRoom::on(facts, "S", tag), testing::Contains("unwanted")) << tag;
    EXPECT_THAT(SwitchedRoom::on(facts, "S", "bystander"), testing::Not(testing::Contains("wanted")));
    EXPECT_EQ(SwitchedRoom::on(facts, "S", "member").size(), 2U);
}

TEST(Forwarding, UnknownGroupsGoNowhereInDropMode) {
    const auto facts = OneSwitch(UnknownGroups::drop).facts();
    EXPECT_EQ(SwitchedRoom::on(facts, "S", "router"), Tags{"wanted"});
    EXPECT_EQ(SwitchedRoom::on(facts, "S", "member"), Tags{"wanted"});
}

TEST(Forwarding, N4LinkLocalGroupsAreFlooded) {
    const auto facts = OneSwitch(UnknownGroups::drop, "224.0.0.251").facts();
    for (const char* tag : {"member", "bystander", "router"})
        EXPECT_THAT(SwitchedRoom::on(facts, "S", tag), testing::Contains("unwanted")) << tag;
}

// N-5: a report leaves by the router port only. On the switch in the middle it comes from a member; the querier behind
// one neighbour learns of it, the neighbour on the other side does not, and so a stream of that group stays away from
// it.
TEST(Forwarding, N5ReportsGoToRouterPortsOnly) {
    SwitchedRoom room;
    room.chain({"querier", "middle", "bystander"});
    room.querier("querier");
    room.add_encoder("E", "querier");
    room.add_decoder("D", "middle");
    room.show("E", "D");
    const auto facts = room.facts();
    StreamWalk walk(facts.network, facts.trees, facts.forwarding);
    const auto bridge = [&](const char* tag) {
        return facts.network.bridge_of_device[*facts.wiring.device_index(room.devices.at(tag))];
    };
    std::vector<Membership> learned;
    const auto& way = facts.forwarding.streams.at(0);
    walk.report(way.vlan, {bridge("middle"), facts.arc("middle", "D")}, way.group, learned);
    std::set<int> where;
    for (const auto& each : learned) where.insert(each.bridge);
    EXPECT_EQ(where, (std::set<int>{bridge("querier"), bridge("middle")}));
    EXPECT_EQ(SwitchedRoom::on(facts, "querier", "middle"), Tags{"E"});
    EXPECT_THAT(SwitchedRoom::on(facts, "middle", "bystander"), IsEmpty());
}

// N-6: memberships fade without a querier; then the mode for unknown groups rules. F03: six streams of 200 Mb/s reach
// every port under flooding, none under dropping.
TEST(Forwarding, N6WithoutAQuerierMembershipsFade) {
    for (const auto mode : {UnknownGroups::flood, UnknownGroups::drop}) {
        SwitchedRoom room;
        auto type = SwitchedRoom::switch_type();
        type.bridging->unknown_groups = mode;
        room.add_switch("S", type);
        for (int i = 1; i <= 6; ++i) room.add_encoder("E" + std::to_string(i), "S", 200);
        room.add_decoder("D", "S");
        room.show("E1", "D");
        const auto facts = room.facts();
        EXPECT_THAT(facts.forwarding.vlans.at(0).queriers, IsEmpty());
        EXPECT_EQ(SwitchedRoom::load(facts, "S", "D"), test::megabits(mode == UnknownGroups::flood ? 1200 : 0));
        std::size_t unserved = 0;
        for (const auto& list : facts.loads.presets.at(0).unserved) unserved += list.size();
        EXPECT_EQ(unserved, mode == UnknownGroups::flood ? 0U : 1U);
    }
}

// I-4: 192.0.2.10, 192.0.2.2 and a proxy without an address: 192.0.2.2 asks. I-5: numbers, not text.
TEST(Forwarding, I4TheLowestAddressIsElectedAndZeroNeverWins) {
    SwitchedRoom room;
    room.chain({"A", "B", "C"});
    room.querier("A", "192.0.2.10");
    room.querier("B", "192.0.2.2");
    room.querier("C", "");
    const auto facts = room.facts();
    const auto& vlan = facts.forwarding.vlans.at(0);
    ASSERT_EQ(vlan.queriers.size(), 1U);
    EXPECT_EQ(facts.wiring.devices[facts.network.bridges[vlan.queriers[0]].devices[0]].row->tag, "B");
    EXPECT_EQ(vlan.querier_of, std::vector<int>(3, vlan.queriers[0]));
}

// F04: S1 asks from 0.0.0.0, encoder on S1, decoder on S3. A strict switch makes no router port of it: no picture.
// Measured on Linux bridges (case 16): they do, and the picture comes.
TEST(Forwarding, F04AQuerierWithoutAddress) {
    for (const bool counts : {false, true}) {
        SwitchedRoom room;
        for (const char* tag : {"S1", "S2", "S3"}) {
            auto type = SwitchedRoom::switch_type();
            type.bridging->zero_query_makes_router_port = counts;
            room.add_switch(tag, type);
        }
        room.join("S1", "S2");
        room.join("S2", "S3");
        room.querier("S1", "");
        room.add_encoder("E", "S1");
        room.add_decoder("D", "S3");
        room.show("E", "D");
        EXPECT_EQ(SwitchedRoom::on(room.facts(), "S3", "D").size(), counts ? 1U : 0U);
    }
}

TEST(Forwarding, AQuerierWhereSnoopingIsOffAsksOnlyIfItsTypeDoes) {
    for (const bool asks : {false, true}) {
        SwitchedRoom room;
        auto type = SwitchedRoom::switch_type();
        type.bridging->queries_without_snooping = asks;
        room.add_switch("A", type);
        room.add_switch("B");
        room.join("A", "B");
        room.b.change<model::Device>(room.devices.at("A"), [](auto& row) { row.bridging.snooping_off = true; });
        room.querier("A");
        EXPECT_EQ(room.facts().forwarding.vlans.at(0).queriers.size(), asks ? 1U : 0U);
    }
}

TEST(Forwarding, EachPartOfABrokenNetworkHasItsOwnQuerierOrNone) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.add_switch("C");
    room.querier("A", "10.0.0.9");
    room.querier("B", "10.0.0.5");
    room.add_decoder("D", "C");
    const auto facts = room.facts();
    const auto bridge = [&](const std::string& tag) {
        return facts.network.bridge_of_device[*facts.wiring.device_index(room.devices.at(tag))];
    };
    const auto& vlan = facts.forwarding.vlans.at(0);
    EXPECT_EQ(vlan.querier_of[bridge("A")], bridge("B"));
    EXPECT_EQ(vlan.querier_of[bridge("C")], -1);
    EXPECT_FALSE(vlan.bridges[bridge("C")].keeps_members);
}

// Every router port gets every stream: toward the querier, toward a multicast router, and an access port set by hand.
TEST(Forwarding, StreamsGoTowardEveryRouter) {
    SwitchedRoom room;
    room.chain({"A", "B", "C", "D"});
    room.add_encoder("E", "B");
    room.querier("A");
    room.b.change<model::Device>(room.devices.at("D"),
                                 [&](auto& row) { row.bridging.multicast_router_vlans = {room.vlan}; });
    auto facts = room.facts();
    for (const auto& [from, to] : {std::pair("B", "A"), std::pair("B", "C"), std::pair("C", "D")})
        EXPECT_EQ(SwitchedRoom::on(facts, from, to), Tags{"E"}) << from << to;
    room.b.change<model::Device>(room.devices.at("D"), [](auto& row) { row.bridging.multicast_router_vlans.clear(); });
    EXPECT_THAT(SwitchedRoom::on(room.facts(), "B", "C"), IsEmpty());
    room.b.port(room.add_decoder("recorder", "C"), [](auto& row) { row.router_port = true; });
    facts = room.facts();
    EXPECT_EQ(SwitchedRoom::on(facts, "C", "recorder"), Tags{"E"});
    EXPECT_THAT(SwitchedRoom::on(facts, "C", "D"), IsEmpty());
}

TEST(Forwarding, ATrunkPortSetByHandCountsOnItsOwnSwitchOnly) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.add_switch("C");
    const auto port = room.join("B", "C").first;
    room.b.port(port, [](auto& row) { row.router_port = true; });
    room.querier("A");
    room.add_encoder("here", "B");
    room.add_encoder("there", "A");
    EXPECT_EQ(SwitchedRoom::on(room.facts(), "B", "C"), Tags{"here"});
}

TEST(Forwarding, SnoopingCanBeOffInOneVlan) {
    SwitchedRoom room;
    room.add_switch("S");
    room.querier("S");
    room.add_encoder("E", "S");
    room.add_decoder("D", "S");
    EXPECT_THAT(SwitchedRoom::on(room.facts(), "S", "D"), IsEmpty());
    room.b.change<model::Device>(room.devices.at("S"),
                                 [&](auto& row) { row.bridging.snooping_off_vlans = {room.vlan}; });
    EXPECT_EQ(SwitchedRoom::on(room.facts(), "S", "D"), Tags{"E"});
}

TEST(Forwarding, FactsThatAreNotStatedAreSaidToBeUnknown) {
    SwitchedRoom room;
    auto type = SwitchedRoom::switch_type();
    room.add_switch("S", type);
    room.querier("S");
    room.add_decoder("D", "S");
    EXPECT_FALSE(room.facts().forwarding.vlans.at(0).bridges.at(0).unstated);
    type.bridging->unknown_groups.reset();
    room.add_switch("T", type);
    room.add_decoder("D2", "T");
    const auto facts = room.facts();
    const auto bridge = facts.network.bridge_of_device[*facts.wiring.device_index(room.devices.at("T"))];
    EXPECT_TRUE(facts.forwarding.vlans.at(0).bridges.at(bridge).unstated);
}

}  // namespace
}  // namespace streamwright::analysis
