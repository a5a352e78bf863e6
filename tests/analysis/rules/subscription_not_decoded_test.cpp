#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::subscription_not_decoded_test {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

std::string words(const model::Design& design) {
    return english_sentence(design, finding_of(design, "subscription-not-decoded"));
}

TEST(SubscriptionNotDecoded, firesOnAnEncoder) {
    auto c = clean_design();
    c.b.change<model::Subscription>(c.shown, [&](auto& row) { row.decoder = c.encoder2; });
    EXPECT_THAT(rules_found(c.design()), Contains("subscription-not-decoded"));
    EXPECT_THAT(words(c.design()), HasSubstr("cannot decode"));
}

TEST(SubscriptionNotDecoded, firesOnAMissingInput) {
    auto c = clean_design();
    c.b.change<model::Subscription>(c.shown, [](auto& row) { row.input = {"window-9"}; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("subscription-not-decoded"));
}

TEST(SubscriptionNotDecoded, firesOnAnotherFamilyOrKind) {
    auto c = clean_design();
    auto type = types::make_decoder();
    type.key = {"test.decoder.other"};
    type.codec->family = "heavy";
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(c.decoder, [&](auto& row) { row.type = type.key; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("subscription-not-decoded"));
    EXPECT_THAT(words(c.design()), HasSubstr("heavy"));
    auto kind = clean_design();
    kind.b.change<model::Stream>(kind.stream, [](auto& row) { row.kind = catalogue::StreamKind::audio; });
    EXPECT_THAT(rules_found(kind.design()), ElementsAre("subscription-not-decoded"));
}

TEST(SubscriptionNotDecoded, firesOnADeviceSetToEncode) {
    auto c = clean_design();
    c.b.embed(types::endpoint());
    c.b.change<model::Device>(c.decoder, [](auto& row) {
        row.type = types::endpoint()->key;
        row.roles = {catalogue::Role::encoder};
    });
    EXPECT_THAT(rules_found(c.design()), Contains("subscription-not-decoded"));
}

}  // namespace streamwright::test::subscription_not_decoded_test
