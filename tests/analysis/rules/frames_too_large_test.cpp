#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::frames_too_large_test {

using analysis::Severity;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// Field case F20: the first stream of this payload, switch B of its own type that passes frames of this size.
CleanDesign with_limit(int payload_octets, std::optional<int> limit) {
    auto c = clean_design();
    c.b.change<model::Stream>(c.stream, [&](auto& row) {
        row.payload_octets = payload_octets;
        row.rtp = true;
    });
    change_type(c, c.switch_b, [&](auto& type) { type.bridging->frame_limit = limit; });
    return c;
}

// 1460 octets of payload, 12 of RTP (RFC 3550), 8 of UDP (RFC 768), 20 of IPv4 (RFC 791), 14 of MAC header and 4 of
// check sequence (IEEE 802.3): 1518. A packet of 9000 octets is a frame of 9018, as the field case has it.
TEST(FramesTooLarge, firesJustAboveWhatTheSwitchPasses) {
    EXPECT_THAT(rules_found(with_limit(1460, 1518).design()), IsEmpty());
    EXPECT_THAT(rules_found(with_limit(1461, 1518).design()), ElementsAre("frames-too-large"));
    EXPECT_THAT(rules_found(with_limit(8960, 9018).design()), IsEmpty());
    const auto design = with_limit(8960, 1518).design();
    const auto finding = finding_of(design, "frames-too-large");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{9018}));
    EXPECT_EQ(finding.limit, base::Value(std::int64_t{1518}));
    EXPECT_THAT(english_sentence(design, finding), AllOf(HasSubstr("1518"), HasSubstr("9018")));
}

TEST(FramesTooLarge, warnsWhereTheTypeStatesNothingAndTheFrameIsLarger) {
    EXPECT_THAT(rules_found(with_limit(1460, std::nullopt).design()), IsEmpty());
    const auto design = with_limit(1461, std::nullopt).design();
    EXPECT_THAT(rules_found(design), ElementsAre("frames-too-large"));
    EXPECT_EQ(finding_of(design, "frames-too-large").severity, Severity::warning);
}

TEST(FramesTooLarge, isSilentAboutSwitchesThatTheStreamDoesNotPass) {
    auto c = with_limit(8960, 1518);
    c.b.design.subscriptions.erase(c.shown);
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "frames-too-large"), 0);
}

}  // namespace streamwright::test::frames_too_large_test
