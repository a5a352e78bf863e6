#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::hdr_not_passed_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "hdr-not-passed";

/// A source set to that format, an encoder and decoder with that codec, a display that takes anything.
PictureRoom sent(const std::string& format, const catalogue::CodecPicture& codec) {
    PictureRoom room;
    const auto facts = picture_facts({"2160p60", "1080p60"});
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    const auto encoder = room.encoder("ENC-1", {facts, "HDMI 2.0"}, codec);
    room.join(source, "out", encoder);
    room.member("DSP-1", room.stream(encoder), {facts, "HDMI 2.0"}, false);
    room.set(source, "out", format);
    return room;
}

// ITU-R BT.2100: PQ and HLG in 10 or 12 bits.
TEST(HdrNotPassed, firesWhereTheCodecFlattensItOrCutsItBelowTenBits) {
    EXPECT_THAT(rules_found(sent("2160p60 4:2:0 10-bit PQ", {{}, {}, 10, false, {}}).b.design), IsEmpty());
    for (const auto& codec :
         {catalogue::CodecPicture{{}, {}, 8, false, {}}, catalogue::CodecPicture{{}, {}, {}, true, {}}}) {
        const auto room = sent("2160p60 4:2:0 10-bit PQ", codec);
        EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
        const auto finding = finding_of(room.b.design, rule);
        EXPECT_EQ(finding.severity, analysis::Severity::warning);
        EXPECT_THAT(english_sentence(room.b.design, finding), HasSubstr("DSP-1"));
        EXPECT_THAT(rules_found(cured(room.b.design, finding)), IsEmpty());
    }
}

TEST(HdrNotPassed, firesWhereHdrIsSentInEightBits) {
    EXPECT_THAT(rules_found(sent("1080p60 RGB 8-bit HLG", {}).b.design), ElementsAre(rule));
}

TEST(HdrNotPassed, isSilentOfSdrAndOfSourcesOfWhichNothingIsSaid) {
    EXPECT_THAT(rules_found(sent("2160p60 4:2:0 10-bit", {{}, {}, 8, true, {}}).b.design), IsEmpty());
}

}  // namespace streamwright::test::hdr_not_passed_test
