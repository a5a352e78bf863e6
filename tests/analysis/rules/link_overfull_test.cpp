#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::link_overfull_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// The trunk is one copper link of 1 Gb/s; each of the two streams across it has that payload.
CleanDesign two_streams(base::BitRate first, base::BitRate second) {
    auto c = clean_design();
    c.b.design.cables.erase(c.trunk);
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.port(port_of(id, "12"), [&](auto& row) { row.tagged = {c.second}; });
    c.b.cable(types::cat6a(), port_of(c.switch_a, "12"), port_of(c.switch_b, "12"), 30_m);
    c.b.change<model::Stream>(c.stream, [&](auto& row) { row.payload_rate = first; });
    c.b.change<model::Stream>(c.stream2, [&](auto& row) { row.payload_rate = second; });
    return c;
}

TEST(LinkOverfull, firesJustAboveTheCapacity) {
    // Wire octets a packet: 1478 untagged, 1482 tagged (IEEE 802.3, 802.1Q). 500 Mb/s x 1478 / 1400 = 527 857 142.86 on
    // the untagged VLAN; of 1 Gb/s 472 142 857.14 are left, x 1400 / 1482 = 446 018 893.4 of payload on the tagged one.
    auto full = two_streams(500_Mbps, 446'018'893_bps);
    EXPECT_THAT(rules_found(full.design()), ElementsAre("link-overfull"));
    EXPECT_EQ(finding_of(full.design(), "link-overfull").severity, Severity::warning) << "above the headroom of 80 %";
    auto over = two_streams(500_Mbps, 446'018'894_bps);
    EXPECT_THAT(rules_found(over.design()), ElementsAre("link-overfull"));
    const auto finding = finding_of(over.design(), "link-overfull");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.limit, base::Value(1_Gbps));
    EXPECT_EQ(finding.measured, base::Value(1'000'000'001_bps));
    EXPECT_EQ(finding.terms.size(), 2u);
}

TEST(LinkOverfull, warnsJustAboveTheHeadroom) {
    // 80 % of 1 Gb/s less 527 857 142.86 leaves 272 142 857.14, x 1400 / 1482 = 257 085 020.2 of payload.
    EXPECT_THAT(rules_found(two_streams(500_Mbps, 257'085'020_bps).design()), IsEmpty());
    EXPECT_THAT(rules_found(two_streams(500_Mbps, 257'085'021_bps).design()), ElementsAre("link-overfull"));
}

TEST(LinkOverfull, countsAStreamOnceHoweverManyWatch) {
    auto c = two_streams(500_Mbps, 100_Mbps);
    const auto third = c.b.device(types::decoder(), "DEC-3"), display = c.b.device(types::display(), "DSP-3");
    c.b.cable(types::hdmi(), port_of(third, "out"), port_of(display, "in"), 2_m);
    c.b.cable(types::cat6a(), port_of(third, "net"), port_of(c.switch_b, "3"), 20_m);
    c.b.subscribe(c.preset, c.stream, third);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(LinkOverfull, TellsADirectionOnceAndCountsItsOtherPresets) {
    auto c = two_streams(500_Mbps, 446'018'894_bps);
    for (const char* name : {"second", "third"}) {
        const auto preset = c.b.preset(name);
        c.b.subscribe(preset, c.stream, c.decoder);
        c.b.subscribe(preset, c.stream2, c.decoder2);
    }
    c.b.subscribe(c.b.preset("quiet"), c.stream, c.decoder);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("link-overfull"));
    const auto terms = terms_of(c.design(), finding_of(c.design(), "link-overfull"));
    EXPECT_EQ(terms.back(), "too full in other presets as well: 2");
}

TEST(LinkOverfull, firesTowardAQuerierWhereNobodyWatches) {
    // Field case F01: 12 encoders of 0.9 Gb/s on the wire, the querier beyond the uplink, no receiver there: 10.8 of
    // 10 Gb/s, 108 %; with the querier on their own switch nothing.
    auto c = clean_design();
    c.b.design.subscriptions = {};
    c.b.change<model::Settings>({}, [](auto& row) { row.headroom_percent = 100; });
    for (int i = 3; i <= 14; ++i) {
        const auto number = std::to_string(i);
        const auto encoder = c.b.device(types::encoder(), "ENC-" + number);
        const auto source = c.b.device(types::source(), "SRC-" + number);
        c.b.cable(types::hdmi(), port_of(source, "out"), port_of(encoder, "in"), 2_m);
        c.b.cable(types::cat6a(), port_of(encoder, "net"), port_of(c.switch_b, number), 20_m);
        // 0.9 Gb/s on the wire: 0.9 x 1400 / 1478 of payload, rounded down to whole bits.
        c.b.stream(encoder, 852'503'382_bps, "239.192.2." + number);
    }
    EXPECT_THAT(rules_found(c.design()), ElementsAre("link-overfull"));
    const auto finding = finding_of(c.design(), "link-overfull");
    EXPECT_NE(english_sentence(c.design(), finding).find("108"), std::string::npos)
        << english_sentence(c.design(), finding);
    c.b.change<model::Device>(c.switch_a,
                              [](auto& row) { row.bridging.queriers.erase(row.bridging.queriers.begin()); });
    c.b.querier(c.switch_b, c.usual, "10.30.0.2");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(LinkOverfull, isSilentWithoutAPreset) {
    auto c = two_streams(700_Mbps, 700_Mbps);
    c.b.design.subscriptions = {};
    c.b.design.presets = {};
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "link-overfull"), 0);
}

}  // namespace streamwright::test::link_overfull_test
