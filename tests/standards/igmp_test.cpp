// IGMP timers against tests/reference (rows IGMP-, examples I-).
#include "core/standards/igmp.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::igmp {

using namespace standards;
using namespace base::literals;

constexpr IgmpTimers usual;

TEST(Igmp, DefaultsAreAsPublished) {
    EXPECT_EQ(usual.robustness, row_number("IGMP-003", 0));
    EXPECT_EQ(usual.query_interval, 1_s * row_number("IGMP-005", 0));
    EXPECT_EQ(usual.query_response, 1_s * row_number("IGMP-006", 0));
    EXPECT_EQ(usual.last_member_interval, 1_s * row_number("IGMP-012", 0));
    EXPECT_EQ(startup_query_count(usual), row_number("IGMP-011", 0));
}

TEST(Igmp, MembershipOutlivesItsReportsByDocument) {
    EXPECT_EQ(membership_time(usual, IgmpDocument::rfc2236), 1_s * row_number("IGMP-007", 0));
    EXPECT_EQ(membership_time(usual, IgmpDocument::rfc3376), 1_s * example_number("I-1", "GMI", 0));
    EXPECT_EQ(membership_time(usual, IgmpDocument::rfc9776), 1_s * row_number("IGMP-008", 0));
    EXPECT_EQ(membership_source(IgmpDocument::rfc9776).text(), "IETF RFC 9776 section 8.4");
    EXPECT_EQ(membership_source(IgmpDocument::rfc2236).text(), "IETF RFC 2236 section 8.4");
}

TEST(Igmp, OtherTimersComeOut) {
    EXPECT_EQ(other_querier_time(usual), 1_s * example_number("I-2", "present", 0));
    EXPECT_EQ(startup_query_interval(usual), 10_ms * example_number("I-2", "interval", 2));
    EXPECT_EQ(leave_time(usual), 1_s * example_number("I-3", "latency", 0));
    EXPECT_EQ(leave_time({.last_member_count = 1}), 1_s);
}

TEST(Igmp, AResponseAsLongAsTheQueryIntervalIsRefused) {
    EXPECT_EQ(reference_example("I-7").expected, "invalid");
    EXPECT_FALSE(timers_hold({.query_interval = 10_s, .query_response = 10_s}));
    EXPECT_TRUE(timers_hold({.query_interval = 11_s, .query_response = 10_s}));
    EXPECT_FALSE(timers_hold({.robustness = 0}));
    EXPECT_FALSE(timers_hold({.robustness = 8}));  // IGMP-004: 1 to 7
    EXPECT_TRUE(timers_hold(usual));
}

TEST(Igmp, TheLowestAddressIsElectedAsANumberAndNeverAProxy) {
    const auto address = [](const char* text) { return *base::parse_ipv4(text); };
    const base::Ipv4 with_proxy[] = {address("192.0.2.10"), address("192.0.2.2"), address("0.0.0.0")};  // I-4
    EXPECT_EQ(elected_querier(with_proxy), address("192.0.2.2"));
    const base::Ipv4 by_number[] = {address("192.0.2.10"), address("192.0.2.9")};  // I-5
    EXPECT_EQ(elected_querier(by_number), address("192.0.2.9"));
    const base::Ipv4 only_proxy[] = {address("0.0.0.0")};
    EXPECT_EQ(elected_querier(only_proxy), std::nullopt);
}

}  // namespace streamwright::test::igmp
