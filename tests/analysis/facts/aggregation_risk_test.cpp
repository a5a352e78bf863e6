// Where streams fall on the members of a group, against the field case's figures and the octets worked out by hand.
#include "core/analysis/facts/aggregation_risk.h"

#include "core/analysis/analyser.h"
#include "tests/cases/field_room.h"

#include <gtest/gtest.h>

namespace streamwright::test::aggregation_risk_test {

using catalogue::MemberChoice;
using namespace base::literals;

struct Grouped {
    FieldRoom room;
    std::vector<model::StreamId> streams;
};

/// Field case F10: 4 x 10 Gb/s from A to B, 16 encoders of 850 Mb/s on the wire, groups `step` apart.
Grouped four_members(int step, int count = 16) {
    Grouped grouped;
    auto& room = grouped.room;
    const auto change = [](auto& type) { type.bridging->member_by = {{MemberChoice::destination_mac}}; };
    const auto a = room.add_switch("SW-A", change), b = room.add_switch("SW-B", change);
    room.querier(a);
    for (int i = 1; i <= 4; ++i) {
        room.trunk(a, b);
        for (const auto id : {a, b})
            room.b.port(port_of(id, "s" + std::to_string(i)), [](auto& row) { row.aggregate = "trunk"; });
    }
    for (int i = 1; i <= count; ++i) {
        grouped.streams.push_back(room.encoder(a, 850_Mbps, "239.10.0." + std::to_string(step * i)));
        room.decoder(b, grouped.streams.back());
    }
    return grouped;
}

std::vector<int> on_members(const model::Design& design) {
    const auto analysis = analysis::analyse(design);
    const auto& groups = analysis.facts.get<analysis::AggregationRisk>().groups;
    for (const auto& group : groups)
        if (group.preset) return group.preset->streams;
    return {};
}

// 4k mod 4 = 0 for every k: the first member carries all. One apart, four fall on each.
TEST(AggregationRisk, stepsOfFourMeetOnOneMember) {
    EXPECT_EQ(on_members(four_members(4).room.b.design), (std::vector<int>{16, 0, 0, 0}));
    EXPECT_EQ(on_members(four_members(1).room.b.design), (std::vector<int>{4, 4, 4, 4}));
}

TEST(AggregationRisk, worksOutTheWorstCaseToo) {
    const auto grouped = four_members(4);
    const auto analysis = analysis::analyse(grouped.room.b.design);
    const auto& groups = analysis.facts.get<analysis::AggregationRisk>().groups;
    ASSERT_EQ(groups.size(), 1u) << "nothing flows from B to A";
    ASSERT_TRUE(groups.front().worst);
    EXPECT_EQ(groups.front().worst->streams, (std::vector<int>{16, 0, 0, 0}));
    EXPECT_EQ(groups.front().worst->fullest(), 0);
    // 16 streams of 850 Mb/s less the rounding of their payloads to whole bits.
    EXPECT_NEAR(static_cast<double>(groups.front().worst->loads.front().ceil().count()), 13.6e9, 100);
}

// The last octets by hand: group 239.10.0.5 has the MAC address 01-00-5E-0A-00-05 (RFC 1112 6.4), port 5004 is 0x138C.
TEST(AggregationRisk, mixesTheOctetsThatTheTypeNames) {
    auto grouped = four_members(5, 1);
    auto& b = grouped.room.b;
    b.change<model::Device>(grouped.room.last_encoder, [](auto& row) {
        row.addresses = {
            {std::nullopt, std::nullopt, base::parse_ipv4("10.30.0.7"), base::parse_mac("02-00-00-00-00-0E")}};
    });
    const auto member = [&](std::vector<MemberChoice> choice) {
        for (const auto& type : b.design.device_types) {
            auto row = *type.type;
            if (!row.bridging) continue;
            row.bridging->member_by = choice;
            b.embed(std::make_shared<const catalogue::DeviceType>(row));
        }
        const auto wiring = graph::wire(b.design);
        const auto network = graph::build_network(wiring, graph::find_runs(wiring));
        return analysis::member_of_stream(wiring, network, 0, *b.design.streams.find(grouped.streams.front()), 4);
    };
    EXPECT_EQ(member({MemberChoice::destination_mac}), 5 % 4);
    EXPECT_EQ(member({MemberChoice::destination_ip}), 5 % 4);
    EXPECT_EQ(member({MemberChoice::source_ip}), 7 % 4);
    EXPECT_EQ(member({MemberChoice::source_mac, MemberChoice::destination_mac}), (0x0E ^ 0x05) % 4);
    EXPECT_EQ(member({MemberChoice::source_ip, MemberChoice::destination_ip, MemberChoice::destination_port}),
              (0x07 ^ 0x05 ^ 0x8C) % 4);
    EXPECT_EQ(member({}), 0);
}

}  // namespace streamwright::test::aggregation_risk_test
