#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::outputs_joined_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(OutputsJoined, firesOnTwoOutputsAndTwoInputs) {
    auto c = clean_design();
    const auto a = c.b.device(types::source(), "SRC-8"), b = c.b.device(types::source(), "SRC-9");
    c.b.cable(types::hdmi(), port_of(a, "out"), port_of(b, "out"), 2_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("outputs-joined"));
    const auto one = c.b.device(types::display(), "DSP-8"), two = c.b.device(types::display(), "DSP-9");
    c.b.cable(types::hdmi(), port_of(one, "in"), port_of(two, "in"), 2_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("outputs-joined", "outputs-joined"));
}

TEST(OutputsJoined, firesOnTwoUsbSocketsForPeripherals) {
    auto c = clean_design();
    c.b.cable(types::usb_lead(), port_of(c.source, "usb"), port_of(c.decoder, "usb"), 2_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("outputs-joined"));
}

TEST(OutputsJoined, movesTheEndToAFreePortOfTheOtherWay) {
    auto c = clean_design();
    c.b.design.cables.erase(c.source_lead);
    c.b.cable(types::hdmi(), port_of(c.source, "out"), port_of(c.encoder, "loop"), 2_m, "V99");
    const auto finding = finding_of(c.design(), "outputs-joined");
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(OutputsJoined, isSilentOnAUsbLeadFromComputerToEncoder) {
    auto c = clean_design();
    c.b.cable(types::usb_lead(), port_of(c.source, "usb"), port_of(c.encoder, "usb"), 2_m);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::outputs_joined_test
