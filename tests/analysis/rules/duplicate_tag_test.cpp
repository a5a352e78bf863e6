#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::duplicate_tag_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(DuplicateTag, warnsOnDevicesCablesAndStreamsOfOneTag) {
    // network-values.csv LBL-001: a cable identifier is unique and permanent (TIA-606-D).
    auto c = clean_design();
    c.b.change<model::Device>(c.decoder2, [](auto& row) { row.tag = "DEC-1"; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("duplicate-tag"));
    c.b.change<model::Cable>(c.decoder2_cable, [](auto& row) { row.tag = "X1"; });
    c.b.change<model::Cable>(c.decoder_cable, [](auto& row) { row.tag = "X1"; });
    c.b.change<model::Stream>(c.stream2, [](auto& row) { row.tag = "S-1"; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("duplicate-tag", "duplicate-tag", "duplicate-tag"));
    EXPECT_EQ(finding_of(c.design(), "duplicate-tag").severity, analysis::Severity::warning);
}

TEST(DuplicateTag, isSilentAcrossKindsAndOnEmptyTags) {
    auto c = clean_design();
    c.b.change<model::Device>(c.decoder, [](auto& row) { row.tag = "S-1"; });
    for (const auto id : {c.source_lead, c.display_lead})
        c.b.change<model::Cable>(id, [](auto& row) { row.tag.clear(); });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::duplicate_tag_test
