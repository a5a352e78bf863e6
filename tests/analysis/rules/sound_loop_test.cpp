#include "tests/support/sound_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::sound_loop_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(SoundLoop, findsARingOfLeads) {
    SoundRoom room;
    auto& b = room.c.b;
    const auto second = b.device(SoundRoom::make_processor({}), "AP-2");
    const auto length = base::Length::from_count(5'000'000);
    b.cable(types::speaker_cable(), port_of(room.processor, "out-2"), port_of(second, "in-1"), length);
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
    b.cable(types::speaker_cable(), port_of(second, "out-1"), port_of(room.processor, "in-2"), length);
    EXPECT_THAT(rules_found(room.design()), ElementsAre("sound-loop"));
    const auto finding = finding_of(room.design(), "sound-loop");
    EXPECT_EQ(finding.variant, 1);
    EXPECT_EQ(finding.subjects.size(), 2u);
}

// The decoder's sound goes through the processor into the encoder that sends it.
TEST(SoundLoop, findsARingOverTheNetwork) {
    SoundRoom room;
    auto& b = room.c.b;
    room.retype(room.c.decoder, types::make_decoder(), [](auto& type) {
        type.ports.push_back(SoundRoom::sound_port("sound", catalogue::Way::out, "balanced line"));
    });
    const auto length = base::Length::from_count(5'000'000);
    b.cable(types::speaker_cable(), port_of(room.c.decoder, "sound"), port_of(room.processor, "in-2"), length);
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
    b.cable(types::speaker_cable(), port_of(room.processor, "out-2"), port_of(room.c.encoder, "audio"), length);
    const auto finding = finding_of(room.design(), "sound-loop");
    EXPECT_EQ(finding.variant, 0);
    EXPECT_THAT(english_sentence(room.design(), finding), HasSubstr("in Lecture"));
    b.design.subscriptions.erase(room.c.shown);
    for (const auto& each : analyse_findings(room.design())) EXPECT_NE(each.rule, "sound-loop");
}

// An endpoint's encoder and decoder are two places: what it decodes is not what it encodes.
TEST(SoundLoop, anEndpointIsNoRing) {
    auto c = clean_design();
    c.b.cable(types::hdmi(), port_of(c.decoder2, "out"), port_of(c.encoder, "in"), base::Length::from_count(2'000'000));
    for (const auto& each : analyse_findings(c.design())) EXPECT_NE(each.rule, "sound-loop");
}

}  // namespace streamwright::test::sound_loop_test
