// Latency of subscriptions by hand arithmetic. A packet of 1400 octets: RTP 12, UDP 8, IPv4 20 make an IP packet of
// 1440; header and check 18 a frame of 1458; preamble and gap 20 make 1478 on the wire. Copper takes 5.45 ns a metre,
// fibre 4.9 (rows LAT-026 and LAT-024 of tests/reference).
#include "core/analysis/latency.h"

#include "core/analysis/analyser.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::test::latency_test {

using namespace base::literals;
using base::Duration;

Duration ns(std::int64_t count) { return Duration::from_count(count); }

/// Two encoders and a decoder on SW-A, two decoders on SW-B; the first stream on DEC-1 and DEC-2, the second on DEC-3.
struct Venue {
    DesignBuilder b{9};
    model::VlanId vlan = b.vlan(1, "AV", "10.1.0.0/24");
    model::DeviceId a = b.device(types::switch_24(), "SW-A"), far = b.device(types::switch_24(), "SW-B");
    model::PresetId preset = b.preset("Lecture");
    model::DeviceId encoder{0}, near_decoder{0}, far_decoder{0}, other_decoder{0};
    model::CableId trunk{0};
    model::StreamId shown{0}, other{0};

    Venue() {
        auto sends = *types::encoder();
        sends.codec->encode_latency = 8_ms;
        auto shows = *types::decoder();
        shows.codec->decode_latency = 9_ms;
        const auto hang = [&](const catalogue::DeviceType& type, const std::string& tag, model::DeviceId bridge,
                              const std::string& port, base::Length length) {
            const auto id = b.device(type, tag);
            b.cable(types::cat6a(), port_of(id, "net"), port_of(bridge, port), length);
            return id;
        };
        b.usual_vlan(vlan);
        b.querier(a, vlan, "10.1.0.2");
        trunk = b.cable(types::cat6a(), port_of(a, "24"), port_of(far, "24"), 10_m);
        encoder = hang(sends, "ENC-1", a, "1", 30_m);
        const auto second = hang(sends, "ENC-2", a, "2", 30_m);
        near_decoder = hang(shows, "DEC-2", a, "3", 20_m);
        far_decoder = hang(shows, "DEC-1", far, "1", 50_m);
        other_decoder = hang(shows, "DEC-3", far, "2", 40_m);
        shown = b.stream(encoder, 100_Mbps, "239.192.1.1");
        other = b.stream(second, 100_Mbps, "239.192.1.2");
        b.subscribe(preset, shown, far_decoder);
        b.subscribe(preset, shown, near_decoder);
        b.subscribe(preset, other, other_decoder);
    }
    std::vector<analysis::SubscriptionLatency> all() const {
        return analysis::find_latencies(analysis::analyse(b.design).facts);
    }
    analysis::SubscriptionLatency at(model::DeviceId decoder) const {
        const auto found = analysis::find_latencies(analysis::analyse(b.design).facts, decoder);
        EXPECT_EQ(found.size(), 1u);
        return found.at(0);
    }
};

