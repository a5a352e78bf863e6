// Labels by RFC 1123 2.1: letters, digits, hyphen; 63 at most; a digit may come first, a hyphen neither first nor last.
#include "core/standards/host_name.h"

#include <gtest/gtest.h>

namespace streamwright::test::host_name {

using namespace standards;

TEST(HostName, WhatALabelMayHold) {
    for (const char* good : {"a", "3com", "ENC-001", "x-1"}) EXPECT_TRUE(is_host_label(good)) << good;
    for (const char* bad : {"", "-a", "a-", "a b", "a.b", "a_b", "\xC3\xBC"}) EXPECT_FALSE(is_host_label(bad)) << bad;
    EXPECT_TRUE(is_host_label(std::string(63, 'a')));
    EXPECT_FALSE(is_host_label(std::string(64, 'a')));
}

TEST(HostName, ATagBecomesALabel) {
    EXPECT_EQ(host_label("ENC-001"), "enc-001");
    EXPECT_EQ(host_label("  Hall 2 / Left_3 "), "hall-2-left-3");
    EXPECT_EQ(host_label("B\xC3\xBChne 1"), "b-hne-1");
    EXPECT_EQ(host_label("--"), "");
    EXPECT_EQ(host_label(std::string(62, 'a') + " b"), std::string(62, 'a')) << "no hyphen last";
    EXPECT_EQ(host_label(std::string(80, 'a')).size(), 63u);
}

}  // namespace streamwright::test::host_name
