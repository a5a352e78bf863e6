#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::decoder_without_display_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(DecoderWithoutDisplay, firesWhereTheLeadIsMissing) {
    auto c = clean_design();
    c.b.design.cables.erase(c.display_lead);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("decoder-without-display"));
    EXPECT_EQ(finding_of(c.design(), "decoder-without-display").severity, analysis::Severity::error);
}

TEST(DecoderWithoutDisplay, warnsOnlyWhereNothingIsSubscribed) {
    auto c = clean_design();
    c.b.design.cables.erase(c.display_lead);
    c.b.design.subscriptions.erase(c.shown);
    EXPECT_EQ(finding_of(c.design(), "decoder-without-display").severity, analysis::Severity::warning);
}

TEST(DecoderWithoutDisplay, isSilentOnDecodersWithoutAPictureOutput) {
    auto c = clean_design();
    auto type = types::make_decoder();
    type.key = {"test.audio-decoder"};
    type.ports.erase(type.ports.begin());
    c.b.device(type, "AUD-1");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::decoder_without_display_test
