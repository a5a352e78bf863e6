#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::snooping_table_full_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "snooping-table-full";

/// In the preset two decoders on switch B watch one group each: both switches learn two.
CleanDesign with_table(std::optional<int> groups, std::optional<int> a_port = {}) {
    auto c = clean_design();
    change_type(c, c.switch_a, [&](auto& type) {
        type.bridging->group_table_size = groups;
        type.bridging->groups_per_port = a_port;
    });
    return c;
}

TEST(SnoopingTableFull, firesAboveTheTable) {
    const auto c = with_table(1);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("must hold 2 groups in preset Lecture"));
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("holds 1: 1 too many"));
}

// 2 of 2 are 100 %: a warning. 2 of 3 are 67 %: below four fifths.
TEST(SnoopingTableFull, warnsWhereLittleIsFree) {
    const auto full = with_table(2);
    EXPECT_THAT(rules_found(full.design()), ElementsAre(rule));
    EXPECT_EQ(finding_of(full.design(), rule).severity, Severity::warning);
    EXPECT_THAT(english_sentence(full.design(), finding_of(full.design(), rule)), HasSubstr("100"));
    EXPECT_THAT(rules_found(with_table(3).design()), IsEmpty());
}

TEST(SnoopingTableFull, countsWhatOnePortAsksFor) {
    const auto c = with_table(std::nullopt, 1);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), rule)), HasSubstr("takes 1 a port"));
    EXPECT_THAT(rules_found(with_table(std::nullopt, 2).design()), IsEmpty());
}

TEST(SnoopingTableFull, isSilentWithoutAStatedTableAndWithoutMembers) {
    EXPECT_THAT(rules_found(with_table(std::nullopt).design()), IsEmpty());
    auto c = with_table(1);
    c.b.design.subscriptions.erase(c.shown);
    c.b.design.subscriptions.erase(c.shown2);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

// Two groups of one MAC address (RFC 1112, 6.4) are one entry of a table that is looked up by MAC address.
TEST(SnoopingTableFull, countsGroupsAsTheSwitchTellsThemApart) {
    for (const bool by_mac : {true, false}) {
        auto c = with_table(2);
        change_type(c, c.switch_a, [&](auto& type) {
            type.bridging->lookup = by_mac ? catalogue::GroupLookup::mac : catalogue::GroupLookup::ip;
            type.bridging->group_table_size = 1;
        });
        c.b.change<model::Stream>(c.stream, [](auto& row) { row.group = base::parse_ipv4("239.1.1.1"); });
        c.b.change<model::Stream>(c.stream2, [](auto& row) { row.group = base::parse_ipv4("239.129.1.1"); });
        for (const auto& port : {port_of(c.switch_a, "2"), port_of(c.switch_b, "2")})
            c.b.port(port, [&](auto& row) { row.untagged.reset(); });  // both in one VLAN
        const auto found = finding_of(c.design(), rule);
        EXPECT_EQ(found.severity, by_mac ? Severity::warning : Severity::error);
    }
}

}  // namespace streamwright::test::snooping_table_full_test
