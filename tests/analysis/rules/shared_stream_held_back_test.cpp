#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::shared_stream_held_back_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr std::string_view rule = "shared-stream-held-back";
const std::vector<std::string> large{"2160p60", "1080p60"}, small{"1080p60"};

struct Shared {
    PictureRoom room;
    model::DeviceId encoder{0}, screen{0}, monitor{0};
};

Shared shared(const std::vector<std::string>& monitor, bool scales) {
    Shared s;
    auto& room = s.room;
    const auto source = room.source("SRC-1", {picture_facts(large), "HDMI 2.0"});
    s.encoder = room.encoder("ENC-1", {picture_facts(large), "HDMI 2.0"});
    room.join(source, "out", s.encoder);
    const auto stream = room.stream(s.encoder);
    s.screen = room.member("DSP-1", stream, {picture_facts(large), "HDMI 2.0"}, false);
    s.monitor = room.member("MON-2", stream, {picture_facts(monitor), "HDMI 2.0"}, scales);
    return s;
}

TEST(SharedStreamHeldBack, firesWhereTheMergedEdidFollowsTheWeakest) {
    auto s = shared(small, false);
    s.room.announce(s.encoder, "in", merged_edid());
    EXPECT_THAT(rules_found(s.room.b.design), ElementsAre(rule));
    const auto finding = finding_of(s.room.b.design, rule);
    EXPECT_EQ(finding.severity, analysis::Severity::warning);
    const auto words = english_sentence(s.room.b.design, finding);
    EXPECT_THAT(words, HasSubstr("MON-2"));
    EXPECT_THAT(words, HasSubstr("2160p60"));
    EXPECT_EQ(terms_of(s.room.b.design, finding).size(), 1U);
}

TEST(SharedStreamHeldBack, firesWhereTheEdidIsCopiedFromTheWeakest) {
    auto s = shared(small, false);
    s.room.announce(s.encoder, "in", copied_edid(s.monitor));
    EXPECT_THAT(rules_found(s.room.b.design), ElementsAre(rule));
    s.room.announce(s.encoder, "in", copied_edid(s.screen));  // the monitor is black, which another rule says
    EXPECT_THAT(rules_found(s.room.b.design), ElementsAre("format-does-not-fit"));
}

TEST(SharedStreamHeldBack, isSilentWhereAllAreEqualOrADecoderScalesOrTheFormatIsFixed) {
    auto equal = shared(large, false);
    equal.room.announce(equal.encoder, "in", merged_edid());
    EXPECT_THAT(rules_found(equal.room.b.design), IsEmpty());
    auto scaled = shared(small, true);
    scaled.room.announce(scaled.encoder, "in", merged_edid());
    EXPECT_THAT(rules_found(scaled.room.b.design), IsEmpty());
    auto fixed = shared(small, false);
    fixed.room.announce(fixed.encoder, "in", fixed_edid("1080p60"));
    EXPECT_THAT(rules_found(fixed.room.b.design), IsEmpty());
}

TEST(SharedStreamHeldBack, isSilentWhereNothingIsStated) {
    auto s = shared(small, false);
    s.room.announce(s.encoder, "in", merged_edid());
    auto silent = *s.room.b.design.device_types.find({"picture.SRC-1"})->type;
    silent.ports[0].picture.reset();
    s.room.b.embed(std::make_shared<const catalogue::DeviceType>(silent));
    EXPECT_THAT(rules_found(s.room.b.design), IsEmpty());
}

}  // namespace streamwright::test::shared_stream_held_back_test
