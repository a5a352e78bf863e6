// Field cases of the network, each as a small design with the whole set of what must be found in it and nothing else.
// The rows, their figures and their sources stand in tests/reference/field-cases.csv.
#include "tests/cases/field_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::field_network_cases_test {

using analysis::Severity;
using catalogue::UnknownGroups;
using testing::HasSubstr;
using namespace base::literals;

void mode_of(catalogue::DeviceType& type, UnknownGroups mode) { type.bridging->unknown_groups = mode; }

/// Twelve pairs of 0.9 Gb/s on switch A, whose uplink of 10 Gb/s ends at the core; who asks is chosen.
FieldRoom twelve_pairs(bool querier_at_core) {
    FieldRoom room;
    const auto a = room.add_switch("SW-A"), core = room.add_switch("SW-C");
    room.trunk(a, core);
    room.querier(querier_at_core ? core : a);
    for (int i = 0; i < 12; ++i) room.decoder(a, room.encoder(a, 900_Mbps));
    return room;
}

TEST(FieldCases, F01StreamsReachTheQuerierAlthoughNobodyThereWatches) {
    const auto room = twelve_pairs(true);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"link-overfull", 1}, {"querier-place", 1}}));
    EXPECT_THAT(sentence(room, "link-overfull"), testing::AllOf(HasSubstr("10.8 Gb/s"), HasSubstr("108")));
    EXPECT_EQ(found_by_rule(twelve_pairs(false).b.design), Found{});
}

/// Six pairs of 200 Mb/s on one switch that nobody asks.
FieldRoom unasked(UnknownGroups mode) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1", [&](auto& type) { mode_of(type, mode); });
    for (int i = 0; i < 6; ++i) room.decoder(bridge, room.encoder(bridge, 200_Mbps));
    return room;
}

// Flooded, a decoder's port gets 6 x 200 Mb/s = 120 % of 1 Gb/s, an encoder's the five of the others: full, not over.
TEST(FieldCases, F03NoQuerierWithFlooding) {
    const auto room = unasked(UnknownGroups::flood);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"link-overfull", 12}, {"no-querier", 1}}));
    int errors = 0;
    for (const auto& finding : analyse_findings(room.b.design))
        errors += finding.rule == "link-overfull" && finding.severity == Severity::error ? 1 : 0;
    EXPECT_EQ(errors, 6);
    EXPECT_THAT(sentence(room, "no-querier"), HasSubstr("260 s"));
}

TEST(FieldCases, F03NoQuerierWithDropping) {
    const auto room = unasked(UnknownGroups::drop);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"no-querier", 1}}));
    EXPECT_THAT(sentence(room, "no-querier"), testing::AllOf(HasSubstr("260 s"), HasSubstr("black")));
}

/// Switches in a row, the first asking without an address; encoder on the first, decoder on the last.
FieldRoom asked_from_zero(int switches) {
    FieldRoom room;
    std::vector<model::DeviceId> row;
    for (int i = 1; i <= switches; ++i) {
        row.push_back(room.add_switch("SW-" + std::to_string(i)));
        if (i > 1) room.trunk(row[row.size() - 2], row.back());
    }
    room.b.querier(row.front(), room.vlan);
    room.b.change<model::Device>(row.front(), [](auto& device) { device.bridging.priority = 4096; });
    room.decoder(row.back(), room.encoder(row.front(), 200_Mbps));
    return room;
}

TEST(FieldCases, F04QuerierWithoutAnAddress) {
    const auto room = asked_from_zero(3);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"querier-without-address", 1}}));
    EXPECT_EQ(finding_of(room.b.design, "querier-without-address").severity, Severity::error);
    const auto given = cured(room.b.design, finding_of(room.b.design, "querier-without-address"));
    EXPECT_EQ(found_by_rule(given), Found{});
    const auto alone = asked_from_zero(1);
    EXPECT_EQ(found_by_rule(alone.b.design), (Found{{"querier-without-address", 1}}));
    EXPECT_EQ(finding_of(alone.b.design, "querier-without-address").severity, Severity::advice);
}

