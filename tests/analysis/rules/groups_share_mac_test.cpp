#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::groups_share_mac_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// ENC-1 sends a second stream on that group; switches look up as said.
CleanDesign with_group(const std::string& group, catalogue::GroupLookup lookup) {
    auto c = clean_design();
    auto type = *types::switch_24();
    type.bridging->lookup = lookup;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Stream>(c.stream, [](auto& row) { row.group = base::parse_ipv4("239.1.1.1"); });
    c.b.stream(c.encoder, 10_Mbps, group);
    return c;
}

TEST(GroupsShareMac, firesWhereSwitchesLookUpByMac) {
    // Field case F06: 239.1.1.1, 239.129.1.1 and 225.1.1.1 all map to 01-00-5E-01-01-01 (RFC 1112 6.4).
    const auto c = with_group("239.129.1.1", catalogue::GroupLookup::mac);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("groups-share-mac"));
    const auto finding = finding_of(c.design(), "groups-share-mac");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_NE(english_sentence(c.design(), finding).find("01-00-5E-01-01-01"), std::string::npos);
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(GroupsShareMac, warnsWhereSwitchesLookUpByAddress) {
    const auto c = with_group("239.129.1.1", catalogue::GroupLookup::ip);
    EXPECT_EQ(finding_of(c.design(), "groups-share-mac").severity, Severity::warning);
}

TEST(GroupsShareMac, isSilentOnTheNextAddress) {
    EXPECT_THAT(rules_found(with_group("239.129.1.2", catalogue::GroupLookup::mac).design()), IsEmpty());
}

TEST(GroupsShareMac, isSilentInTwoVlans) {
    auto c = clean_design();  // F06: in two VLANs: pass
    c.b.change<model::Stream>(c.stream, [](auto& row) { row.group = base::parse_ipv4("239.1.1.1"); });
    c.b.change<model::Stream>(c.stream2, [](auto& row) { row.group = base::parse_ipv4("239.129.1.1"); });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::groups_share_mac_test