TEST(Latency, OverTwoSwitchesByHand) {
    const Venue v;
    const auto far = v.at(v.far_decoder);
    EXPECT_EQ(far.parts.encoding, 8_ms);
    EXPECT_EQ(far.parts.serialising, ns(34'992));  // three lines of 1 Gb/s: 3 x 1458 x 8
    EXPECT_EQ(far.parts.switching, ns(8'000));     // two switches of 4 us
    EXPECT_EQ(far.parts.queueing, ns(11'824));     // on the trunk one packet of the other stream: 1478 x 8
    EXPECT_EQ(far.parts.propagation, ns(491));     // 30 + 10 + 50 m: 90 x 5.45 = 490.5, rounded up
    EXPECT_EQ(far.parts.decoding, 9_ms);
    EXPECT_EQ(far.most, ns(17'055'307));     // 17,055,306.5
    EXPECT_EQ(far.way_most, ns(9'055'307));  // without encoding
    EXPECT_EQ(far.way_least, ns(9'043'482));
}

TEST(Latency, SkewIsTheLatestLessTheEarliest) {
    // DEC-2: two lines 23,328, one switch 4,000, 50 m 272.5: 9,027,600.5 ns from the encoder on, and nothing queues.
    const Venue v;
    const auto near = v.at(v.near_decoder);
    EXPECT_EQ(near.way_least, ns(9'027'600));
    EXPECT_EQ(near.way_most, ns(9'027'601));
    const auto all = v.all();
    ASSERT_EQ(all.size(), 3u);
    for (const auto& each : all) {
        if (each.stream == v.shown) {
            EXPECT_EQ(analysis::skew(all, each), ns(9'055'307 - 9'027'600));
        } else {
            EXPECT_EQ(analysis::skew(all, each), std::nullopt) << "only one shows it";
        }
    }
}

TEST(Latency, WhatIsNotKnownMakesTheSumNotKnown) {
    Venue v;
    v.b.change<model::Cable>(v.trunk, [](auto& row) { row.length.reset(); });
    auto far = v.at(v.far_decoder);
    EXPECT_EQ(far.parts.propagation, std::nullopt);
    EXPECT_EQ(far.parts.serialising, ns(34'992)) << "the rest is known";
    EXPECT_EQ(far.most, std::nullopt);
    EXPECT_EQ(far.way_most, std::nullopt);
    const auto all = v.all();
    EXPECT_EQ(analysis::skew(all, all.front()), std::nullopt);

    Venue silent;
    auto type = *types::switch_24();
    type.bridging->forwarding_latency.reset();
    silent.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    EXPECT_EQ(silent.at(silent.far_decoder).parts.switching, std::nullopt);
    EXPECT_EQ(silent.at(silent.far_decoder).most, std::nullopt);

    Venue plain;
    plain.b.embed(types::encoder());
    EXPECT_EQ(plain.at(plain.far_decoder).most, std::nullopt) << "the encoder's type states nothing";
    EXPECT_EQ(plain.at(plain.far_decoder).way_most, ns(9'055'307));
}

TEST(Latency, AnOverfullLineHasNoBound) {
    Venue v;
    for (const auto id : {v.shown, v.other})
        v.b.change<model::Stream>(id, [](auto& row) { row.payload_rate = 500_Mbps; });
    const auto far = v.at(v.far_decoder);  // 2 x 500 x 1478 / 1400 = 1055.7 Mb/s on the trunk
    EXPECT_EQ(far.parts.queueing, std::nullopt);
    EXPECT_EQ(far.most, std::nullopt);
    EXPECT_TRUE(far.way_least);
}

TEST(Latency, NothingIsKnownWhereTheStreamDoesNotArrive) {
    Venue v;
    v.b.design.cables.erase(v.trunk);
    const auto far = v.at(v.far_decoder);
    EXPECT_EQ(far.parts.serialising, std::nullopt);
    EXPECT_EQ(far.most, std::nullopt);
}

TEST(Latency, FibreIsFasterAndATenthOfTheTimeOnALineTenTimesAsFast) {
    Venue v;
    v.b.design.cables.erase(v.trunk);
    const auto sr = types::module_sr();
    v.b.embed(sr);
    for (const auto id : {v.a, v.far}) v.b.port(port_of(id, "s1"), [&](auto& row) { row.module = sr->key; });
    v.b.cable(types::om3(), port_of(v.a, "s1"), port_of(v.far, "s1"), 100_m);
    const auto far = v.at(v.far_decoder);
    // Two lines of 1 Gb/s and one of 10: 23,328 + 1,166.4; queueing 1,182.4; 80 m x 5.45 + 100 m x 4.9 = 926.
    EXPECT_EQ(far.parts.serialising, ns(24'495));
    EXPECT_EQ(far.parts.queueing, ns(1'183));
    EXPECT_EQ(far.parts.propagation, ns(926));
    EXPECT_EQ(far.most, ns(17'034'603));  // 17,000,000 + 24,494.4 + 8,000 + 1,182.4 + 926 = 17,034,602.8
}

}  // namespace streamwright::test::latency_test
