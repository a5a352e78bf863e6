#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::edid_copied_from_nothing_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;

constexpr std::string_view rule = "edid-copied-from-nothing";

struct Copied {
    PictureRoom room;
    model::DeviceId source{0}, encoder{0}, display{0};
};

Copied copied() {
    Copied c;
    auto& room = c.room;
    const auto facts = picture_facts({"1080p60"});
    c.source = room.source("SRC-1", {facts, "HDMI 2.0"});
    c.encoder = room.encoder("ENC-1", {facts, "HDMI 2.0"});
    room.join(c.source, "out", c.encoder);
    c.display = room.member("DSP-1", room.stream(c.encoder), {facts, "HDMI 2.0"}, false);
    room.announce(c.encoder, "in", copied_edid(c.display));
    return c;
}

TEST(EdidCopiedFromNothing, isSilentOfADisplayBehindTheInput) {
    EXPECT_THAT(rules_found(copied().room.b.design), IsEmpty());
}

TEST(EdidCopiedFromNothing, firesWhereThePortIsGoneOrTakesNoPicture) {
    auto c = copied();
    c.room.announce(c.encoder, "in", copied_edid(c.display, "gone"));
    EXPECT_THAT(rules_found(c.room.b.design), ElementsAre(rule));
    EXPECT_EQ(finding_of(c.room.b.design, rule).severity, Severity::error);
    EXPECT_THAT(rules_found(cured(c.room.b.design, finding_of(c.room.b.design, rule))), IsEmpty());
    c.room.announce(c.encoder, "in", copied_edid(c.source, "out"));
    EXPECT_THAT(rules_found(c.room.b.design), ElementsAre(rule));
}

TEST(EdidCopiedFromNothing, warnsOfADisplayThatThePictureDoesNotReach) {
    auto c = copied();
    const auto other = c.room.display("DSP-2", {picture_facts({"1080p60"}), "HDMI 2.0"});
    c.room.announce(c.encoder, "in", copied_edid(other));
    EXPECT_THAT(rules_found(c.room.b.design), ElementsAre(rule));
    EXPECT_EQ(finding_of(c.room.b.design, rule).severity, Severity::warning);
}

TEST(EdidCopiedFromNothing, advisesWhereTheDisplayStatesNothing) {
    auto c = copied();
    auto silent = *c.room.b.design.device_types.find({"picture.DSP-1"})->type;
    silent.ports[0].picture.reset();
    c.room.b.embed(std::make_shared<const catalogue::DeviceType>(silent));
    EXPECT_THAT(rules_found(c.room.b.design), ElementsAre(rule));
    EXPECT_EQ(finding_of(c.room.b.design, rule).severity, Severity::advice);
}

}  // namespace streamwright::test::edid_copied_from_nothing_test
