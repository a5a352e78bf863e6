#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::format_does_not_fit_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "format-does-not-fit";
const std::vector<std::string> large{"2160p60", "1080p60"};

/// A source set to that format, on a display by that link.
PictureRoom direct(const std::string& format, const std::string& link) {
    PictureRoom room;
    const auto source = room.source("SRC-1", {picture_facts(large), "HDMI 2.1"});
    room.join(source, "out", room.display("DSP-1", {picture_facts(large), link}));
    room.set(source, "out", format);
    return room;
}

// HDMI: 594 MHz of characters x 10 bits x 3 = 17.82 of 18 Gb/s fit; at 10 bits of depth 742.5 MHz and 22.275 do not.
TEST(FormatDoesNotFit, firesAboveWhatTheLinkCarriesAndNotAtIt) {
    EXPECT_THAT(rules_found(direct("2160p60 RGB 8-bit", "HDMI 2.0").b.design), IsEmpty());
    const auto room = direct("2160p60 RGB 10-bit", "HDMI 2.0");
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    const auto finding = finding_of(room.b.design, rule);
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(english_sentence(room.b.design, finding), HasSubstr("22.275 Gb/s"));
    EXPECT_THAT(english_sentence(room.b.design, finding), HasSubstr("18 Gb/s"));
    EXPECT_THAT(terms_of(room.b.design, finding).front(), HasSubstr("594 MHz"));
    EXPECT_THAT(rules_found(cured(room.b.design, finding)), IsEmpty());
}

TEST(FormatDoesNotFit, firesAtADisplayThatDoesNotKnowTheRaster) {
    const auto room = direct("2160p60", "HDMI 2.0");
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());
    PictureRoom small;
    const auto source = small.source("SRC-1", {picture_facts(large), "HDMI 2.0"});
    small.join(source, "out", small.display("MON-1", {picture_facts({"1080p60"}), "HDMI 2.0"}));
    EXPECT_THAT(rules_found(small.b.design), IsEmpty());  // the source follows the EDID of the monitor
    small.set(source, "out", "2160p60");
    EXPECT_THAT(rules_found(small.b.design), ElementsAre(rule));
    EXPECT_THAT(english_sentence(small.b.design, finding_of(small.b.design, rule)), HasSubstr("1080p60"));
    EXPECT_THAT(rules_found(cured(small.b.design, finding_of(small.b.design, rule))), IsEmpty());
}

TEST(FormatDoesNotFit, firesWhereTheSourceCannotGiveWhatIsSet) {
    const auto room = direct("1080p50", "HDMI 2.0");
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    EXPECT_THAT(english_sentence(room.b.design, finding_of(room.b.design, rule)), HasSubstr("does not give"));
}

TEST(FormatDoesNotFit, namesTheCableThatIsMadeForLess) {
    auto room = direct("2160p60", "HDMI 2.0");
    auto old = *types::hdmi();
    old.key = {"old-lead"};
    old.picture_link = "HDMI 1.4";
    room.b.embed(std::make_shared<const catalogue::CableType>(old));
    const auto id = room.b.design.cables.begin()->id;
    room.b.change<model::Cable>(id, [&](auto& row) { row.type = old.key; });
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    EXPECT_THAT(finding_of(room.b.design, rule).subjects, testing::Contains(analysis::Subject(id)));
}

TEST(FormatDoesNotFit, namesTheCodecThatTakesNoSuchRaster) {
    PictureRoom room;
    const auto source = room.source("SRC-1", {picture_facts(large), "HDMI 2.0"});
    const auto encoder =
        room.encoder("ENC-1", {picture_facts(large), "HDMI 2.0"}, {picture_format("1080p60"), {}, {}, false, {}});
    room.join(source, "out", encoder);
    room.member("DSP-1", room.stream(encoder), {picture_facts(large), "HDMI 2.0"}, false);
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());  // the encoder announces what its codec takes
    room.set(source, "out", "2160p60");
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    EXPECT_THAT(english_sentence(room.b.design, finding_of(room.b.design, rule)), HasSubstr("codec"));
}

/// An encoder of large pictures, and a monitor of small ones behind a decoder that does not scale.
PictureRoom unequal() {
    PictureRoom room;
    const auto source = room.source("SRC-1", {picture_facts(large), "HDMI 2.0"});
    const auto encoder = room.encoder("ENC-1", {picture_facts(large), "HDMI 2.0"});
    room.join(source, "out", encoder);
    room.member("MON-1", room.stream(encoder), {picture_facts({"1080p60"}), "HDMI 2.0"}, false);
    return room;
}

TEST(FormatDoesNotFit, warnsWhereOnlyTheTypesOwnEdidCallsForTheFormat) {
    const auto room = unequal();
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    const auto finding = finding_of(room.b.design, rule);
    EXPECT_EQ(finding.severity, Severity::warning);
    EXPECT_THAT(rules_found(cured(room.b.design, finding)), IsEmpty());
}

TEST(FormatDoesNotFit, isSilentWhereTypesAreSilent) {
    PictureRoom room;
    const auto source = room.source("SRC-1", {std::nullopt, ""});
    room.join(source, "out", room.display("DSP-1", {std::nullopt, ""}));
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());
    const auto silent = room.source("SRC-2", {std::nullopt, "HDMI 2.0"});
    room.join(silent, "out", room.display("DSP-2", {picture_facts({"720p60"}), "HDMI 1.4"}));
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());
}

TEST(FormatDoesNotFit, findsASourceThatHasNothingInCommonWithItsDisplay) {
    PictureRoom room;
    const auto source = room.source("SRC-1", {picture_facts({"1080p50"}), "HDMI 2.0"});
    room.join(source, "out", room.display("DSP-1", {picture_facts({"2160p60"}), "HDMI 2.0"}));
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    EXPECT_THAT(english_sentence(room.b.design, finding_of(room.b.design, rule)), HasSubstr("in common"));
}

}  // namespace streamwright::test::format_does_not_fit_test
