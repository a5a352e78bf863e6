#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::link_slower_than_endpoint_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

/// The clean design and one more decoder, shown nothing yet, whose type takes up to `most`; the port and the cable to
/// it are of that speed and those pairs.
CleanDesign with_idle_decoder(std::optional<base::BitRate> most, std::vector<base::BitRate> port_rates, int pairs) {
    auto c = clean_design();
    auto type = types::make_decoder();
    type.key = {"idle-decoder"};
    type.codec->most_rate = most;
    type.codec->payload_octets = 1400;
    for (auto& port : type.ports)
        if (port.key == catalogue::PortKey{"net"}) port.rates = {100_Mbps, 1_Gbps};
    auto bridge = types::make_switch(24, 1_Gbps, 4);
    bridge.key = {"mixed-switch"};
    for (auto& port : bridge.ports)
        if (port.key == catalogue::PortKey{"9"}) port.rates = std::move(port_rates);
    auto cable = *types::cat6a();
    cable.key = {"thin-or-not"};
    cable.pairs = pairs;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(bridge));
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.type = {"mixed-switch"}; });
    const auto decoder = c.b.device(type, "DEC-9"), display = c.b.device(types::display(), "DSP-9");
    c.b.cable(types::hdmi(), port_of(decoder, "out"), port_of(display, "in"), 2_m);
    c.b.cable(std::make_shared<const catalogue::CableType>(cable), port_of(decoder, "net"), port_of(c.switch_a, "9"),
              20_m, "C-9");
    return c;
}

// Field case F29: a gigabit unit on a lead of two pairs, or on a 100 Mb/s port: 850 on 100 = 850 %, 50 passes. On the
// wire a packet of 1,400 octets has 1,478 (IETF RFC 3550, 768, 791; IEEE 802.3): 94,722,598 b/s of payload just fit.
TEST(LinkSlowerThanEndpoint, firesOnATwoPairLead) {
    const auto c = with_idle_decoder(850_Mbps, {100_Mbps, 1_Gbps}, 2);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("link-slower-than-endpoint"));
    const auto finding = finding_of(c.design(), "link-slower-than-endpoint");
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_EQ(finding.measured, base::Value(100_Mbps));
    EXPECT_THAT(english_sentence(c.design(), finding),
                HasSubstr("C-9 comes up at 100 Mb/s, because C-9 has 2 pairs only"));
}

TEST(LinkSlowerThanEndpoint, namesTheSlowPort) {
    const auto c = with_idle_decoder(850_Mbps, {100_Mbps}, 4);
    const auto finding = finding_of(c.design(), "link-slower-than-endpoint");
    EXPECT_THAT(english_sentence(c.design(), finding),
                testing::AllOf(HasSubstr("the most that SW"), HasSubstr("offers")));
}

TEST(LinkSlowerThanEndpoint, passesWhatJustFits) {
    EXPECT_THAT(rules_found(with_idle_decoder(50_Mbps, {100_Mbps}, 4).design()), IsEmpty());
    EXPECT_THAT(rules_found(with_idle_decoder(94'722'598_bps, {100_Mbps}, 4).design()), IsEmpty());
    EXPECT_THAT(rules_found(with_idle_decoder(94'722'599_bps, {100_Mbps}, 4).design()),
                ElementsAre("link-slower-than-endpoint"));
    EXPECT_THAT(rules_found(with_idle_decoder(850_Mbps, {100_Mbps, 1_Gbps}, 4).design()), IsEmpty());
}

TEST(LinkSlowerThanEndpoint, isSilentWhereTheTypeIs) {
    EXPECT_THAT(rules_found(with_idle_decoder(std::nullopt, {100_Mbps}, 4).design()), IsEmpty());
}

TEST(LinkSlowerThanEndpoint, leavesSubscribedEndpointsToTheStreams) {
    auto c = with_idle_decoder(850_Mbps, {100_Mbps}, 4);
    const auto decoder = std::find_if(c.b.design.devices.begin(), c.b.design.devices.end(),
                                      [](const auto& row) { return row.tag == "DEC-9"; });
    c.b.change<model::Stream>(c.stream, [](auto& row) { row.payload_rate = 50_Mbps; });
    c.b.subscribe(c.preset, c.stream, decoder->id);
    EXPECT_THAT(rules_found(c.design()), testing::Not(testing::Contains("link-slower-than-endpoint")));
}

}  // namespace streamwright::test::link_slower_than_endpoint_test
