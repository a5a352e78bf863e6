#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::vlan_leaks_test {

using analysis::Severity;
using model::VlanPurpose;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr std::string_view rule = "vlan-leaks";

catalogue::DeviceType access_point() {
    auto type = *types::display();
    type.key = {"test.access-point"};
    type.name = "Access point";
    type.kind = catalogue::DeviceKind::other;
    type.ports = {types::make_network_port("net", {base::BitRate::from_count(1000000000)})};
    return type;
}

/// An access point on port 9 of switch B, in a VLAN of that purpose and tagged in the usual one.
struct Leaky : CleanDesign {
    explicit Leaky(VlanPurpose purpose = VlanPurpose::wireless) : CleanDesign(clean_design()) {
        other = b.vlan(70, "Guests");
        b.change<model::Vlan>(other, [&](auto& row) { row.purpose = purpose; });
        point = b.device(access_point(), "AP-1");
        b.cable(types::cat6a(), port_of(point, "net"), port, analysis_test::short_run);
        b.port(port, [&](auto& row) {
            row.untagged = other;
            row.tagged = {usual};
        });
    }
    model::VlanId other{0};
    model::DeviceId point{0};
    model::PortRef port = port_of(switch_b, "9");
};

TEST(VlanLeaks, warnsOfAPortThatCarriesBothAndIsCuredByTakingTheAvVlanOff) {
    for (const auto purpose : {VlanPurpose::wireless, VlanPurpose::corporate}) {
        const Leaky c(purpose);
        EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
        const auto finding = finding_of(c.design(), rule);
        EXPECT_EQ(finding.severity, Severity::warning);
        EXPECT_THAT(english_sentence(c.design(), finding), AllOf(HasSubstr("AV media"), HasSubstr("Guests")));
        EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
    }
    EXPECT_THAT(rules_found(Leaky(VlanPurpose::control).design()), IsEmpty());
}

TEST(VlanLeaks, isAnErrorWhereStreamsArrive) {
    Leaky c;
    c.b.port(c.port, [](auto& row) { row.router_port = true; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_EQ(finding_of(c.design(), rule).severity, Severity::error);
    EXPECT_EQ(std::get<std::vector<base::Ref>>(finding_of(c.design(), rule).values.back()).size(), 1U);
}

TEST(VlanLeaks, findsTheAvVlanUntaggedToo) {
    Leaky c;
    c.b.port(c.port, [&](auto& row) {
        row.untagged.reset();  // the usual VLAN
        row.tagged = {c.other};
    });
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), rule))), IsEmpty());
}

TEST(VlanLeaks, isSilentForDevicesThatBelongInTheAvVlanAndForVlansWithoutStreams) {
    Leaky c;
    c.b.address(c.point, "10.30.0.77", c.usual);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    Leaky quiet;
    quiet.b.design.subscriptions.erase(quiet.shown);
    quiet.b.design.streams.erase(quiet.stream);
    EXPECT_THAT(rules_found(quiet.design()), IsEmpty());
}

// The ends of the trunk put untagged frames into the AV VLAN and into the office's. While switch A snoops it keeps the
// stream back; without snooping it floods it.
TEST(VlanLeaks, followsAMismatchWhereStreamsAreFlooded) {
    auto c = clean_design();
    const auto office = c.b.vlan(80, "Office");
    c.b.change<model::Vlan>(office, [](auto& row) { row.purpose = VlanPurpose::corporate; });
    c.b.port(port_of(c.switch_b, "s1"), [&](auto& row) { row.untagged = office; });
    EXPECT_THAT(rules_found(c.design()), AllOf(Contains("untagged-vlan-mismatch"), Not(Contains(rule))));
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.bridging.snooping_off = true; });
    EXPECT_THAT(rules_found(c.design()), Contains(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("SW-A floods streams"));
}

// RFC 9119; field case F19.
TEST(VlanLeaks, warnsOfAStreamSentInAWirelessVlan) {
    auto c = clean_design();
    c.b.change<model::Vlan>(c.second, [](auto& row) { row.purpose = VlanPurpose::wireless; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_EQ(finding_of(c.design(), rule).severity, Severity::warning);
    c.b.change<model::Vlan>(c.second, [](auto& row) { row.purpose = VlanPurpose::corporate; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::vlan_leaks_test
