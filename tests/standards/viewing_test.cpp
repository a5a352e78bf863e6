// Image sizes and contrast against tests/reference (rows DSP-001 to DSP-017, examples H1 to H3).
#include "core/standards/viewing.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::viewing {

using namespace standards;
using namespace base::literals;

constexpr ElementHeight percent(std::int64_t thousandths) { return ElementHeight::from_count(thousandths); }

TEST(Viewing, BasicDecisionMakingIsAsPublished) {
    EXPECT_EQ(basic_acuity, number_after(reference_row("DSP-001").value, "FV/(", 0));
    EXPECT_EQ(basic_element_height(1500_mm, 10'500_mm).count(), row_number("DSP-002", 3));
    EXPECT_EQ(basic_element_height(1500_mm, 10'500_mm).count(), signal_number("H1", 3));
    EXPECT_NEAR(static_cast<double>(basic_image_height(8_m, percent(3000)).count()),
                static_cast<double>(row_number("DSP-006", 6)), 1);
    EXPECT_NEAR(static_cast<double>(basic_image_height(8_m, percent(3000)).count()),
                static_cast<double>(signal_number("H3", 6)), 1);
    EXPECT_EQ(basic_image_height(10_m, percent(4000)).count(), row_number("DSP-007", 6));
    EXPECT_EQ(basic_farthest_viewer(base::Length::from_count(1'058'500), percent(3000)).count(),
              row_number("DSP-008", 6));
}

TEST(Viewing, AnalyticalDecisionMakingIsAsPublished) {
    EXPECT_EQ(analytical_acuity, number_after(reference_row("DSP-003").value, "IH*", 0));
    EXPECT_EQ(analytical_farthest_viewer(1500_mm, 1080).count(), row_number("DSP-004", 3));
    EXPECT_EQ(analytical_farthest_viewer(1500_mm, 1080).count(), signal_number("H2", 3));
    EXPECT_EQ(analytical_farthest_viewer(1500_mm, 2160).count(), row_number("DSP-005", 3));
    EXPECT_EQ(analytical_image_height(4775_mm, 1080), 1500_mm);
}

TEST(Viewing, FormsUndoEachOtherOnTheSafeSide) {
    for (const std::int64_t metres : {1, 3, 7, 19, 120})
        for (const int share : {1000, 2500, 3000, 4100}) {
            const auto viewer = metres * 1_m;
            EXPECT_GE(basic_farthest_viewer(basic_image_height(viewer, percent(share)), percent(share)), viewer);
            EXPECT_GE(analytical_farthest_viewer(analytical_image_height(viewer, 1080 + share), 1080 + share), viewer);
        }
}

TEST(Viewing, ScreensAreAsTallAsPublished) {
    EXPECT_NEAR(static_cast<double>(image_height(inch, 16, 9).count()),
                static_cast<double>(row_number("DSP-009", 6)) / 1000, 0.501);
    EXPECT_NEAR(static_cast<double>(image_height(85 * inch, 16, 9).count()) / 1000,
                static_cast<double>(number_after(reference_row("DSP-008").condition, "IH ", 1)) / 10, 0.05);
}

TEST(Viewing, TheOlderRuleIsAsItWas) {
    EXPECT_EQ(reference_row("DSP-010").value, "4, 6, 8");
    EXPECT_EQ(reference_row("DSP-010").condition, "inspection / detailed / general");
    EXPECT_EQ(older_image_heights(OlderTask::inspection), 4);
    EXPECT_EQ(older_image_heights(OlderTask::detailed), 6);
    EXPECT_EQ(older_image_heights(OlderTask::general), 8);
}

TEST(Viewing, ContrastIsAsPublished) {
    const char* ids[] = {"DSP-012", "DSP-013", "DSP-014", "DSP-015"};
    std::string names;
    for (std::size_t i = 0; i < std::size(ids); ++i) {
        const auto& [category, name] = base::EnumText<ViewingCategory>::names.at(i);
        names += (i > 0 ? ", " : "") + std::string(name);
        EXPECT_TRUE(reference_row(ids[i]).quantity.ends_with(name)) << ids[i];
        EXPECT_EQ(least_contrast(category).ratio, row_number(ids[i], 0)) << ids[i];
        EXPECT_EQ(least_contrast(category).source.standing == Standing::read, was_read(ids[i])) << ids[i];
    }
    EXPECT_EQ(names, reference_row("DSP-016").value);
    EXPECT_EQ(contrast_zones, row_number("DSP-017", 0));
}

}  // namespace streamwright::test::viewing
