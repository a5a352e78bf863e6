#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::hdcp_too_many_devices_test {

using analysis::Severity;
using standards::HdcpContent;
using testing::ElementsAre;
using testing::IsEmpty;

constexpr std::string_view rule = "hdcp-too-many-devices";

catalogue::PictureFacts repeater() {
    auto facts = picture_facts({"1080p60"});
    facts.repeats = true;
    return facts;
}

/// A source that takes so many by its type, on a splitter with so many displays.
PictureRoom split(std::optional<int> most, int displays) {
    PictureRoom room;
    auto facts = picture_facts({"1080p60"});
    facts.hdcp_most_devices = most;
    const auto plain = picture_facts({"1080p60"});
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    const auto splitter = room.passer("SPL-1", {repeater(), "HDMI 2.0"}, {plain, "HDMI 2.0"}, displays);
    room.join(source, "out", splitter);
    for (int i = 1; i <= displays; ++i) {
        const auto n = std::to_string(i);
        room.join(splitter, "out-" + n, room.display("DSP-" + n, {plain, "HDMI 2.0"}));
    }
    room.play(source, HdcpContent::type_1);
    return room;
}

// HDCP 2.2: 31 receivers below one transmitter (LNK-062 of the reference values), the repeater among them; a type may
// take fewer.
TEST(HdcpTooManyDevices, firesAboveWhatTheVersionOrTheTypeTakes) {
    EXPECT_THAT(rules_found(split(std::nullopt, 30).b.design), IsEmpty());
    EXPECT_THAT(rules_found(split(std::nullopt, 31).b.design), ElementsAre(rule));
    EXPECT_THAT(rules_found(split(8, 7).b.design), IsEmpty());
    EXPECT_THAT(rules_found(split(8, 8).b.design), ElementsAre(rule));
    const auto finding = finding_of(split(8, 8).b.design, rule);
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{9}));
    EXPECT_EQ(finding.limit, base::Value(std::int64_t{8}));
}

/// Repeaters in a row, the last on a display.
PictureRoom row_of(int repeaters, std::optional<int> most) {
    PictureRoom room;
    auto facts = picture_facts({"1080p60"});
    facts.hdcp_most_levels = most;
    const auto plain = picture_facts({"1080p60"});
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    auto from = source;
    for (int i = 1; i <= repeaters; ++i) {
        const auto next = room.passer("RPT-" + std::to_string(i), {repeater(), "HDMI 2.0"}, {plain, "HDMI 2.0"});
        room.join(from, from == source ? "out" : "out-1", next);
        from = next;
    }
    room.join(from, "out-1", room.display("DSP-1", {plain, "HDMI 2.0"}));
    room.play(source, HdcpContent::type_1);
    return room;
}

// Four levels (LNK-064) are remembered, not read: a warning. A type's own figure is a limit.
TEST(HdcpTooManyDevices, warnsOfMoreLevelsThanAreRemembered) {
    EXPECT_THAT(rules_found(row_of(4, {}).b.design), IsEmpty());
    EXPECT_EQ(finding_of(row_of(5, {}).b.design, rule).severity, Severity::warning);
    EXPECT_THAT(rules_found(row_of(2, 2).b.design), IsEmpty());
    EXPECT_EQ(finding_of(row_of(3, 2).b.design, rule).severity, Severity::error);
}

TEST(HdcpTooManyDevices, endpointsThatAreNoRepeatersEndTheCount) {
    PictureRoom room;
    auto facts = picture_facts({"1080p60"});
    facts.hdcp_most_devices = 1;
    const auto plain = picture_facts({"1080p60"});
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    const auto encoder = room.encoder("ENC-1", {plain, "HDMI 2.0"}, {{}, {}, {}, false, true});
    room.join(source, "out", encoder);
    const auto stream = room.stream(encoder);
    for (int i = 1; i <= 3; ++i) {
        const auto n = std::to_string(i);
        const auto shows = room.decoder("DEC-" + n, {plain, "HDMI 2.0"}, false, {{}, {}, {}, false, true});
        room.join(shows, "out", room.display("DSP-" + n, {plain, "HDMI 2.0"}));
        room.show(stream, shows);
    }
    room.play(source, HdcpContent::type_1);
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());
}

TEST(HdcpTooManyDevices, isSilentOfOpenContent) {
    auto room = split(8, 8);
    for (const auto& row : model::Design(room.b.design).port_overrides)
        room.b.port(row.port, [](auto& each) { each.protection = HdcpContent::open; });
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());
}

}  // namespace streamwright::test::hdcp_too_many_devices_test
