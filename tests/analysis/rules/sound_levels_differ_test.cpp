// +4 dBu against -10 dBV is 11.78 dB (arithmetic: dBu re 0.7746 V, dBV re 1 V; rows AUD-015, AUD-017, AUD-021).
#include "tests/support/sound_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::sound_levels_differ_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using Way = catalogue::Way;

/// The loudspeaker fed straight from a port of that standard, itself taking the other.
analysis::Findings with(const std::string& given, const std::string& taken) {
    SoundRoom room;
    auto& b = room.c.b;
    b.design.cables.erase(room.into_speaker);
    b.design.cables.erase(room.into_processor);
    auto gives = SoundRoom::make_player();
    gives.key = {"test.gives"};
    gives.ports.back().standards = {given};
    auto takes = SoundRoom::make_speaker();
    takes.key = {"test.takes"};
    takes.ports.front().standards = {taken};
    const auto from = b.device(gives, "SRC-8"), to = b.device(takes, "LS-8");
    b.design.devices.erase(room.speaker);
    b.cable(types::speaker_cable(), port_of(from, "sound"), port_of(to, "in"), base::Length::from_count(5'000'000));
    auto findings = analyse_findings(room.design());
    std::erase_if(findings, [](const auto& each) { return each.rule != "sound-levels-differ"; });
    return findings;
}

TEST(SoundLevelsDiffer, tellsHowMuch) {
    EXPECT_THAT(with("balanced line", "balanced line"), IsEmpty());
    const auto loud = with("balanced line", "unbalanced line"), quiet = with("unbalanced line", "balanced line");
    ASSERT_EQ(loud.size(), 1u);
    ASSERT_EQ(quiet.size(), 1u);
    EXPECT_EQ(loud.front().severity, analysis::Severity::advice);
    EXPECT_EQ(loud.front().variant, 4);
    EXPECT_EQ(quiet.front().variant, 5);
    EXPECT_EQ(loud.front().values.back(), base::Value(base::Loss::from_count(11782)));
}

TEST(SoundLevelsDiffer, powerAndMicrophonesAreErrors) {
    const auto power = with("loudspeaker 8 ohm", "balanced line"), weak = with("balanced line", "loudspeaker 8 ohm");
    ASSERT_EQ(power.size(), 1u);
    ASSERT_EQ(weak.size(), 1u);
    EXPECT_EQ(power.front().severity, analysis::Severity::error);
    EXPECT_EQ(power.front().variant, 0);
    EXPECT_EQ(weak.front().variant, 1);
    ASSERT_EQ(with("balanced microphone", "balanced line").size(), 1u);
    EXPECT_EQ(with("balanced microphone", "balanced line").front().variant, 2);
    EXPECT_EQ(with("balanced line", "balanced microphone").front().variant, 3);
}

TEST(SoundLevelsDiffer, processorsSetTheirGain) {
    SoundRoom room;
    auto gives = SoundRoom::make_player();
    gives.key = {"test.microphone"};
    gives.ports.back().standards = {"balanced microphone"};
    const auto from = room.c.b.device(gives, "SRC-8");
    room.c.b.cable(types::speaker_cable(), port_of(from, "sound"), port_of(room.processor, "in-2"),
                   base::Length::from_count(5'000'000));
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
}

}  // namespace streamwright::test::sound_levels_differ_test
