#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::single_point_of_failure_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

void outlive(DesignBuilder& b, model::Survival survive, std::vector<model::PresetId> presets = {}) {
    auto settings = b.design.settings();
    settings.survive = survive;
    settings.survive_presets = std::move(presets);
    b.put(settings);
}

TEST(SinglePointOfFailure, IsSilentUntilSomethingIsAsked) {
    EXPECT_THAT(rules_found(clean_design().design()), IsEmpty());
}

TEST(SinglePointOfFailure, FiresOnTheOnlyTrunk) {
    auto c = clean_design();
    outlive(c.b, model::Survival::link);
    ASSERT_THAT(rules_found(c.design()), ElementsAre("single-point-of-failure"));
    const auto finding = finding_of(c.design(), "single-point-of-failure");
    EXPECT_EQ(finding.severity, analysis::Severity::warning);
    EXPECT_THAT(finding.subjects, ElementsAre(analysis::Subject(c.trunk)));
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{2})) << "both decoders stand beyond it";
    EXPECT_EQ(terms_of(c.design(), finding).size(), 1u) << "one preset";
}

TEST(SinglePointOfFailure, ASwitchWithWhatHangsOnItIsAdvice) {
    auto c = clean_design();
    outlive(c.b, model::Survival::link_or_switch);
    ASSERT_THAT(rules_found(c.design()),
                ElementsAre("single-point-of-failure", "single-point-of-failure", "single-point-of-failure"));
    int advice = 0;
    for (const auto& finding : analyse_findings(c.design())) advice += finding.severity == analysis::Severity::advice;
    EXPECT_EQ(advice, 2) << "each switch has one end of both pictures";
}

TEST(SinglePointOfFailure, ASecondTrunkCuresIt) {
    auto c = clean_design();
    outlive(c.b, model::Survival::link);
    const auto second = c.b.cable(types::om3(), port_of(c.switch_a, "s2"), port_of(c.switch_b, "s2"), 60_m, "T-2");
    const auto like = [&](model::DeviceId id) {
        auto row = *c.b.design.port_overrides.find(port_of(id, "s1"));
        row.port = port_of(id, "s2");
        c.b.put(row);
    };
    like(c.switch_a), like(c.switch_b);
    EXPECT_THAT(rules_found(c.design()), testing::Not(testing::Contains("single-point-of-failure")));
    // In one duct both go together: the duct is the single point.
    for (const auto id : {c.trunk, second}) c.b.change<model::Cable>(id, [](auto& row) { row.duct = "Trench"; });
    const auto finding = finding_of(c.design(), "single-point-of-failure");
    EXPECT_EQ(finding.subjects.size(), 2u);
    EXPECT_EQ(english_sentence(c.design(), finding),
              "Trench is a single point of failure: 2 pictures are lost where all its cables are cut.");
}

TEST(SinglePointOfFailure, OnlyThePresetsNamedCount) {
    auto c = clean_design();
    const auto other = c.b.preset("Empty");
    outlive(c.b, model::Survival::link, {other});
    EXPECT_THAT(rules_found(c.design()), testing::Not(testing::Contains("single-point-of-failure")));
    outlive(c.b, model::Survival::link, {c.preset});
    EXPECT_THAT(rules_found(c.design()), testing::Contains("single-point-of-failure"));
}

TEST(SinglePointOfFailure, AChainLosesWhatComesAfterButNotForItsLastOwnCable) {
    DesignBuilder b;
    const auto vlan = b.vlan(1, "AV", "10.1.0.0/24");
    b.usual_vlan(vlan);
    const auto sw = b.device(types::switch_24(), "SW-1");
    b.querier(sw, vlan, "10.1.0.1");
    const auto encoder = b.device(types::encoder(), "ENC");
    b.cable(types::cat6a(), port_of(encoder, "net"), port_of(sw, "1"), 10_m);
    const auto first = b.device(types::make_chained_decoder(), "CH-1"),
               last = b.device(types::make_chained_decoder(), "CH-2");
    const auto head = b.cable(types::cat6a(), port_of(sw, "2"), port_of(first, "net"), 10_m);
    b.cable(types::cat6a(), port_of(first, "aux"), port_of(last, "net"), 10_m);
    const auto preset = b.preset("P");
    const auto stream = b.stream(encoder, 100_Mbps, "239.192.0.1");
    for (const auto decoder : {first, last}) b.subscribe(preset, stream, decoder);
    outlive(b, model::Survival::link);
    const auto rules = rules_found(b.design);
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "single-point-of-failure"), 1);
    EXPECT_THAT(finding_of(b.design, "single-point-of-failure").subjects, ElementsAre(analysis::Subject(head)));
}

}  // namespace streamwright::test::single_point_of_failure_test
