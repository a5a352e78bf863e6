#include "tests/support/wall_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::led_output_on_network_test {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr auto rule = "led-output-on-network";
const catalogue::ImageFacts image{320, 180, {}, {}};

TEST(LedOutputOnNetwork, CabinetsOnTheProcessorAreSilent) {
    LedRoom r(std::nullopt);
    r.chain("data-1", 3, image);
    EXPECT_THAT(rules_found(r.design()), IsEmpty());
}

TEST(LedOutputOnNetwork, FiresAtASwitch) {
    LedRoom r(std::nullopt);
    r.chain("data-1", 1, image);
    r.c.b.cable(types::cat6a(), port_of(r.processor, "data-2"), port_of(r.c.switch_a, "20"), LedRoom::led_lead());
    EXPECT_THAT(rules_found(r.design()), ElementsAre(rule));
    const auto finding = finding_of(r.design(), rule);
    EXPECT_EQ(finding.severity, analysis::Severity::error);
    EXPECT_EQ(english_sentence(r.design(), finding),
              "LED-1 data-2 carries data for LED cabinets and is joined to the network port SW-A 20.");
}

TEST(LedOutputOnNetwork, FiresThroughAPanelAndOnCabinetsToo) {
    LedRoom r(std::nullopt);
    r.chain("data-1", 1, image);
    const auto panel = r.c.b.device(types::patch_panel(), "PP-1"), alone = r.cabinet("C-9", image);
    r.c.b.cable(types::cat6a(), port_of(alone, "data-in"), port_of(panel, "r1"), LedRoom::led_lead());
    r.c.b.cable(types::cat6a_lead(), port_of(panel, "f1"), port_of(r.c.switch_a, "20"), {});
    EXPECT_THAT(rules_found(r.design()), ElementsAre(rule));
}

TEST(LedOutputOnNetwork, FiresAtAnExtender) {
    LedRoom r(std::nullopt);
    r.chain("data-1", 1, image);
    auto type = types::make_display();
    type.key = {"test.receiver"};
    type.kind = catalogue::DeviceKind::extender_receiver;
    type.ports = {
        types::make_port("link", catalogue::Signal::extender, catalogue::Way::in, catalogue::Connector::rj45)};
    r.c.b.cable(types::cat6a(), port_of(r.processor, "data-2"), port_of(r.c.b.device(type, "RX-1"), "link"),
                LedRoom::led_lead());
    EXPECT_EQ(english_sentence(r.design(), finding_of(r.design(), rule)),
              "LED-1 data-2 carries data for LED cabinets and is joined to RX-1 link, the port of an extender.");
}

}  // namespace streamwright::test::led_output_on_network_test
