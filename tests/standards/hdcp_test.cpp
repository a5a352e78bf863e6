// Content protection against tests/reference (rows LNK-060 to LNK-067, example B13).
#include "core/standards/hdcp.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::hdcp {

using namespace standards;
using enum HdcpVersion;
using enum HdcpContent;

constexpr HdcpVersion versions[] = {none, hdcp_1_4, hdcp_2_0, hdcp_2_2, hdcp_2_3};

/// "HDCP 1.4 and later": the first version from which on content may leave.
HdcpVersion first_for(HdcpContent content) {
    for (const auto version : versions)
        if (may_leave_on(content, version)) return version;
    throw std::runtime_error("content that may leave on nothing");
}

std::string and_later(HdcpVersion version) { return "HDCP " + std::string(base::enum_text(version)) + " and later"; }

TEST(Hdcp, ContentLeavesAsPublished) {
    EXPECT_EQ(and_later(first_for(type_0)), reference_row("LNK-060").value);
    EXPECT_EQ(and_later(first_for(type_1)), reference_row("LNK-061").value);
    EXPECT_EQ(first_for(open), none);
    for (const auto content : {open, type_0, type_1})
        for (const auto version : versions)
            EXPECT_EQ(may_leave_on(content, version), version >= first_for(content)) << "and later";
    EXPECT_EQ(signal_example("B13").expected, "that sink gets no picture");
    EXPECT_FALSE(may_leave_on(type_1, hdcp_between(hdcp_2_2, hdcp_1_4)));
}

TEST(Hdcp, LimitsAreAsPublishedAndSayWhetherTheyWereRead) {
    for (const auto version : {hdcp_2_0, hdcp_2_2, hdcp_2_3}) {
        EXPECT_EQ(hdcp_limits(version)->devices, row_number("LNK-062", 0));
        EXPECT_EQ(hdcp_limits(version)->levels, row_number("LNK-064", 0));
    }
    EXPECT_EQ(hdcp_limits(hdcp_1_4)->devices, row_number("LNK-063", 0));
    EXPECT_EQ(hdcp_limits(hdcp_1_4)->levels, row_number("LNK-065", 0));
    EXPECT_FALSE(hdcp_limits(none));
    EXPECT_EQ(hdcp_limits(hdcp_2_2)->devices_source.standing == Standing::read, was_read("LNK-062"));
    EXPECT_EQ(hdcp_limits(hdcp_1_4)->devices_source.standing == Standing::read, was_read("LNK-063"));
    EXPECT_EQ(hdcp_limits(hdcp_2_2)->levels_source.standing == Standing::read, was_read("LNK-064"));
    EXPECT_EQ(hdcp_limits(hdcp_1_4)->levels_source.standing == Standing::read, was_read("LNK-065"));
    EXPECT_NE(hdcp_exceeded_source.text().find(reference_row("LNK-066").value.substr(0, 20)), std::string::npos);
}

TEST(Hdcp, TwoPortsMeetAtTheOlder) {
    EXPECT_EQ(reference_row("LNK-067").value, "interoperate as 2.x");
    EXPECT_EQ(hdcp_meeting_source.standing == Standing::read, was_read("LNK-067"));
    EXPECT_EQ(hdcp_between(hdcp_2_3, hdcp_2_2), hdcp_2_2);
    EXPECT_EQ(hdcp_between(hdcp_2_2, hdcp_2_3), hdcp_2_2);
    EXPECT_EQ(hdcp_between(hdcp_2_3, none), none);
}

}  // namespace streamwright::test::hdcp
