// Expected: from the rule's own statement; no standard speaks of it (common practice).
#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::extender_halves_differ_test {

using testing::ElementsAre;
using testing::IsEmpty;

catalogue::DeviceType half(const std::string& key, catalogue::Way way, std::vector<std::string> standards) {
    const bool sends = way == catalogue::Way::out;
    catalogue::DeviceType type;
    type.key = {key}, type.name = "Half", type.maker = "Generic";
    type.kind = sends ? catalogue::DeviceKind::extender_sender : catalogue::DeviceKind::extender_receiver;
    type.ports = {types::make_port("link", catalogue::Signal::extender, way, catalogue::Connector::rj45),
                  types::make_port("hdmi", catalogue::Signal::video, sends ? catalogue::Way::in : catalogue::Way::out,
                                   catalogue::Connector::hdmi)};
    type.ports[0].standards = std::move(standards);
    return type;
}

/// A source, two halves of such links over network cable, and a display.
CleanDesign joined(const std::vector<std::string>& sends, const std::vector<std::string>& takes) {
    auto c = clean_design();
    auto& b = c.b;
    const auto sender = b.device(half("test.sender", catalogue::Way::out, sends), "TX-9");
    const auto receiver = b.device(half("test.receiver", catalogue::Way::in, takes), "RX-9");
    const auto lead = base::Length::from_count(2'000'000);
    b.cable(types::hdmi(), port_of(b.device(types::source(), "SRC-9"), "out"), port_of(sender, "hdmi"), lead);
    b.cable(types::cat6a(), port_of(sender, "link"), port_of(receiver, "link"), base::Length::from_count(20'000'000));
    b.cable(types::hdmi(), port_of(receiver, "hdmi"), port_of(b.device(types::display(), "DSP-9"), "in"), lead);
    return c;
}

TEST(ExtenderHalvesDiffer, firesWhereNoKindOfLinkIsCommon) {
    const auto c = joined({"Ferry link 1"}, {"Ferry link 2"});
    EXPECT_THAT(rules_found(c.design()), ElementsAre("extender-halves-differ"));
    EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), "extender-halves-differ")),
                testing::HasSubstr("(Ferry link 2)"));
}

TEST(ExtenderHalvesDiffer, isSilentWhereOneIsCommonOrOneEndNamesNone) {
    EXPECT_THAT(rules_found(joined({"Ferry link 1", "Ferry link 2"}, {"Ferry link 2"}).design()), IsEmpty());
    EXPECT_THAT(rules_found(joined({"Ferry link 1"}, {}).design()), IsEmpty());
    EXPECT_THAT(rules_found(joined({}, {}).design()), IsEmpty());
}

}  // namespace streamwright::test::extender_halves_differ_test
