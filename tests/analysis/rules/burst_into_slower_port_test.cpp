#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::burst_into_slower_port_test {

using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

/// The clean design with both encoders on ports that come up at this speed.
CleanDesign senders_at(base::BitRate speed) {
    auto c = clean_design();
    auto encoder = *types::encoder();
    auto bridge = *types::switch_24();
    for (auto& port : encoder.ports)
        if (port.key.text == "net") port.rates = {speed};
    for (auto& port : bridge.ports)
        if (port.key.text == "1" || port.key.text == "2") port.rates.push_back(speed);
    c.b.embed(std::make_shared<const catalogue::DeviceType>(encoder));
    c.b.embed(std::make_shared<const catalogue::DeviceType>(bridge));
    return c;
}

TEST(BurstIntoSlowerPort, asksOnceForTheSwitchWhereStreamsSlowDown) {
    // Over the trunk of 10 Gb/s bursts pass as they came; at switch B they leave by two ports of 1 Gb/s.
    const auto c = senders_at(10_Gbps);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("burst-into-slower-port"));
    const auto finding = finding_of(c.design(), "burst-into-slower-port");
    EXPECT_EQ(finding.severity, analysis::Severity::advice);
    EXPECT_EQ(finding.subjects, (std::vector<analysis::Subject>{c.switch_b}));
    // 1 - 1 / 10: nine tenths of a burst come in while one tenth goes out.
    EXPECT_THAT(english_sentence(c.design(), finding),
                AllOf(HasSubstr("10 Gb/s"), HasSubstr("ports: 2, streams: 2"), HasSubstr("90")));
    // 200 Mb/s / 60 / 8 = 416,666 octets a picture, and nine tenths of 416 kB are 374 kB.
    EXPECT_THAT(terms_of(c.design(), finding).back(), AllOf(HasSubstr("416 kB"), HasSubstr("374 kB")));
}

TEST(BurstIntoSlowerPort, asksAtTheFirstSlowStepOnly) {
    // A trunk of 1 Gb/s paces what follows it: nothing waits at switch B.
    auto c = senders_at(10_Gbps);
    c.b.design.cables.erase(c.trunk);
    add_copper_trunk(c, "11");
    EXPECT_EQ(finding_of(c.design(), "burst-into-slower-port").subjects, (std::vector<analysis::Subject>{c.switch_a}));
    EXPECT_EQ(std::ranges::count(rules_found(c.design()), "burst-into-slower-port"), 1);
}

TEST(BurstIntoSlowerPort, isSilentWhereBothAreAlikeOrTheReceiverIsFaster) {
    EXPECT_THAT(rules_found(senders_at(1_Gbps).design()), IsEmpty());
    EXPECT_THAT(rules_found(clean_design().design()), IsEmpty());
}

TEST(BurstIntoSlowerPort, isSilentWhereNobodyIsShownTheStream) {
    auto c = senders_at(10_Gbps);
    c.b.design.subscriptions = {};
    EXPECT_EQ(std::ranges::count(rules_found(c.design()), "burst-into-slower-port"), 0);
}

}  // namespace streamwright::test::burst_into_slower_port_test
