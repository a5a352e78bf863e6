#include "tests/support/sound_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::sound_not_fed_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(SoundNotFed, firesWithoutALead) {
    SoundRoom room;
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
    room.c.b.design.cables.erase(room.into_speaker);
    EXPECT_THAT(rules_found(room.design()), ElementsAre("sound-not-fed"));
    EXPECT_EQ(finding_of(room.design(), "sound-not-fed").variant, 0);
}

TEST(SoundNotFed, firesWhereNothingSoundsBeforeIt) {
    SoundRoom room;
    room.c.b.design.cables.erase(room.into_processor);
    EXPECT_THAT(rules_found(room.design()), ElementsAre("sound-not-fed"));
    EXPECT_EQ(finding_of(room.design(), "sound-not-fed").variant, 1);
}

TEST(SoundNotFed, ADecoderIsASource) {
    SoundRoom room;
    room.c.b.design.cables.erase(room.into_processor);
    auto type = types::make_decoder();
    type.key = {"test.sounding"};
    type.ports.push_back(SoundRoom::sound_port("sound", catalogue::Way::out, "balanced line"));
    room.c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    room.c.b.change<model::Device>(room.c.decoder2, [&](auto& row) { row.type = type.key; });
    room.c.b.cable(types::speaker_cable(), port_of(room.c.decoder2, "sound"), port_of(room.processor, "in-1"),
                   base::Length::from_count(5'000'000), "A900");
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
}

}  // namespace streamwright::test::sound_not_fed_test
