// Windows and figures: ITU-R BT.1359-1 (90 ms early, 185 ms late), EBU R37 (40 and 60 ms); field case F46 (composed).
#include "tests/support/sound_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::sound_out_of_step_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

base::Duration ms(int count) { return base::Duration::from_count(count * 1'000'000LL); }

// F46: (17, 50, 3) leads by 64 ms and passes; (100, 50, 3) by 147 ms and does not.
TEST(SoundOutOfStep, f46) {
    EXPECT_THAT(rules_found(SoundRoom(ms(3), ms(17), ms(50)).design()), IsEmpty());
    const SoundRoom late(ms(3), ms(100), ms(50));
    EXPECT_THAT(rules_found(late.design()), ElementsAre("sound-out-of-step"));
    const auto finding = finding_of(late.design(), "sound-out-of-step");
    EXPECT_EQ(finding.measured, base::Value(ms(147)));
    EXPECT_EQ(finding.limit, base::Value(ms(90)));
    EXPECT_THAT(english_sentence(late.design(), finding), HasSubstr("leads its picture on DSP-1 by 147 ms"));
    EXPECT_THAT(terms_of(late.design(), finding),
                ElementsAre("the picture: 150 ms", "DEC-1 decodes: 100 ms", "DSP-1 takes: 50 ms", "the sound: 3 ms",
                            "AP-1 takes: 3 ms"));
}

// F46: with 64 ms added to the sound, A is at 0 and B at +83, inside 90.
TEST(SoundOutOfStep, countsADelayThatIsSet) {
    SoundRoom room(ms(3), ms(100), ms(50));
    room.c.b.change<model::Device>(room.processor, [](auto& row) { row.sound_delay = ms(64); });
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
    room.c.b.change<model::Settings>({}, [](auto& row) { row.lip_sync = model::LipSync::ebu_r37; });
    EXPECT_EQ(finding_of(room.design(), "sound-out-of-step").measured, base::Value(ms(83)));
}

TEST(SoundOutOfStep, itsRemedyBringsThemTogether) {
    const SoundRoom room(ms(3), ms(100), ms(50));
    const auto after = cured(room.design(), finding_of(room.design(), "sound-out-of-step"));
    EXPECT_EQ(after.devices.find(room.processor)->sound_delay, ms(147));
    EXPECT_THAT(rules_found(after), IsEmpty());
}

TEST(SoundOutOfStep, findsSoundThatComesTooLate) {
    const SoundRoom room(ms(260), ms(17), ms(50));  // 67 - 260 = -193, past 185
    EXPECT_THAT(english_sentence(room.design(), finding_of(room.design(), "sound-out-of-step")),
                HasSubstr("comes 193 ms after its picture"));
}

TEST(SoundOutOfStep, saysNothingOfWhatIsNotKnownOrNotTogether) {
    EXPECT_THAT(rules_found(SoundRoom(std::nullopt, ms(300), ms(50)).design()), IsEmpty());
    SoundRoom apart(ms(3), ms(300), ms(50));
    apart.c.b.change<model::Device>(apart.speaker, [&](auto& row) { row.room = apart.c.b.room("1.02", "Foyer"); });
    EXPECT_THAT(rules_found(apart.design()), IsEmpty());
}

}  // namespace streamwright::test::sound_out_of_step_test
