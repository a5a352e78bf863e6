#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::encoder_without_source_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(EncoderWithoutSource, firesWhereTheLeadIsMissing) {
    auto c = clean_design();
    c.b.design.cables.erase(c.source_lead);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("encoder-without-source"));
    EXPECT_EQ(finding_of(c.design(), "encoder-without-source").severity, analysis::Severity::error);
}

TEST(EncoderWithoutSource, warnsOnlyWhereNobodySubscribes) {
    auto c = clean_design();
    c.b.design.cables.erase(c.source_lead);
    c.b.design.subscriptions.erase(c.shown);
    EXPECT_EQ(finding_of(c.design(), "encoder-without-source").severity, analysis::Severity::warning);
}

TEST(EncoderWithoutSource, isSilentOnEncodersWithoutPictureInputs) {
    auto c = clean_design();
    auto type = types::make_encoder();
    type.key = {"test.audio-encoder"};
    type.ports.erase(type.ports.begin(), type.ports.begin() + 2);
    c.b.device(type, "AUD-1");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::encoder_without_source_test
