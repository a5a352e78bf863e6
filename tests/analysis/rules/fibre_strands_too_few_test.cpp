#include "tests/support/fibre_way.h"

#include <gmock/gmock.h>

namespace streamwright::test::fibre_strands_too_few_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(FibreStrandsTooFew, parallelOpticsNeedTheirStrands) {
    FibreWay way(catalogue::CableGrade::om4, 50_m);
    const auto strands = [&](int fixed, int lead, int module) {
        way.type([&](auto& type) { type.strands = fixed; });
        way.lead([&](auto& type) { type.strands = lead; });
        way.modules([&](auto& facts) { facts.strands = module; });
        return rules_found(way.b.design);
    };
    EXPECT_THAT(strands(8, 8, 8), IsEmpty());
    EXPECT_THAT(strands(12, 12, 8), IsEmpty());
    EXPECT_THAT(strands(12, 7, 8), ElementsAre("fibre-strands-too-few"));
    EXPECT_THAT(strands(2, 12, 8), ElementsAre("fibre-strands-too-few"));
    const auto finding = finding_of(way.b.design, "fibre-strands-too-few");
    EXPECT_THAT(terms_of(way.b.design, finding), ElementsAre("8 - 2 = 6 too few"));
    EXPECT_THAT(strands(2, 2, 2), IsEmpty());
}

}  // namespace streamwright::test::fibre_strands_too_few_test
