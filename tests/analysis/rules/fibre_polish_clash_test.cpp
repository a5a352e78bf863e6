#include "tests/support/fibre_way.h"

#include <gmock/gmock.h>

namespace streamwright::test::fibre_polish_clash_test {

using catalogue::CableGrade;
using catalogue::Polish;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(FibrePolishClash, angledAndFlatDoNotMate) {
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.polish = Polish::flat; });
    EXPECT_THAT(rules_found(way.b.design), IsEmpty()) << "what states none is not judged";
    way.type([](auto& type) { type.polish = Polish::flat; });
    EXPECT_THAT(rules_found(way.b.design), IsEmpty());
    way.type([](auto& type) { type.polish = Polish::angled; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-polish-clash"));
    EXPECT_THAT(english_sentence(way.b.design, finding_of(way.b.design, "fibre-polish-clash")),
                testing::HasSubstr("angled"));
}

TEST(FibrePolishClash, socketsOfTransceiversCount) {
    FibreWay way(CableGrade::om4, 50_m);
    way.lead([](auto& type) { type.polish = Polish::angled; });
    EXPECT_THAT(rules_found(way.b.design), IsEmpty());
    way.modules([](auto& module) { module.polish = Polish::flat; });
    EXPECT_THAT(rules_found(way.b.design), ElementsAre("fibre-polish-clash"));
}

}  // namespace streamwright::test::fibre_polish_clash_test
