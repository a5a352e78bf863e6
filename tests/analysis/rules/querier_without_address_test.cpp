#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::querier_without_address_test {

using analysis::Severity;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

constexpr std::string_view rule = "querier-without-address";

/// Switch A asks in the usual VLAN without an address; switch B does with such queries as said.
CleanDesign asking_from_zero(std::optional<bool> counts_at_b) {
    auto c = clean_design();
    change_type(c, c.switch_b, [&](auto& type) { type.bridging->zero_query_makes_router_port = counts_at_b; });
    c.b.change<model::Device>(c.switch_a, [](auto& row) { row.bridging.queriers.front().address.reset(); });
    return c;
}

// RFC 4541, 2.1.1; field case F04.
TEST(QuerierWithoutAddress, isAnErrorWhereAnotherSwitchIgnoresItAndIsCuredByAnAddress) {
    const auto c = asking_from_zero(false);
    EXPECT_THAT(rules_found(c.design()), Contains(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("SW-B makes no router port"));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(QuerierWithoutAddress, isAdviceWhereItWorks) {
    const auto c = asking_from_zero(true);
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    EXPECT_EQ(finding_of(c.design(), rule).severity, Severity::advice);
}

TEST(QuerierWithoutAddress, claimsNoErrorWhereTheOtherSwitchDoesNotStateIt) {
    const auto c = asking_from_zero(std::nullopt);
    EXPECT_THAT(rules_found(c.design()), Contains("switch-facts-unknown"));
    EXPECT_EQ(finding_of(c.design(), rule).severity, Severity::advice);
}

// Worked example I-4: 0.0.0.0 never wins.
TEST(QuerierWithoutAddress, isAWarningWhereAnotherQuerierWins) {
    auto c = asking_from_zero(false);
    c.b.address(c.switch_b, "10.30.0.2", c.usual);
    c.b.querier(c.switch_b, c.usual, "10.30.0.2");
    EXPECT_THAT(rules_found(c.design()), ElementsAre(rule));
    const auto finding = finding_of(c.design(), rule);
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("against SW-B"));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(QuerierWithoutAddress, isSilentWhereItDoesNotAskAtAll) {
    auto c = asking_from_zero(false);  // snooping off, and its type asks only while it snoops
    c.b.change<model::Device>(c.switch_a, [&](auto& row) { row.bridging.snooping_off_vlans = {c.usual}; });
    EXPECT_THAT(rules_found(c.design()), Not(Contains(rule)));
}

}  // namespace streamwright::test::querier_without_address_test
