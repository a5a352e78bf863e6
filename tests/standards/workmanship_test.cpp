// Bends, untwist and resistance against tests/reference (rows COP-).
#include "core/standards/workmanship.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::workmanship {

using namespace standards;

TEST(Workmanship, IsAsPublished) {
    EXPECT_EQ(copper_bend.installed, row_number("COP-041", 0));
    EXPECT_EQ(screened_copper_bend.installed, row_number("COP-042", 0));
    EXPECT_EQ(std::to_string(fibre_bend.installed) + " / " + std::to_string(fibre_bend.while_pulled),
              reference_row("COP-043").value);
    EXPECT_EQ(std::to_string(pair_untwist.count() / 1000) + " / " + std::to_string(careful_pair_untwist.count() / 1000),
              reference_row("COP-044").value);
    EXPECT_EQ(pathway_fill_percent, row_number("COP-045", 0));
}

TEST(Workmanship, ResistancesAreRemembered) {
    EXPECT_EQ(conductor_milliohm_per_100m, row_number("COP-032", 3));
    EXPECT_EQ(channel_loop_milliohm, row_number("COP-033", 3));
    EXPECT_EQ(permanent_link_loop_milliohm, row_number("COP-034", 3));
    for (const auto* id : {"COP-032", "COP-033", "COP-034"}) EXPECT_FALSE(was_read(id));
    EXPECT_EQ(conductor_source.standing, Standing::memory);
    EXPECT_EQ(loop_source.standing, Standing::memory);
}

}  // namespace streamwright::test::workmanship
