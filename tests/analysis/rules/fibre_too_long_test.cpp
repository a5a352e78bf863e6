#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::fibre_too_long_test {

using analysis::Severity;
using catalogue::CableGrade;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

types::CablePtr graded(CableGrade grade) {
    auto type = *types::om3();
    type.key = {"test.fibre." + std::to_string(static_cast<int>(grade))};
    type.grade = grade;
    return std::make_shared<const catalogue::CableType>(type);
}

CleanDesign trunk_of(const types::CablePtr& type, base::Length length) {
    auto c = clean_design();
    c.b.embed(type);
    c.b.change<model::Cable>(c.trunk, [&](auto& row) {
        row.type = type->key;
        row.length = length;
    });
    return c;
}

TEST(FibreTooLong, reachesAsFarAsModuleAndGradeAllow) {
    // network-values.csv FIB-009, FIB-011, FIB-012, FIB-013: 10GBASE-SR, IEEE 802.3 clause 52; field case F30.
    for (const auto& [grade, most] : {std::pair{CableGrade::om1, 33_m}, std::pair{CableGrade::om2, 82_m},
                                      std::pair{CableGrade::om3, 300_m}, std::pair{CableGrade::om4, 400_m}}) {
        EXPECT_THAT(rules_found(trunk_of(graded(grade), most).design()), IsEmpty());
        const auto over = trunk_of(graded(grade), most + 1_m);
        EXPECT_THAT(rules_found(over.design()), ElementsAre("fibre-too-long"));
        const auto finding = finding_of(over.design(), "fibre-too-long");
        EXPECT_EQ(finding.severity, Severity::error);
        EXPECT_EQ(finding.limit, base::Value(most));
        EXPECT_THAT(terms_of(over.design(), finding), testing::Contains(testing::HasSubstr("= 1 m too long")));
    }
}

TEST(FibreTooLong, offersABetterFibreOfTheDesign) {
    auto c = trunk_of(types::om3(), 350_m);
    c.b.embed(graded(CableGrade::om4));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), "fibre-too-long"))), IsEmpty());
}

TEST(FibreTooLong, warnsBelowTheLeastLength) {
    // Worked example F-14: 25GBASE-SR over a 0.3 m lead is below 0.5 m (FIB-018): warn.
    auto c = clean_design();
    auto module = types::make_module("25GBASE-SR");
    module.key = {"test.module.25gbase-sr"};
    module.module->form = catalogue::Connector::sfp28;
    module.module->rate = 25_Gbps;
    auto type = types::make_switch(2, 1_Gbps, 1);
    type.key = {"test.switch.sfp28"};
    type.ports.back().connector = catalogue::Connector::sfp28;
    type.ports.back().rates = {10_Gbps, 25_Gbps};
    const auto left = c.b.device(type, "SW-X"), right = c.b.device(type, "SW-Y");
    c.b.change<model::Device>(left, [](auto& row) { row.bridging.priority = 4096; });
    c.b.embed(std::make_shared<const catalogue::DeviceType>(module));
    for (const auto id : {left, right}) c.b.port(port_of(id, "s1"), [&](auto& row) { row.module = module.key; });
    const auto cable = c.b.cable(graded(CableGrade::om4), port_of(left, "s1"), port_of(right, "s1"), 300_mm);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("fibre-too-long"))
        << english_sentence(c.design(), analyse_findings(c.design()).front());
    const auto finding = finding_of(c.design(), "fibre-too-long");
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_THAT(terms_of(c.design(), finding), testing::Contains("500 mm - 300 mm = 200 mm too short"));
    c.b.change<model::Cable>(cable, [](auto& row) { row.length = 500_mm; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(FibreTooLong, saysNotKnownWithoutGrade) {
    const auto c = trunk_of(graded(CableGrade::none), 60_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("fibre-too-long"));
    EXPECT_EQ(finding_of(c.design(), "fibre-too-long").severity, Severity::advice);
}

TEST(FibreTooLong, isSilentWhereTheLengthIsNotKnown) {
    auto c = clean_design();
    c.b.change<model::Cable>(c.trunk, [](auto& row) { row.length.reset(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("length-unknown"));
}

}  // namespace streamwright::test::fibre_too_long_test
