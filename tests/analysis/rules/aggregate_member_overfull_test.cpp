#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::aggregate_member_overfull_test {

using analysis::Severity;
using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;
using Choice = std::optional<std::vector<catalogue::MemberChoice>>;

/// The clean design with two copper cables of 1 Gb/s as one group in the trunk's place, and both streams of this rate
/// on the wire over it.
CleanDesign grouped(base::BitRate wire, const Choice& choice, const std::string& group2 = "239.192.1.2") {
    auto c = clean_design();
    c.b.design.cables.erase(c.trunk);
    for (const char* port : {"11", "12"}) {
        add_copper_trunk(c, port);
        for (const auto id : {c.switch_a, c.switch_b})
            c.b.port(port_of(id, port), [](auto& row) { row.aggregate = "trunk"; });
    }
    for (const auto id : {c.switch_a, c.switch_b})
        change_type(c, id, [&](auto& type) {
            type.key.text += id == c.switch_a ? ".a" : ".b";
            type.bridging->member_by = choice;
        });
    // Tagged or not, a packet of 1,400 octets weighs at most 1,482 on the wire (IEEE 802.3, 802.1Q).
    const auto payload = base::BitRate::from_count(wire.count() * 1400 / 1482);
    for (const auto id : {c.stream, c.stream2})
        c.b.change<model::Stream>(id, [&](auto& row) {
            row.payload_rate = payload;
            if (id == c.stream2) row.group = base::parse_ipv4(group2);
        });
    c.b.change<model::Settings>({}, [](auto& row) { row.headroom_percent = 100; });
    return c;
}

// Two streams of 600 Mb/s on 2 x 1 Gb/s: 60 % of the group, and 120 % of a member that gets both. Groups that end in 1
// and 3 have the low bit alike, 1 and 2 have not.
TEST(AggregateMemberOverfull, putsStreamsWhereTheSwitchPutsThem) {
    const Choice by_group{{catalogue::MemberChoice::destination_ip}};
    EXPECT_THAT(rules_found(grouped(600_Mbps, by_group).design()), IsEmpty());
    const auto c = grouped(600_Mbps, by_group, "239.192.1.3");
    EXPECT_THAT(rules_found(c.design()), ElementsAre("aggregate-member-overfull"));
    const auto finding = finding_of(c.design(), "aggregate-member-overfull");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.limit, base::Value(1_Gbps));
    EXPECT_THAT(english_sentence(c.design(), finding), AllOf(HasSubstr("2 streams"), HasSubstr("in preset Lecture")));
}

// Worked example G-3 with two members: two streams meet in half of all cases.
TEST(AggregateMemberOverfull, countsTheChanceWhereTheChoiceIsNotKnown) {
    const auto c = grouped(600_Mbps, std::nullopt);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("aggregate-member-overfull"));
    const auto finding = finding_of(c.design(), "aggregate-member-overfull");
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_EQ(finding.measured, base::Value(base::Percent{500}));
    EXPECT_THAT(terms_of(c.design(), finding), Contains(HasSubstr("5000 of 10,000")));
    EXPECT_THAT(rules_found(grouped(500_Mbps, std::nullopt).design()), IsEmpty()) << "both fit on one member";
}

TEST(AggregateMemberOverfull, takesChanceWhereAFieldIsNotKnown) {
    // No encoder has a MAC address typed in.
    const auto c = grouped(600_Mbps, Choice{{catalogue::MemberChoice::source_mac}});
    EXPECT_THAT(rules_found(c.design()), ElementsAre("aggregate-member-overfull"));
    EXPECT_EQ(finding_of(c.design(), "aggregate-member-overfull").severity, Severity::warning);
}

TEST(AggregateMemberOverfull, readsTheSendersAddresses) {
    auto c = grouped(600_Mbps, Choice{{catalogue::MemberChoice::source_mac, catalogue::MemberChoice::destination_mac}});
    // 0x11 xor 0x01 and 0x12 xor 0x02 are both 0x10: alike. 0x11 xor 0x01 and 0x11 xor 0x02 differ in the low bit.
    const auto mac = [&](model::DeviceId id, std::uint64_t octet) {
        c.b.change<model::Device>(id, [&](auto& row) {
            row.addresses = {{std::nullopt, std::nullopt, std::nullopt, base::MacAddress{0x020000000000 | octet}}};
        });
    };
    mac(c.encoder, 0x11);
    mac(c.encoder2, 0x12);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("aggregate-member-overfull"));
    mac(c.encoder2, 0x11);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(AggregateMemberOverfull, warnsOfTheWorstCase) {
    auto c = grouped(600_Mbps, std::nullopt);
    c.b.design.subscriptions = {};
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "aggregate-member-overfull"), 1);
    EXPECT_EQ(finding_of(c.design(), "aggregate-member-overfull").severity, Severity::warning);
}

TEST(AggregateMemberOverfull, leavesWhatIsOverfullAsAWholeToItsRule) {
    auto c = grouped(950_Mbps, std::nullopt);
    for (const auto id : {c.stream, c.stream2})
        c.b.change<model::Stream>(id, [](auto& row) { row.payload_rate = 1100_Mbps; });
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "aggregate-member-overfull"), 0);
}

}  // namespace streamwright::test::aggregate_member_overfull_test