TEST(FieldCases, F06TwoGroupsOneMacAddress) {
    FieldRoom room;
    const auto bridge =
        room.add_switch("SW-1", [](auto& type) { type.bridging->lookup = catalogue::GroupLookup::mac; });
    room.querier(bridge);
    room.decoder(bridge, room.encoder(bridge, 850_Mbps, "239.1.1.1"));
    room.decoder(bridge, room.encoder(bridge, 850_Mbps, "239.129.1.1"));
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"groups-share-mac", 1}, {"link-overfull", 2}}));
    EXPECT_THAT(sentence(room, "groups-share-mac"), HasSubstr("01-00-5E-01-01-01"));
    EXPECT_THAT(sentence(room, "link-overfull"), testing::AllOf(HasSubstr("1.7 Gb/s"), HasSubstr("170")));
}

// 8 channels x 3 octets x 48 samples = 1,152 octets every millisecond: 9.84 Mb/s each on the wire, 393.6 Mb/s in all.
TEST(FieldCases, F07GroupsOnTheReservedMacAddresses) {
    FieldRoom room;
    const auto bridge =
        room.add_switch("SW-1", [](auto& type) { type.bridging->lookup = catalogue::GroupLookup::mac; });
    room.querier(bridge);
    const auto first = room.encoder(bridge, 100_Mbps, "239.0.0.1");
    const auto sound = [&](model::StreamId id) {
        room.b.change<model::Stream>(id, [](auto& row) {
            row.kind = catalogue::StreamKind::audio;
            row.payload_rate = 9'216'000_bps;
            row.payload_octets = 1152;
        });
    };
    sound(first);
    for (int i = 2; i <= 40; ++i)
        sound(room.b.stream(room.last_encoder, 9'216'000_bps, "239.0.0." + std::to_string(i)));
    auto touch = types::make_decoder();
    touch.key = {"touch-panel"};
    touch.codec->most_rate.reset();
    const auto panel = room.decoder(bridge, {}, std::make_shared<const catalogue::DeviceType>(touch));
    room.b.port(port_of(panel, "net"), [](auto& row) { row.rate_limit = 100_Mbps; });
    EXPECT_EQ(found_by_rule(room.b.design),
              (Found{{"burst-into-slower-port", 1}, {"group-reserved", 40}, {"link-overfull", 1}}));
    EXPECT_THAT(sentence(room, "link-overfull"), testing::AllOf(HasSubstr("393.6 Mb/s"), HasSubstr("393.6 %")));
}

/// Encoders of five streams each and as many decoders of five inputs, all on one switch with a table of 512 groups.
FieldRoom with_groups(int encoders) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1", [](auto& type) {
        type.ports = types::make_switch(300, 1_Gbps, 0).ports;
        type.bridging->group_table_size = 512;
        type.bridging->poe_budget = 10000_W;
    });
    room.querier(bridge);
    auto decoder_type = types::make_decoder();
    decoder_type.key = {"five-inputs"};
    decoder_type.codec->inputs.clear();
    for (int k = 0; k < 5; ++k)
        decoder_type.codec->inputs.push_back({{"in-" + std::to_string(k)}, "Input", catalogue::StreamKind::video});
    const auto shared_type = std::make_shared<const catalogue::DeviceType>(decoder_type);
    for (int i = 0; i < encoders; ++i) {
        const auto group = [&](int k) { return "239.192." + std::to_string(10 + k) + '.' + std::to_string(i + 1); };
        std::vector<model::StreamId> streams{room.encoder(bridge, 10_Mbps, group(0))};
        for (int k = 1; k < 5; ++k) streams.push_back(room.b.stream(room.last_encoder, 10_Mbps, group(k)));
        const auto decoder = room.decoder(bridge, {}, shared_type);
        for (int k = 0; k < 5; ++k)
            room.b.subscribe(room.preset, streams[static_cast<std::size_t>(k)], decoder, "in-" + std::to_string(k));
    }
    return room;
}

// 128 encoders x 5 groups = 640 of 512: 128 too many. 480 are 94 %; 400 are 78 %, below four fifths.
TEST(FieldCases, F08SnoopingTableFull) {
    const auto full = with_groups(128);
    EXPECT_EQ(found_by_rule(full.b.design), (Found{{"snooping-table-full", 1}}));
    EXPECT_EQ(finding_of(full.b.design, "snooping-table-full").severity, Severity::error);
    EXPECT_THAT(sentence(full, "snooping-table-full"),
                testing::AllOf(HasSubstr("640 groups"), HasSubstr("holds 512: 128 too many")));
    const auto near = with_groups(96);
    EXPECT_EQ(found_by_rule(near.b.design), (Found{{"snooping-table-full", 1}}));
    EXPECT_EQ(finding_of(near.b.design, "snooping-table-full").severity, Severity::warning);
    EXPECT_THAT(sentence(near, "snooping-table-full"), HasSubstr("93.7"));
    EXPECT_EQ(found_by_rule(with_groups(80).b.design), Found{});
}

