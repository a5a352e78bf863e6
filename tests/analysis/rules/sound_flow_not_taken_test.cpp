// Levels of SMPTE ST 2110-30: rows COD-088 to COD-093 of tests/reference.
#include "tests/analysis/rules/packed_streams.h"

namespace streamwright::test::sound_flow_not_taken_test {

using standards::AudioCoding;
using standards::PacketTime;
using testing::ElementsAre;
using testing::IsEmpty;

CleanDesign heard(const standards::AudioStream& flow, const std::optional<catalogue::SoundFlows>& flows) {
    auto c = clean_design();
    pack_sound(c, flow);
    change_type(c, c.decoder, [&](auto& type) { type.codec->sound_flows = flows; });
    return c;
}

std::vector<std::string> rules(const standards::AudioStream& flow, const std::optional<catalogue::SoundFlows>& flows) {
    return rules_found(heard(flow, flows).design());
}

const standards::AudioStream stereo{48'000, AudioCoding::l24, 2, PacketTime::ms_1};

TEST(SoundFlowNotTaken, FiresJustAboveTheChannelsOfTheLevel) {
    const catalogue::SoundFlows a{{"A"}, false, {}, {}};
    EXPECT_THAT(rules({48'000, AudioCoding::l24, 8, PacketTime::ms_1}, a), IsEmpty());  // COD-088
    const auto design = heard({48'000, AudioCoding::l24, 9, PacketTime::ms_1}, a).b.design;
    EXPECT_THAT(rules_found(design), ElementsAre("sound-flow-not-taken"));
    EXPECT_EQ(english_sentence(design, finding_of(design, "sound-flow-not-taken")),
              "DEC-1 receives S-1 (9 channels, 48 kHz, L24, 1 ms), but takes only what levels A of ST 2110-30 hold.");
}

TEST(SoundFlowNotTaken, HoldsSamplingAndPacketTimeAgainstEachLevel) {
    const catalogue::SoundFlows b_ax{{"B", "AX"}, false, {}, {}};
    EXPECT_THAT(rules({48'000, AudioCoding::l24, 8, PacketTime::us_125}, b_ax), IsEmpty());  // COD-089
    EXPECT_THAT(rules({96'000, AudioCoding::l24, 4, PacketTime::ms_1}, b_ax), IsEmpty());    // COD-091
    EXPECT_THAT(rules(stereo, b_ax), ElementsAre("sound-flow-not-taken"));
    EXPECT_THAT(rules({96'000, AudioCoding::l24, 2, PacketTime::us_125}, b_ax), ElementsAre("sound-flow-not-taken"));
    EXPECT_THAT(rules({48'000, AudioCoding::l24, 2, PacketTime::us_250}, b_ax), ElementsAre("sound-flow-not-taken"));
}

TEST(SoundFlowNotTaken, Aes3FramesAreTakenWhereTheTypeSaysSo) {
    const standards::AudioStream frames{48'000, AudioCoding::am824, 2, PacketTime::ms_1};
    EXPECT_THAT(rules(frames, catalogue::SoundFlows{{"A"}, true, {}, {}}), IsEmpty());
    const auto design = heard(frames, catalogue::SoundFlows{{"A"}, false, {}, {}}).b.design;
    EXPECT_THAT(rules_found(design), ElementsAre("sound-flow-not-taken"));
    EXPECT_THAT(english_sentence(design, finding_of(design, "sound-flow-not-taken")),
                testing::HasSubstr("AES3 frames"));
}

TEST(SoundFlowNotTaken, IsSilentWhereTheTypeNamesNoLevel) {
    EXPECT_THAT(rules(stereo, std::nullopt), IsEmpty());
    EXPECT_THAT(rules(stereo, catalogue::SoundFlows{{}, false, 4, {}}), IsEmpty());
}

TEST(SoundFlowNotTaken, AnOpenStandardNeedsNoFamily) {
    auto c = heard(stereo, catalogue::SoundFlows{{"A"}, false, {}, {}});
    change_type(c, c.decoder, [](auto& type) { type.codec->family = "other"; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::sound_flow_not_taken_test
