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
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"group-reserved", 40}, {"link-overfull", 1}}));
    EXPECT_THAT(sentence(room, "link-overfull"), testing::AllOf(HasSubstr("393.6 Mb/s"), HasSubstr("393.6 %")));
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
