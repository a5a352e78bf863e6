#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::subscription_not_encoded_test {

using testing::Contains;
using testing::ElementsAre;
using testing::IsEmpty;

CleanDesign encoder_as(const types::DevicePtr& type, std::vector<catalogue::Role> roles) {
    auto c = clean_design();
    c.b.embed(type);
    c.b.change<model::Device>(c.encoder, [&](auto& row) {
        row.type = type->key;
        row.roles = std::move(roles);
    });
    return c;
}

TEST(SubscriptionNotEncoded, firesOnATypeThatCannotEncode) {
    auto type = types::make_encoder();
    type.key = {"test.no-encoder"};
    type.codec->roles = {catalogue::Role::decoder};
    const auto c = encoder_as(std::make_shared<const catalogue::DeviceType>(type), {});
    EXPECT_THAT(rules_found(c.design()), Contains("subscription-not-encoded"));
}

TEST(SubscriptionNotEncoded, firesOnADeviceSetToDecodeAndLetsItEncode) {
    const auto c = encoder_as(types::endpoint(), {catalogue::Role::decoder});
    EXPECT_THAT(rules_found(c.design()), Contains("subscription-not-encoded"));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), "subscription-not-encoded"))), IsEmpty());
}

TEST(SubscriptionNotEncoded, isSilentOnAnUndecidedEndpoint) {
    EXPECT_THAT(rules_found(encoder_as(types::endpoint(), {}).design()), IsEmpty());
}

}  // namespace streamwright::test::subscription_not_encoded_test
