#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::group_used_twice_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(GroupUsedTwice, firesOnTwoEncodersAndIsCuredByAFreeGroup) {
    auto c = clean_design();
    c.b.stream(c.encoder, 10_Mbps, "239.192.1.3");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    const auto third = c.b.device(types::encoder(), "ENC-3"), source = c.b.device(types::source(), "SRC-3");
    c.b.cable(types::hdmi(), port_of(source, "out"), port_of(third, "in"), 2_m);
    c.b.cable(types::cat6a(), port_of(third, "net"), port_of(c.switch_a, "3"), 20_m);
    c.b.stream(third, 10_Mbps, "239.192.1.1");
    EXPECT_THAT(rules_found(c.design()), ElementsAre("group-used-twice"));
    const auto finding = finding_of(c.design(), "group-used-twice");
    EXPECT_EQ(finding.severity, analysis::Severity::error);
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(GroupUsedTwice, warnsOnOneEncoderWithTwoPorts) {
    auto c = clean_design();
    const auto second = c.b.stream(c.encoder, 10_Mbps, "239.192.1.1");
    c.b.change<model::Stream>(second, [](auto& row) { row.udp_port = 5006; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("group-used-twice"));
    EXPECT_EQ(finding_of(c.design(), "group-used-twice").severity, analysis::Severity::warning);
}

TEST(GroupUsedTwice, isSilentInTwoVlans) {
    auto c = clean_design();
    c.b.change<model::Stream>(c.stream2, [](auto& row) { row.group = base::parse_ipv4("239.192.1.1"); });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(GroupUsedTwice, isSilentOnStreamsWithoutAGroup) {
    auto c = clean_design();
    c.b.stream(c.encoder, 10_Mbps);
    c.b.stream(c.encoder, 10_Mbps);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::group_used_twice_test
