#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::link_overfull_worst_case_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// A 1 Gb/s copper trunk; `count` encoders of that payload on SW-A, as many decoders on SW-B, nothing subscribed.
CleanDesign unrouted(int count, base::BitRate payload) {
    auto c = clean_design();
    c.b.design.subscriptions = {};
    c.b.design.cables.erase(c.trunk);
    c.b.change<model::Settings>({}, [](auto& row) { row.headroom_percent = 100; });
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.port(port_of(id, "12"), [&](auto& row) { row.tagged = {c.second}; });
    c.b.cable(types::cat6a(), port_of(c.switch_a, "12"), port_of(c.switch_b, "12"), 30_m);
    for (const auto id : {c.stream, c.stream2})
        c.b.change<model::Stream>(id, [](auto& row) { row.payload_rate = 1_Mbps; });
    for (int i = 3; i < 3 + count; ++i) {
        const auto number = std::to_string(i);
        const auto encoder = c.b.device(types::encoder(), "ENC-" + number);
        const auto source = c.b.device(types::source(), "SRC-" + number);
        const auto decoder = c.b.device(types::decoder(), "DEC-" + number);
        const auto display = c.b.device(types::display(), "DSP-" + number);
        c.b.cable(types::hdmi(), port_of(source, "out"), port_of(encoder, "in"), 2_m);
        c.b.cable(types::hdmi(), port_of(decoder, "out"), port_of(display, "in"), 2_m);
        c.b.cable(types::cat6a(), port_of(encoder, "net"), port_of(c.switch_a, number), 20_m);
        c.b.cable(types::cat6a(), port_of(decoder, "net"), port_of(c.switch_b, number), 20_m);
        c.b.stream(encoder, payload, "239.192.2." + number);
    }
    return c;
}

TEST(LinkOverfullWorstCase, firesWhereSomeRoutingOverfills) {
    // Common practice: k encoders on one switch, k decoders on another need the sum of the k largest rates as one link.
    // Four decoders on the usual VLAN: 3 x 320 + 1 Mb/s of payload x 1478 / 1400 = 1014.6 Mb/s of 1 Gb/s (and the
    // tagged 1 Mb/s stream beside it).
    const auto c = unrouted(3, 320_Mbps);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("link-overfull-worst-case"));
    const auto finding = finding_of(c.design(), "link-overfull-worst-case");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.limit, base::Value(1_Gbps));
    // (3 x 320 + 1) x 1478 / 1400 + 1 x 1482 / 1400 Mb/s, rounded up: the rates above by hand.
    EXPECT_EQ(finding.measured, base::Value(1'015'600'000_bps));
}

TEST(LinkOverfullWorstCase, isSilentWhereEveryRoutingFits) {
    EXPECT_THAT(rules_found(unrouted(3, 310_Mbps).design()), IsEmpty());  // 983.9 Mb/s
}

TEST(LinkOverfullWorstCase, leavesWhatAPresetAlreadyShowsToIt) {
    auto c = unrouted(3, 320_Mbps);
    const auto stream_of = [&](const std::string& tag) {
        for (const auto& row : c.design().streams)
            if (c.design().devices.find(row.encoder)->tag == tag) return row.id;
        return model::StreamId(0);
    };
    for (const auto& device : c.design().devices)
        for (const auto* number : {"3", "4", "5"})
            if (device.tag == std::string("DEC-") + number)
                c.b.subscribe(c.preset, stream_of(std::string("ENC-") + number), device.id);
    c.b.subscribe(c.preset, c.stream, c.decoder);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("link-overfull"));
}

TEST(LinkOverfullWorstCase, warnsAboveTheHeadroom) {
    auto c = unrouted(3, 310_Mbps);
    c.b.change<model::Settings>({}, [](auto& row) { row.headroom_percent = 80; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("link-overfull-worst-case"));
    EXPECT_EQ(finding_of(c.design(), "link-overfull-worst-case").severity, Severity::warning);
}

TEST(LinkOverfullWorstCase, namesARoutingAndMakesItAPreset) {
    const auto c = unrouted(3, 320_Mbps);
    const auto finding = finding_of(c.design(), "link-overfull-worst-case");
    const auto terms = terms_of(c.design(), finding);
    EXPECT_THAT(terms.back(), testing::StartsWith("A routing that does it: these 5 sources ("));
    const auto tried = cured(c.design(), finding);
    EXPECT_EQ(tried.presets.size(), c.design().presets.size() + 1);
    EXPECT_EQ(tried.subscriptions.size(), 5U);
    EXPECT_THAT(rules_found(tried), ElementsAre("link-overfull"));  // the preset shows it now
    EXPECT_EQ(finding_of(tried, "link-overfull").measured, finding.measured);
}

TEST(LinkOverfullWorstCase, saysWhereRoutingNothingIsEnough) {
    auto c = unrouted(3, 320_Mbps);
    for (const auto id : {c.switch_a, c.switch_b}) {
        auto type = *c.design().type_of(*c.design().devices.find(id));
        type.key = {"test.floods"};
        type.bridging->unknown_groups = catalogue::UnknownGroups::flood;
        c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
        c.b.change<model::Device>(id, [](auto& row) { row.type = {"test.floods"}; });
    }
    c.b.design.presets = {};
    const auto finding = finding_of(c.design(), "link-overfull-worst-case");
    EXPECT_THAT(terms_of(c.design(), finding).back(), testing::StartsWith("Routing nothing is enough"));
    EXPECT_THAT(finding.remedies, IsEmpty());
}

}  // namespace streamwright::test::link_overfull_worst_case_test
