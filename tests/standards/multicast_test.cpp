// Groups and their MAC addresses against tests/reference (rows MC-, examples M-).
#include "core/standards/multicast.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::test::multicast {

using namespace standards;
using base::Ipv4;

Ipv4 group(std::string_view text) { return *base::parse_ipv4(text); }

TEST(Multicast, MappingIsAsPublished) {
    for (int n = 5; n <= 14; ++n) {
        const auto& row = reference_row(n < 10 ? "MC-00" + std::to_string(n) : "MC-0" + std::to_string(n));
        EXPECT_EQ(base::print(group_mac(group(row.condition))), row.value) << row.id << " " << row.source;
    }
    for (const char* id : {"M-1", "M-2", "M-7", "M-8", "M-9"}) {
        const auto& example = reference_example(id);
        EXPECT_EQ(base::print(group_mac(group(example.inputs))), example.expected.substr(0, 17)) << id;
    }
}

TEST(Multicast, ThirtyTwoGroupsShareEachMacAddress) {
    EXPECT_EQ(reference_row("MC-004").value, "32");
    const auto sharing = groups_sharing_mac(group("225.1.2.3"));
    std::set<Ipv4> expected;  // M-4: {224..239}.{1,129}.2.3
    for (unsigned first = 224; first <= 239; ++first)
        for (const char* rest : {".1.2.3", ".129.2.3"}) expected.insert(group(std::to_string(first) + rest));
    EXPECT_EQ(std::set<Ipv4>(sharing.begin(), sharing.end()), expected);
    EXPECT_EQ(sharing.size(), static_cast<std::size_t>(example_number("M-4", "exactly", 0)));
    EXPECT_TRUE(std::is_sorted(sharing.begin(), sharing.end()));
    for (const auto each : sharing) EXPECT_EQ(base::print(group_mac(each)), "01-00-5E-01-02-03");
    EXPECT_EQ(group_mac(group("225.1.2.3")), group_mac(group("238.129.2.3")));  // M-3
}

TEST(Multicast, OnlyTheThirtyTwoPublishedRangesFallOnTheControlBlock) {
    // MC-015: x.0.0.z and x.128.0.z for x = 224 to 239.
    for (unsigned x = 224; x <= 239; ++x)
        for (unsigned second = 0; second < 256; ++second)
            for (const unsigned third : {0U, 1U, 128U, 255U}) {
                const Ipv4 each{x << 24U | second << 16U | third << 8U | 7U};
                EXPECT_EQ(on_control_block_mac(each), (second == 0 || second == 128) && third == 0)
                    << base::print(each);
            }
    EXPECT_FALSE(on_control_block_mac(group("192.0.0.1")));
}

TEST(Multicast, VerdictsOfTheWorkedExamples) {
    using enum GroupVerdict;
    EXPECT_EQ(judge_group(group("239.0.0.1")), control_block_mac);    // M-5
    EXPECT_EQ(judge_group(group("239.128.0.1")), control_block_mac);  // M-5
    EXPECT_EQ(judge_group(group("224.0.0.107")), control_block);      // M-8
    EXPECT_EQ(judge_group(group("239.195.255.9")), reserved_top);     // M-10
    EXPECT_EQ(judge_group(group("239.255.255.255")), reserved_top);   // MC-027
    EXPECT_EQ(judge_group(group("233.252.0.7")), documentation);      // M-11
    EXPECT_EQ(judge_group(group("224.2.127.254")), not_for_plans);    // MC-019
    EXPECT_EQ(judge_group(group("233.251.244.1")), not_for_plans);    // M-12
    EXPECT_EQ(judge_group(group("239.192.0.1")), good);               // MC-024
    EXPECT_EQ(judge_group(group("192.0.2.1")), not_a_group);
}

TEST(Multicast, BlocksAreAsPublished) {
    const std::pair<const char*, const char*> prefixes[] = {{"MC-017", "local network control"},
                                                            {"MC-018", "internetwork control"},
                                                            {"MC-019", "SDP/SAP"},
                                                            {"MC-020", "source-specific"},
                                                            {"MC-022", "unicast-prefix-based"},
                                                            {"MC-023", "administratively scoped"},
                                                            {"MC-024", "organization-local scope"},
                                                            {"MC-025", "local scope"},
                                                            {"MC-028", "documentation"}};
    for (const auto& [id, name] : prefixes) {
        const auto prefix = base::parse_ipv4_prefix(reference_row(id).value);
        ASSERT_TRUE(prefix) << id;
        bool found = false;
        for (const auto& block : group_blocks())
            if (block.name == name) {
                found = true;
                EXPECT_EQ(block.first, prefix->network) << id;
                EXPECT_EQ(block.last, prefix->broadcast()) << id;
            }
        EXPECT_TRUE(found) << id;
    }
    EXPECT_EQ(reference_row("MC-021").value, "233.0.0.0 to 233.251.255.255");
    EXPECT_EQ(group_block(group("233.251.255.255"))->name, "GLOP");
    EXPECT_FALSE(group_block(group("233.253.0.0")));  // AD-HOC III, no block of ours
    EXPECT_EQ(group_block(group("239.193.1.1"))->name, "organization-local scope");
    EXPECT_EQ(group_block(group("239.10.1.1"))->name, "administratively scoped");
}

TEST(Multicast, SixHundredGroupsInARowKeepTheirMacAddressesApart) {
    std::set<base::MacAddress> macs;
    for (std::uint32_t i = 0; i < 600; ++i) macs.insert(group_mac({group("239.192.0.1").bits + i}));
    EXPECT_EQ(macs.size(), static_cast<std::size_t>(example_number("M-13", "unique MACs", 0)));
}

TEST(Multicast, TheGroupSpaceEndsWherePublished) {
    EXPECT_EQ(reference_row("MC-016").value, "224.0.0.0/4");
    EXPECT_TRUE(is_group(group("224.0.0.0")));
    EXPECT_TRUE(is_group(group("239.255.255.255")));
    EXPECT_FALSE(is_group(group("223.255.255.255")));
    EXPECT_FALSE(is_group(group("240.0.0.0")));
}

}  // namespace streamwright::test::multicast
