#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::connectors_do_not_mate_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(ConnectorsDoNotMate, isSilentOnAPlugOfTheCable) { EXPECT_THAT(rules_found(clean_design().design()), IsEmpty()); }

TEST(ConnectorsDoNotMate, firesOnAPlugThatDoesNotFit) {
    auto c = clean_design();
    auto type = *types::hdmi();
    type.key = {"test.displayport"};
    type.plugs = {catalogue::Connector::displayport};
    c.b.embed(std::make_shared<const catalogue::CableType>(type));
    c.b.change<model::Cable>(c.display_lead, [&](auto& row) { row.type = type.key; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("connectors-do-not-mate", "connectors-do-not-mate"));
    EXPECT_EQ(english_sentence(c.design(), finding_of(c.design(), "connectors-do-not-mate")).find("V"), 0u)
        << "the sentence begins with the cable's tag";
}

TEST(ConnectorsDoNotMate, FiresWhereBothEndsNeedTheSamePlug) {
    auto c = clean_design();
    auto type = *types::hdmi();
    type.key = {"test.hdmi-displayport"};
    type.plugs = {catalogue::Connector::hdmi, catalogue::Connector::displayport};
    type.made_length = 2_m;
    c.b.embed(std::make_shared<const catalogue::CableType>(type));
    c.b.change<model::Cable>(c.display_lead, [&](auto& row) { row.type = type.key; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("connectors-do-not-mate"));
    const auto words = english_sentence(c.design(), finding_of(c.design(), "connectors-do-not-mate"));
    type.made_length.reset();  // cut to length, it is fitted with the plugs that are needed
    type.key = {"test.hdmi-displayport.cut"};
    c.b.embed(std::make_shared<const catalogue::CableType>(type));
    c.b.change<model::Cable>(c.display_lead, [&](auto& row) { row.type = type.key; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    EXPECT_NE(words.find("one plug for each end"), std::string::npos) << words;
}

TEST(ConnectorsDoNotMate, firesOnAnExtenderInANetworkPort) {
    auto c = clean_design();
    catalogue::DeviceType sender;
    sender.key = {"test.extender"};
    sender.name = "Extender, sender";
    sender.kind = catalogue::DeviceKind::extender_sender;
    sender.ports = {
        types::make_port("line", catalogue::Signal::extender, catalogue::Way::both, catalogue::Connector::rj45)};
    const auto id = c.b.device(sender, "EXT-1");
    c.b.cable(types::cat6a(), port_of(id, "line"), port_of(c.switch_a, "9"), 20_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("connectors-do-not-mate"));
}

TEST(ConnectorsDoNotMate, firesOnACableForAnotherSignal) {
    auto c = clean_design();
    auto type = *types::cat6a();
    type.key = {"test.cat6a.audio"};
    type.signal = catalogue::Signal::audio;
    c.b.embed(std::make_shared<const catalogue::CableType>(type));
    c.b.change<model::Cable>(c.decoder_cable, [&](auto& row) { row.type = type.key; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("connectors-do-not-mate", "connectors-do-not-mate"));
}

TEST(ConnectorsDoNotMate, isSilentWhereTheTypeStatesNoPlugs) {
    auto c = clean_design();
    auto type = *types::hdmi();
    type.key = {"test.unstated"};
    type.plugs.clear();
    c.b.embed(std::make_shared<const catalogue::CableType>(type));
    c.b.change<model::Cable>(c.display_lead, [&](auto& row) { row.type = type.key; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::connectors_do_not_mate_test
