#include "tests/support/fibre_way.h"

#include <gmock/gmock.h>

namespace streamwright::test::fibre_polarity_test {

using analysis::Severity;
using catalogue::CableGrade;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(FibrePolarity, swapsMustBeOdd) {
    // Field case F33: an odd number of swaps makes transmit meet receive.
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.crossed = true; });
    for (const int installed : {0, 1, 2}) {
        way.fixed([&](auto& row) { row.fibre.pair_swaps = installed; });
        if (installed == 1) {
            EXPECT_THAT(rules_found(way.b.design), IsEmpty());
            continue;
        }
        EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-polarity")) << installed;
        EXPECT_EQ(finding_of(way.b.design, "fibre-polarity").severity, Severity::error);
    }
}

TEST(FibrePolarity, offersALeadWiredTheOtherWay) {
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.crossed = true; });
    way.fixed([](auto& row) { row.fibre.pair_swaps = 0; });
    EXPECT_THAT(finding_of(way.b.design, "fibre-polarity").remedies, IsEmpty());
    auto straight = *way.b.design.cable_types.find({"test.way.lead"})->type;
    straight.key = {"test.way.straight"};
    straight.crossed = false;
    way.b.embed(std::make_shared<const catalogue::CableType>(straight));
    EXPECT_THAT(rules_found(cured(way.b.design, finding_of(way.b.design, "fibre-polarity"))), IsEmpty());
}

TEST(FibrePolarity, saysNotKnownWhereOnlySomePartsState) {
    FibreWay way(CableGrade::om4, 50_m);
    EXPECT_THAT(rules_found(way.b.design), IsEmpty());
    way.lead([](auto& type) { type.crossed = true; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-polarity"));
    EXPECT_EQ(finding_of(way.b.design, "fibre-polarity").severity, Severity::advice);
}

TEST(FibrePolarity, isForTwoStrandsOnly) {
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.crossed = true; });
    way.fixed([](auto& row) { row.fibre.pair_swaps = 0; });
    way.modules([](auto& module) { module.strands = 8; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-strands-too-few"));
}

}  // namespace streamwright::test::fibre_polarity_test
