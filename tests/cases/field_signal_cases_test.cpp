// Field cases of pictures, each as a small design with the whole set of what must be found in it and nothing else. The
// rows, their figures and their sources stand in tests/reference/field-cases.csv.
#include "tests/cases/field_room.h"
#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::field_signal_cases_test {

using testing::AllOf;
using testing::HasSubstr;

std::string sentence_of(const PictureRoom& room, std::string_view rule) {
    return english_sentence(room.b.design, finding_of(room.b.design, rule));
}

/// What is left of the source's picture at each display, in words; "-" for no picture.
std::map<std::string, std::string> shown_at(const PictureRoom& room) {
    const auto analysis = analysis::analyse(room.b.design);
    const auto& wiring = analysis.facts.get<graph::Wiring>();
    const auto& chains = analysis.facts.get<analysis::VideoChains>();
    std::map<std::string, std::string> shown;
    for (const auto& origin : chains.origins)
        for (const auto& arrival : origin.arrivals)
            if (arrival.shows)
                shown[wiring.devices[static_cast<std::size_t>(arrival.at.device)].row->tag] =
                    arrival.left ? standards::raster_text(chains.space.format(*arrival.left)) : "-";
    return shown;
}

// ---- F40: one source of 2160p60 on one stream, three screens of 2160p and a monitor of 1080p ----

const std::vector<std::string> large{"2160p60", "1080p60"}, small{"1080p60"};

PictureRoom mixed_displays(const std::optional<model::EdidPolicy>& edid, bool scaling_monitor) {
    PictureRoom room;
    const auto source = room.source("SRC-1", {picture_facts(large), "HDMI 2.0"});
    const auto encoder = room.encoder("ENC-1", {picture_facts(large), "HDMI 2.0"});
    room.join(source, "out", encoder);
    const auto stream = room.stream(encoder);
    for (const auto* tag : {"DSP-1", "DSP-2", "DSP-3"})
        room.member(tag, stream, {picture_facts(large), "HDMI 2.0"}, false);
    room.member("MON-4", stream, {picture_facts(small), "HDMI 2.0"}, scaling_monitor);
    if (edid) room.announce(encoder, "in", *edid);
    return room;
}

TEST(FieldCases, F40ACommonMinimumHoldsThreeScreensBack) {
    const auto room = mixed_displays(merged_edid(), false);
    EXPECT_EQ(shown_at(room),
              (std::map<std::string, std::string>{
                  {"DSP-1", "1080p60"}, {"DSP-2", "1080p60"}, {"DSP-3", "1080p60"}, {"MON-4", "1080p60"}}));
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"shared-stream-held-back", 1}}));
    EXPECT_THAT(sentence_of(room, "shared-stream-held-back"),
                AllOf(HasSubstr("MON-4"), HasSubstr("1080p60"), HasSubstr("2160p60")));
}

TEST(FieldCases, F40TheLargeScreensFormatLeavesTheMonitorBlack) {
    const auto room = mixed_displays(fixed_edid("2160p60"), false);
    EXPECT_EQ(shown_at(room), (std::map<std::string, std::string>{
                                  {"DSP-1", "2160p60"}, {"DSP-2", "2160p60"}, {"DSP-3", "2160p60"}, {"MON-4", "-"}}));
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"format-does-not-fit", 1}}));
    const auto finding = finding_of(room.b.design, "format-does-not-fit");
    EXPECT_EQ(finding.severity, analysis::Severity::error);
    EXPECT_THAT(english_sentence(room.b.design, finding),
                AllOf(HasSubstr("2160p60"), HasSubstr("MON-4"), HasSubstr("1080p60")));
    EXPECT_EQ(found_by_rule(cured(room.b.design, finding)), (Found{{"shared-stream-held-back", 1}}));
}

TEST(FieldCases, F40ADecoderThatScalesSettlesIt) {
    for (const auto& edid :
         {std::optional(fixed_edid("2160p60")), std::optional(merged_edid()), std::optional<model::EdidPolicy>()}) {
        const auto room = mixed_displays(edid, true);
        EXPECT_EQ(found_by_rule(room.b.design), Found{});
        EXPECT_EQ(shown_at(room),
                  (std::map<std::string, std::string>{
                      {"DSP-1", "2160p60"}, {"DSP-2", "2160p60"}, {"DSP-3", "2160p60"}, {"MON-4", "1080p60"}}));
    }
}

// ---- F41: content of HDCP 2.2, sinks of 2.2, 2.2 and 1.4; a capture device ----

