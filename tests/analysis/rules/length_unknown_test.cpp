#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::length_unknown_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(LengthUnknown, advisesOnEachNetworkCableWithoutLength) {
    auto c = clean_design();
    for (const auto id : {c.decoder_cable, c.trunk})
        c.b.change<model::Cable>(id, [](auto& row) { row.length.reset(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("length-unknown", "length-unknown"));
    EXPECT_EQ(finding_of(c.design(), "length-unknown").severity, analysis::Severity::advice);
}

TEST(LengthUnknown, isSilentOnMadeLeadsAndWhereNoReachIsJudged) {
    auto c = clean_design();
    c.b.embed(types::cat6a_lead());
    c.b.change<model::Cable>(c.decoder_cable, [](auto& row) {
        row.type = types::cat6a_lead()->key;  // made 2 m long
        row.length.reset();
    });
    c.b.change<model::Cable>(c.display_lead, [](auto& row) { row.length.reset(); });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::length_unknown_test
