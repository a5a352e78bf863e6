#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::root_left_to_chance_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

void priority(CleanDesign& c, model::DeviceId device, std::optional<int> value) {
    c.b.change<model::Device>(device, [&](auto& row) { row.bridging.priority = value; });
}

TEST(RootLeftToChance, isAdviceWhereNothingIsBlockedAndIsCuredByAPriority) {
    auto c = clean_design();
    priority(c, c.switch_a, {});
    EXPECT_THAT(rules_found(c.design()), ElementsAre("root-left-to-chance"));
    const auto finding = finding_of(c.design(), "root-left-to-chance");
    EXPECT_EQ(finding.severity, Severity::advice);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("share priority 32768"));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(RootLeftToChance, isAWarningWhereItDecidesWhatIsBlocked) {
    auto c = clean_design();
    const auto second = add_copper_trunk(c, "24");
    priority(c, c.switch_a, {});
    EXPECT_THAT(rules_found(c.design()), ElementsAre("root-left-to-chance"));
    const auto finding = finding_of(c.design(), "root-left-to-chance");
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("Which of"));  // no addresses are entered
    std::uint64_t bits = 1;
    for (const auto id : {c.switch_b, c.switch_a})
        c.b.change<model::Device>(id, [&](auto& row) { row.bridging.address = base::MacAddress{bits++}; });
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), "root-left-to-chance")),
                HasSubstr("SW-B is root of the spanning tree by chance"));
    EXPECT_EQ(finding.values.back(), base::Value(std::vector<base::Ref>{analysis::named(second)}));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

// IEEE 802.1Q, Table 13-3: steps of 4096, none below 0.
TEST(RootLeftToChance, lowersBelowThoseThatShareALowPriorityWhereThatIsPossible) {
    auto c = clean_design();
    priority(c, c.switch_b, 4096);  // as switch A
    const auto finding = finding_of(c.design(), "root-left-to-chance");
    const auto after = cured(c.design(), finding);
    EXPECT_THAT(rules_found(after), IsEmpty());
    for (const auto id : {c.switch_a, c.switch_b}) priority(c, id, 0);
    EXPECT_THAT(finding_of(c.design(), "root-left-to-chance").remedies, IsEmpty());
}

TEST(RootLeftToChance, putsTheRootWhereTheFastLinksMeet) {
    auto c = clean_design();
    priority(c, c.switch_a, {});
    const auto third = c.b.device(types::switch_24(), "SW-C");
    c.b.cable(types::cat6a(), port_of(c.switch_b, "20"), port_of(third, "1"), analysis_test::short_run);
    const auto remedy = finding_of(c.design(), "root-left-to-chance").remedies.at(0);
    EXPECT_EQ(std::get<model::ConfigureDevice>(remedy.edit).row.id, c.switch_b);  // 10 + 1 Gb/s against 10 and 1
}

TEST(RootLeftToChance, makesNoEndpointTheRoot) {
    DesignBuilder b;
    auto type = types::make_chained_decoder();
    type.bridging->bpdus = catalogue::Bpdus::run;
    const auto endpoint = b.device(type, "DEC-1"), bridge = b.device(types::switch_24(), "SW-1");
    b.cable(types::cat6a(), port_of(endpoint, "net"), port_of(bridge, "1"), analysis_test::short_run);
    for (const auto& [id, address] : {std::pair(endpoint, 1), std::pair(bridge, 2)})
        b.change<model::Device>(id, [&, address = address](auto& row) {
            row.bridging.address = base::MacAddress{static_cast<std::uint64_t>(address)};
        });
    const auto finding = finding_of(b.design, "root-left-to-chance");
    EXPECT_THAT(english_sentence(b.design, finding), HasSubstr("DEC-1 is root"));
    EXPECT_EQ(std::get<model::ConfigureDevice>(finding.remedies.at(0).edit).row.id, bridge);
}

TEST(RootLeftToChance, isSilentForOneStepOfDifferenceAndForASwitchAlone) {
    auto c = clean_design();
    priority(c, c.switch_b, 8192);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    priority(c, c.switch_b, 4096);
    c.b.change<model::Device>(c.switch_b, [](auto& row) { row.bridging.tree_off = true; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::root_left_to_chance_test
