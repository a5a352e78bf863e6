#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::hdcp_chain_breaks_test {

using analysis::Severity;
using standards::HdcpContent;
using standards::HdcpVersion;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "hdcp-chain-breaks";

catalogue::PictureFacts speaking(std::optional<HdcpVersion> version) {
    auto facts = picture_facts({"1080p60"});
    facts.hdcp = version;
    return facts;
}

/// Source, extender and display; the display speaks that version.
PictureRoom cabled(std::optional<HdcpVersion> version, HdcpContent content) {
    PictureRoom room;
    const auto good = speaking(HdcpVersion::hdcp_2_3);
    const auto source = room.source("SRC-1", {good, "HDMI 2.0"});
    const auto extender = room.passer("X-1", {good, "HDMI 2.0"}, {good, "HDMI 2.0"});
    room.join(source, "out", extender);
    room.join(extender, "out-1", room.display("DSP-1", {speaking(version), "HDMI 2.0"}));
    room.play(source, content);
    return room;
}

// HDCP 2.2 stream type: type 1 asks for 2.2 or later, type 0 for 1.4 or later.
TEST(HdcpChainBreaks, firesBelowTheVersionThatTheContentAsksForAndNotAtIt) {
    EXPECT_THAT(rules_found(cabled(HdcpVersion::hdcp_2_2, HdcpContent::type_1).b.design), IsEmpty());
    EXPECT_THAT(rules_found(cabled(HdcpVersion::hdcp_1_4, HdcpContent::type_0).b.design), IsEmpty());
    EXPECT_THAT(rules_found(cabled(HdcpVersion::none, HdcpContent::open).b.design), IsEmpty());
    for (const auto version : {HdcpVersion::hdcp_2_0, HdcpVersion::hdcp_1_4, HdcpVersion::none})
        EXPECT_THAT(rules_found(cabled(version, HdcpContent::type_1).b.design), ElementsAre(rule));
    const auto room = cabled(HdcpVersion::none, HdcpContent::type_0);
    EXPECT_THAT(english_sentence(room.b.design, finding_of(room.b.design, rule)), HasSubstr("no HDCP"));
}

/// Source, encoder, decoder, display; the codec does that with protected pictures.
PictureRoom streamed(std::optional<bool> carries) {
    PictureRoom room;
    const auto good = speaking(HdcpVersion::hdcp_2_2);
    const auto source = room.source("SRC-1", {good, "HDMI 2.0"});
    const auto encoder = room.encoder("ENC-1", {good, "HDMI 2.0"}, {{}, {}, {}, false, carries});
    room.join(source, "out", encoder);
    const auto shows = room.decoder("DEC-1", {good, "HDMI 2.0"}, false, {{}, {}, {}, false, true});
    room.join(shows, "out", room.display("DSP-1", {good, "HDMI 2.0"}));
    room.show(room.stream(encoder), shows);
    room.play(source, HdcpContent::type_1);
    return room;
}

TEST(HdcpChainBreaks, firesAtACodecThatCarriesNoProtectedPicture) {
    EXPECT_THAT(rules_found(streamed(true).b.design), IsEmpty());
    const auto room = streamed(false);
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    EXPECT_THAT(english_sentence(room.b.design, finding_of(room.b.design, rule)), HasSubstr("codec"));
}

TEST(HdcpChainBreaks, advisesWhereTypesAreSilent) {
    EXPECT_THAT(rules_found(streamed(std::nullopt).b.design), ElementsAre(rule));
    EXPECT_EQ(finding_of(streamed(std::nullopt).b.design, rule).severity, Severity::advice);
    const auto silent = cabled(std::nullopt, HdcpContent::type_0);
    EXPECT_EQ(finding_of(silent.b.design, rule).severity, Severity::advice);
}

TEST(HdcpChainBreaks, firesAtARecorderWhateverItSpeaks) {
    PictureRoom room;
    auto recorder = speaking(HdcpVersion::hdcp_2_3);
    recorder.captures = true;
    const auto source = room.source("SRC-1", {speaking(HdcpVersion::hdcp_2_3), "HDMI 2.0"});
    room.join(source, "out", room.display("REC-1", {recorder, "HDMI 2.0"}));
    room.play(source, HdcpContent::type_0);
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
}

}  // namespace streamwright::test::hdcp_chain_breaks_test