/// Cores A and B joined by 2 x 10 Gb/s, an old switch L of 1 Gb/s to both; eight streams of 850 Mb/s from A to B.
FieldRoom lectern_root(std::optional<int> a_priority, std::optional<int> b_priority) {
    FieldRoom room;
    const auto l = room.add_switch("SW-L"), a = room.add_switch("SW-A"), end = room.add_switch("SW-B");
    room.querier(end);
    const std::tuple<model::DeviceId, std::optional<int>, std::uint64_t> plans[] = {
        {l, {}, 1}, {a, a_priority, 0x0A}, {end, b_priority, 0x0B}};
    for (const auto& [id, priority, address] : plans)
        room.b.change<model::Device>(id, [&, priority = priority, address = address](auto& row) {
            row.bridging.priority = priority;
            row.bridging.address = base::MacAddress{address};
        });
    for (int i = 0; i < 2; ++i) room.trunk(a, end);
    for (const auto id : {a, end})
        for (const char* cage : {"s1", "s2"}) room.b.port(port_of(id, cage), [](auto& row) { row.aggregate = "core"; });
    for (const auto id : {a, end}) room.b.cable(types::cat6a(), room.next_port(l), room.next_port(id), 30_m);
    for (int i = 0; i < 8; ++i) room.decoder(end, room.encoder(a, 850_Mbps));
    return room;
}

TEST(FieldCases, F11TheLecternSwitchBecomesRoot) {
    const auto room = lectern_root({}, {});
    EXPECT_EQ(found_by_rule(room.b.design),
              (Found{{"link-overfull", 2}, {"root-left-to-chance", 1}, {"tree-on-slow-link", 1}}));
    EXPECT_THAT(sentence(room, "root-left-to-chance"), HasSubstr("SW-L is root of the spanning tree by chance"));
    EXPECT_THAT(sentence(room, "tree-on-slow-link"), HasSubstr("20 Gb/s) stands blocked"));
    EXPECT_THAT(sentence(room, "link-overfull"), testing::AllOf(HasSubstr("6.8 Gb/s"), HasSubstr("680")));
    EXPECT_EQ(found_by_rule(cured(room.b.design, finding_of(room.b.design, "root-left-to-chance"))), Found{});
    EXPECT_EQ(found_by_rule(lectern_root(4096, 8192).b.design), Found{});
}

// The marks of F13: an endpoint's port is an edge port with BPDU guard; loop guard belongs on trunks, and excludes
// both.
TEST(FieldCases, F13MarksOfTheTree) {
    FieldRoom room;
    const auto near = room.add_switch("SW-A"), far = room.add_switch("SW-B");
    room.trunk(near, far);
    room.querier(near);
    room.decoder(far, room.encoder(near, 200_Mbps));
    const auto mark = [&](model::DeviceId bridge, const char* port, bool endpoint, bool trunk) {
        room.b.port(port_of(bridge, port), [&](auto& row) {
            row.edge = row.bpdu_guard = endpoint;
            row.loop_guard = trunk;
        });
    };
    mark(near, "1", true, false);
    mark(near, "s1", false, true);
    EXPECT_EQ(found_by_rule(room.b.design), Found{});
    mark(near, "1", true, true);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"guards-clash", 1}}));
    mark(near, "1", true, false);
    mark(near, "s1", true, false);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"edge-port-to-bridge", 1}}));
}

/// Six decoders, each on the second port of the one before.
FieldRoom chain_of_six(bool same_stream) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1");
    room.querier(bridge);
    auto before = room.next_port(bridge);
    std::optional<model::StreamId> stream;
    for (int i = 1; i <= 6; ++i) {
        const auto decoder = room.with_display(
            std::make_shared<const catalogue::DeviceType>(types::make_chained_decoder()), "CHAIN-" + std::to_string(i));
        room.b.cable(types::cat6a(), before, port_of(decoder, "net"), 10_m);
        before = port_of(decoder, "aux");
        if (!stream || !same_stream) stream = room.encoder(bridge, 200_Mbps);
        room.b.subscribe(room.preset, *stream, decoder);
    }
    return room;
}

