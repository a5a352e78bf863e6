#include "tests/support/picture_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::picture_facts_unknown_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(PictureFactsUnknown, advisesOnceForAPortOnceAFormatIsSet) {
    PictureRoom room;
    const auto facts = picture_facts({"1080p60"});
    const auto splitter = room.passer("SPL-1", {std::nullopt, ""}, {facts, "HDMI 2.0"}, 2);
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    room.join(source, "out", splitter);
    room.join(splitter, "out-1", room.display("DSP-1", {facts, "HDMI 2.0"}));
    room.join(splitter, "out-2", room.display("DSP-2", {facts, "HDMI 2.0"}));
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());
    room.set(source, "out", "1080p60");
    EXPECT_THAT(rules_found(room.b.design), ElementsAre("picture-facts-unknown"));
    EXPECT_EQ(finding_of(room.b.design, "picture-facts-unknown").severity, analysis::Severity::advice);
}

TEST(PictureFactsUnknown, isSilentWhereAllIsStated) {
    PictureRoom room;
    const auto facts = picture_facts({"1080p60"});
    const auto source = room.source("SRC-1", {facts, "HDMI 2.0"});
    room.join(source, "out", room.display("DSP-1", {facts, "HDMI 2.0"}));
    room.set(source, "out", "1080p60");
    EXPECT_THAT(rules_found(room.b.design), IsEmpty());
}

}  // namespace streamwright::test::picture_facts_unknown_test
