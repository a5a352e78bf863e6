#include "tests/support/wall_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::led_port_overfull_test {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr auto rule = "led-port-overfull";
const catalogue::ImageFacts image{320, 180, {}, {}};

// 11 cabinets x 320 x 180 = 633,600 pixels; the twelfth brings 691,200.
TEST(LedPortOverfull, FiresOneCabinetPastTheLimit) {
    LedRoom full(633'600);
    full.chain("data-1", 11, image);
    EXPECT_THAT(rules_found(full.design()), IsEmpty());
    LedRoom over(633'600);
    over.chain("data-1", 12, image);
    EXPECT_THAT(rules_found(over.design()), ElementsAre(rule));
    const auto finding = finding_of(over.design(), rule);
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{691'200}));
    EXPECT_EQ(english_sentence(over.design(), finding),
              "LED-1 data-1 drives 633600 pixels at most; the cabinets on it have 691200.");
    EXPECT_THAT(terms_of(over.design(), finding), ElementsAre("12 cabinets x 320 x 180 = 691200 pixels"));
}

TEST(LedPortOverfull, EachOutputHasItsOwn) {
    LedRoom r(633'600);
    r.chain("data-1", 11, image);
    r.chain("data-2", 11, image);
    EXPECT_THAT(rules_found(r.design()), IsEmpty());
}

TEST(LedPortOverfull, SilentWhereNothingIsStated) {
    LedRoom unlimited(std::nullopt);
    unlimited.chain("data-1", 12, image);
    EXPECT_THAT(rules_found(unlimited.design()), IsEmpty());
    LedRoom unknown(1);
    unknown.chain("data-1", 3, std::nullopt);
    EXPECT_THAT(rules_found(unknown.design()), IsEmpty());
}

}  // namespace streamwright::test::led_port_overfull_test
