#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::link_slower_than_stream_test {

using testing::ElementsAre;
using namespace base::literals;

/// Field case F29: a decoder port set to 100 Mb/s, a stream of that payload.
model::Design behind_slow_port(base::BitRate payload) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "1"), [](auto& row) { row.rate_limit = 100_Mbps; });
    c.b.change<model::Stream>(c.stream, [&](auto& row) { row.payload_rate = payload; });
    c.b.change<model::Settings>({}, [](auto& row) { row.headroom_percent = 100; });
    return c.design();
}

TEST(LinkSlowerThanStream, firesJustAboveTheSpeedOfTheLink) {
    // On the wire 1400 octets of RTP payload take 1400 + 12 + 8 + 20 + 18 + 20 = 1478 octets (IEEE 802.3, RFC 3550,
    // 768, 791): 100 Mb/s carry 100 x 1400 / 1478 = 94.722 598 1 Mb/s of payload.
    // Up to there it is a matter of bursts.
    EXPECT_THAT(rules_found(behind_slow_port(94'722'598_bps)), ElementsAre("burst-into-slower-port"));
    EXPECT_THAT(rules_found(behind_slow_port(94'722'599_bps)), ElementsAre("link-slower-than-stream"));
    EXPECT_THAT(rules_found(behind_slow_port(850_Mbps)), ElementsAre("link-slower-than-stream"));
}

TEST(LinkSlowerThanStream, namesLinkAndLimit) {
    const auto design = behind_slow_port(850_Mbps);
    const auto finding = finding_of(design, "link-slower-than-stream");
    EXPECT_EQ(finding.limit, base::Value(100_Mbps));
    EXPECT_EQ(finding.severity, analysis::Severity::error);
    // 850 x 1478 / 1400 = 897.357 142 9 Mb/s, rounded up to whole bits.
    EXPECT_EQ(finding.measured, base::Value(897'357'143_bps));
}

TEST(LinkSlowerThanStream, judgesTheMembersOfAGroup) {
    // Worked example G-1: one 12 Gb/s flow on 4 x 10 Gb/s fails: a flow stays on one member (IEEE 802.1AX 6.2.4).
    auto c = clean_design();
    c.b.design.cables.erase(c.trunk);
    for (const auto* port : {"11", "12"}) {
        for (const auto id : {c.switch_a, c.switch_b})
            c.b.port(port_of(id, port), [&](auto& row) {
                row.aggregate = "trunk";
                row.tagged = {c.second};
                row.rate_limit = 100_Mbps;
            });
        c.b.cable(types::cat6a(), port_of(c.switch_a, port), port_of(c.switch_b, port), 30_m);
    }
    c.b.change<model::Stream>(c.stream2, [](auto& row) { row.payload_rate = 10_Mbps; });
    c.b.change<model::Stream>(c.stream, [](auto& row) { row.payload_rate = 120_Mbps; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("burst-into-slower-port", "link-slower-than-stream"));
}

TEST(LinkSlowerThanStream, isSilentWhereNothingPasses) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "1"), [](auto& row) { row.rate_limit = 100_Mbps; });
    c.b.design.subscriptions.erase(c.shown);
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "link-slower-than-stream"), 0);
}

}  // namespace streamwright::test::link_slower_than_stream_test
