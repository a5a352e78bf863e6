#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

TEST(EmbedTypes, EmbedsAndRefreshes) {
    auto design = done(Design{}, EmbedTypes{{test::types::encoder()}, {test::types::hdmi()}});
    EXPECT_EQ(design.device_types.size(), 1U);
    EXPECT_EQ(design.cable_types.size(), 1U);
    auto newer = *test::types::encoder();
    newer.name = "Encoder, second issue";
    design = done(design, EmbedTypes{{std::make_shared<const catalogue::DeviceType>(newer)}, {}});
    EXPECT_EQ(design.device_types.size(), 1U);
    EXPECT_EQ(design.device_types.find(newer.key)->type->name, newer.name);
}

TEST(EmbedTypes, TheSameTypeAgainChangesNothing) {
    const auto design = done(Design{}, EmbedTypes{{test::types::encoder()}, {}});
    const auto again = make(design, EmbedTypes{{test::types::encoder()}, {}});
    ASSERT_TRUE(again.ok());
    EXPECT_TRUE(again->empty());
}

TEST(EmbedTypes, RefusesATypeThatContradictsItself) {
    auto type = *test::types::encoder();
    type.ports[0].passes_to = catalogue::PortKey{"nowhere"};
    EXPECT_SAYS(refused(Design{}, EmbedTypes{{std::make_shared<const catalogue::DeviceType>(type)}, {}}), "passes_to");
}

TEST(EmbedTypes, RefusesNothingAndNameless) {
    EXPECT_SAYS(refused(Design{}, EmbedTypes{{nullptr}, {}}), "is missing");
    EXPECT_SAYS(refused(Design{}, EmbedTypes{{std::make_shared<const catalogue::DeviceType>()}, {}}), "needs a key");
    EXPECT_SAYS(refused(Design{}, EmbedTypes{{}, {std::make_shared<const catalogue::CableType>()}}), "needs a key");
}

}  // namespace
