#include "core/analysis/facts/tag_use.h"

#include "tests/support/clean_design.h"

#include <gtest/gtest.h>

namespace streamwright::test::tag_use_test {

TEST(TagUse, listsOnlyTagsBorneTwiceWithinAKind) {
    auto c = clean_design();
    EXPECT_TRUE(analysis::find_tag_use(c.design()).shared.empty());
    c.b.change<model::Device>(c.decoder, [](auto& row) { row.tag = "ENC-1"; });
    c.b.change<model::Device>(c.decoder2, [](auto& row) { row.tag = "ENC-1"; });
    c.b.change<model::Device>(c.display, [](auto& row) { row.tag = "S-1"; });  // a stream's tag
    const auto use = analysis::find_tag_use(c.design());
    ASSERT_EQ(use.shared.size(), 1u);
    EXPECT_EQ(use.shared[0].tag, "ENC-1");
    EXPECT_EQ(use.shared[0].rows.size(), 3u);
}

}  // namespace streamwright::test::tag_use_test
