#include "tests/support/fibre_way.h"

#include <gmock/gmock.h>

namespace streamwright::test::fibre_kinds_mixed_test {

using analysis::Severity;
using catalogue::CableGrade;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(FibreKindsMixed, warnsOfTwoCores) {
    EXPECT_THAT(rules_found(FibreWay(CableGrade::om3, 20_m).b.design), IsEmpty());
    const FibreWay way(CableGrade::om1, 20_m);  // leads of OM4
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-kinds-mixed"));
    EXPECT_EQ(finding_of(way.b.design, "fibre-kinds-mixed").severity, Severity::warning);
    EXPECT_THAT(rules_found(FibreWay(CableGrade::none, 20_m).b.design), ElementsAre("fibre-too-long"))
        << "a grade that is not stated is not compared";
}

TEST(FibreKindsMixed, saysOnceThatMultimodeMeetsSingleMode) {
    FibreWay way(CableGrade::om4, 20_m);
    way.lead([](auto& type) { type.medium = catalogue::Medium::singlemode, type.grade = CableGrade::os2; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-does-not-fit")) << "the transceivers say so already";
    // Without transceivers, on fixed fibre ports, nobody else says it.
    auto type = types::make_switch(1, 1_Gbps, 1);
    type.key = {"test.fixed-fibre"};
    type.ports.back().signal = catalogue::Signal::fibre;
    type.ports.back().connector = catalogue::Connector::lc_duplex;
    way.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    for (const auto& device : model::Design(way.b.design).devices)
        if (device.tag.starts_with("SW")) {
            way.b.change<model::Device>(device.id, [&](auto& row) { row.type = type.key; });
            way.b.port(port_of(device.id, "s1"), [](auto& row) { row.module.reset(); });
        }
    EXPECT_THAT(rules_found(way.b.design), testing::Contains("fibre-kinds-mixed"));
    EXPECT_EQ(finding_of(way.b.design, "fibre-kinds-mixed").severity, Severity::error);
}

}  // namespace streamwright::test::fibre_kinds_mixed_test