TEST(FieldCases, F14ChainedEndpointsOverloadTheFirstLink) {
    const auto room = chain_of_six(false);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"daisy-chain-overfull", 1}}));
    EXPECT_THAT(sentence(room, "daisy-chain-overfull"), testing::AllOf(HasSubstr("1.2 Gb/s"), HasSubstr("120")));
    EXPECT_EQ(found_by_rule(chain_of_six(true).b.design), Found{});
}

// A preview of 6 Mb/s: its VLAN is tagged at the port of an access point. Snooping keeps it back until somebody behind
// the access point asks; where the port is a router port it is there at once.
TEST(FieldCases, F19MulticastOverWiFi) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1");
    room.querier(bridge);
    room.decoder(bridge, room.encoder(bridge, 6_Mbps, "239.3.3.3"));
    auto type = *types::display();
    type.key = {"access-point"};
    type.kind = catalogue::DeviceKind::other;
    type.ports = {types::make_network_port("net", {1_Gbps})};
    const auto guests = room.b.vlan(70, "Guests");
    room.b.change<model::Vlan>(guests, [](auto& row) { row.purpose = model::VlanPurpose::wireless; });
    const auto port = room.next_port(bridge);
    room.b.cable(types::cat6a(), port_of(room.b.device(type, "AP-2"), "net"), port, 20_m);
    room.b.port(port, [&](auto& row) { row.untagged = guests; });
    EXPECT_EQ(found_by_rule(room.b.design), Found{});
    room.b.port(port, [&](auto& row) { row.tagged = {room.vlan}; });
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"vlan-leaks", 1}}));
    EXPECT_EQ(finding_of(room.b.design, "vlan-leaks").severity, Severity::warning);
    room.b.port(port, [](auto& row) { row.router_port = true; });
    EXPECT_EQ(finding_of(room.b.design, "vlan-leaks").severity, Severity::error);
    EXPECT_THAT(sentence(room, "vlan-leaks"), HasSubstr("AP-2"));
}

/// One pair, the encoder on a lead of two pairs: 100 Mb/s.
FieldRoom on_two_pairs(base::BitRate wire) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1");
    room.querier(bridge);
    const auto stream = room.encoder(bridge, wire);
    const auto lead = room.last_cable;
    room.decoder(bridge, stream);
    auto thin = *types::cat6a();
    thin.key = {"two-pairs"};
    thin.pairs = 2;
    room.b.embed(std::make_shared<const catalogue::CableType>(thin));
    auto encoder = *types::encoder();
    for (auto& port : encoder.ports)
        if (port.key == catalogue::PortKey{"net"}) port.rates = {100_Mbps, 1_Gbps};
    room.b.embed(std::make_shared<const catalogue::DeviceType>(encoder));
    room.b.change<model::Cable>(lead, [](auto& row) { row.type = {"two-pairs"}; });
    return room;
}

TEST(FieldCases, F29GigabitEndpointOnTwoPairs) {
    const auto broken = on_two_pairs(850_Mbps);
    EXPECT_EQ(found_by_rule(broken.b.design), (Found{{"link-slower-than-stream", 1}}));
    const auto tight = on_two_pairs(95_Mbps);
    EXPECT_EQ(found_by_rule(tight.b.design), (Found{{"link-overfull", 1}}));
    EXPECT_EQ(finding_of(tight.b.design, "link-overfull").severity, Severity::warning);
    EXPECT_EQ(found_by_rule(on_two_pairs(50_Mbps).b.design), Found{});
}

// Accepted with 2 of 24 sources live: 9 % of the uplink; all 24 can be routed over it: 10.8 of 10 Gb/s.
TEST(FieldCases, F52AcceptedWithTwoStreamsOpenedWithTwentyFour) {
    FieldRoom room;
    const auto near = room.add_switch("SW-A"), far = room.add_switch("SW-B");
    room.trunk(near, far);
    room.querier(far);  // decoders' side
    room.b.change<model::Device>(far, [](auto& row) { row.bridging.queriers.clear(); });
    room.b.address(near, "10.30.0.2", room.vlan);
    room.b.querier(near, room.vlan, "10.30.0.2");
    for (int i = 0; i < 24; ++i) {
        const auto stream = room.encoder(near, 450_Mbps);
        room.decoder(far, i < 2 ? std::optional(stream) : std::nullopt);
    }
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"link-overfull-worst-case", 1}}));
    EXPECT_THAT(sentence(room, "link-overfull-worst-case"), testing::AllOf(HasSubstr("10.8 Gb/s"), HasSubstr("108")));
}

}  // namespace streamwright::test::field_network_cases_test