PictureRoom protected_room(standards::HdcpContent content, bool captures) {
    PictureRoom room;
    const auto source = room.source("SRC-2", {picture_facts(large), "HDMI 2.0"});
    const auto splitter =
        room.passer("SPL-1", {picture_facts(large), "HDMI 2.0"}, {picture_facts(large), "HDMI 2.0"}, 3);
    room.join(source, "out", splitter);
    auto third = picture_facts(large);
    third.hdcp = standards::HdcpVersion::hdcp_1_4;
    if (captures) third.hdcp = standards::HdcpVersion::hdcp_2_2, third.captures = true;
    for (int i = 1; i <= 3; ++i) {
        const auto n = std::to_string(i);
        room.join(splitter, "out-" + n, room.display("C" + n, {i < 3 ? picture_facts(large) : third, "HDMI 2.0"}));
    }
    room.play(source, content);
    return room;
}

TEST(FieldCases, F41OneOldSinkGetsNoPictureOfHdcp22) {
    using standards::HdcpContent;
    const auto room = protected_room(HdcpContent::type_1, false);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"hdcp-chain-breaks", 1}}));
    EXPECT_EQ(finding_of(room.b.design, "hdcp-chain-breaks").severity, analysis::Severity::error);
    EXPECT_THAT(sentence_of(room, "hdcp-chain-breaks"),
                AllOf(HasSubstr("SRC-2"), HasSubstr("2.2"), HasSubstr("C3"), HasSubstr("1.4")));
    // Content of HDCP 1.4 may go to all of them.
    EXPECT_EQ(found_by_rule(protected_room(HdcpContent::type_0, false).b.design), Found{});
    EXPECT_EQ(found_by_rule(protected_room(HdcpContent::open, false).b.design), Found{});
}

TEST(FieldCases, F41ARecorderTakesNoProtectedContentAtAll) {
    using standards::HdcpContent;
    for (const auto content : {HdcpContent::type_0, HdcpContent::type_1})
        EXPECT_EQ(found_by_rule(protected_room(content, true).b.design), (Found{{"hdcp-chain-breaks", 1}}));
    EXPECT_EQ(found_by_rule(protected_room(HdcpContent::open, true).b.design), Found{});
}

// ---- F42: 2160p60 4:4:4 HDR, parts of 18 Gb/s, one extender of 10.2 ----

PictureRoom hdr_room(const std::string& format, const std::string& extender) {
    PictureRoom room;
    const auto facts = catalogue::PictureFacts{};
    const auto source = room.source("MP-1", {facts, "HDMI 2.0"});
    const auto far = room.passer("X3", {facts, extender}, {facts, extender});
    room.join(source, "out", far);
    room.join(far, "out-1", room.display("PRJ-1", {facts, "HDMI 2.0"}));
    room.set(source, "out", format);
    return room;
}

TEST(FieldCases, F42HdrDoesNotPassALinkOfTen) {
    const auto room = hdr_room("2160p60 4:4:4 10-bit PQ", "HDMI 1.4");
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"format-does-not-fit", 1}}));
    EXPECT_THAT(sentence_of(room, "format-does-not-fit"), AllOf(HasSubstr("22.275 Gb/s"), HasSubstr("10.2 Gb/s"),
                                                                HasSubstr("X3"), HasSubstr("4:2:0 8-bit fits")));
    const auto cure = cured(room.b.design, finding_of(room.b.design, "format-does-not-fit"));
    EXPECT_EQ(found_by_rule(cure), Found{});
}

TEST(FieldCases, F42EachFormAgainstEachLimit) {
    struct Row {
        std::string format;
        bool ten, eighteen;
    };
    // 22.28, 17.82, 17.82, 11.14, 8.91 and 11.14 Gb/s.
    const Row rows[] = {{"2160p60 4:4:4 10-bit", false, false}, {"2160p60 4:4:4 8-bit", false, true},
                        {"2160p60 4:2:2 12-bit", false, true},  {"2160p60 4:2:0 10-bit", false, true},
                        {"2160p60 4:2:0 8-bit", true, true},    {"2160p30 4:4:4 10-bit", false, true}};
    for (const auto& row : rows) {
        const auto black = Found{{"format-does-not-fit", 1}};
        EXPECT_EQ(found_by_rule(hdr_room(row.format, "HDMI 1.4").b.design), row.ten ? Found{} : black) << row.format;
        EXPECT_EQ(found_by_rule(hdr_room(row.format, "HDMI 2.0").b.design), row.eighteen ? Found{} : black)
            << row.format;
    }
    // With the newer line code 4:4:4 10-bit is 20.05 Gb/s and passes a link of 24.
    PictureRoom room;
    const auto source = room.source("MP-1", {catalogue::PictureFacts{}, "HDMI 2.1 FRL 3"});
    room.join(source, "out", room.display("PRJ-1", {catalogue::PictureFacts{}, "HDMI 2.1 FRL 3"}));
    room.set(source, "out", "2160p60 4:4:4 10-bit");
    EXPECT_EQ(found_by_rule(room.b.design), Found{});
}

}  // namespace streamwright::test::field_signal_cases_test
