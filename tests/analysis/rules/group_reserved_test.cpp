#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::group_reserved_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;

model::Design on_group(const std::string& group) {
    auto c = clean_design();
    c.b.change<model::Stream>(c.stream, [&](auto& row) { row.group = base::parse_ipv4(group); });
    return c.design();
}

TEST(GroupReserved, firesOnTheControlBlockAndItsMacAddresses) {
    // Field case F07: 239.0.0.5, 239.128.0.5 and 230.0.0.5 are flagged, 239.1.0.5 is not; M-5 and M-8 of the worked
    // examples (RFC 1112 6.4, RFC 5771 4).
    for (const auto* bad : {"239.0.0.5", "239.128.0.5", "230.0.0.5", "224.0.0.107", "239.0.0.1", "239.128.0.1"}) {
        const auto design = on_group(bad);
        EXPECT_THAT(rules_found(design), ElementsAre("group-reserved")) << bad;
        const auto finding = finding_of(design, "group-reserved");
        EXPECT_EQ(finding.severity, Severity::error) << bad;
        EXPECT_THAT(rules_found(cured(design, finding)), IsEmpty()) << bad;
    }
    EXPECT_THAT(rules_found(on_group("239.1.0.5")), IsEmpty());
}

TEST(GroupReserved, justOutsideTheBlockIsFree) {
    EXPECT_THAT(rules_found(on_group("239.0.1.0")), IsEmpty());
    EXPECT_THAT(rules_found(on_group("239.127.255.255")), IsEmpty());
    EXPECT_THAT(rules_found(on_group("239.128.1.0")), IsEmpty());
}

TEST(GroupReserved, firesOnWhatIsNoGroup) {
    EXPECT_THAT(rules_found(on_group("192.0.2.1")), ElementsAre("group-reserved"));
    EXPECT_THAT(rules_found(on_group("240.0.0.1")), ElementsAre("group-reserved"));
}

TEST(GroupReserved, warnsOnTheTopOfAScopeAndOnExamples) {
    // M-10 and M-11 of the worked examples (RFC 2365 9, RFC 6676 2).
    for (const auto* poor : {"239.195.255.9", "233.252.0.7"}) {
        EXPECT_THAT(rules_found(on_group(poor)), ElementsAre("group-reserved")) << poor;
        EXPECT_EQ(finding_of(on_group(poor), "group-reserved").severity, Severity::warning) << poor;
    }
}

TEST(GroupReserved, isSilentOnStreamsWithoutAGroup) {
    auto c = clean_design();
    c.b.change<model::Stream>(c.stream, [](auto& row) { row.group.reset(); });
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "group-reserved"), 0);
}

}  // namespace streamwright::test::group_reserved_test
