// Powered bundles against tests/reference (rows POE-034 to POE-037).
#include "core/standards/powered_bundles.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::powered_bundles {

using namespace standards;

TEST(PoweredBundles, AreAsRemembered) {
    EXPECT_EQ(most_cables_in_powered_bundle, row_number("POE-035", 0));
    EXPECT_EQ(bundle_rise_target.count(), row_number("POE-036", 3));
    std::string bands;
    int from = 1;
    for (const int to : ampacity_bands) {
        bands += (bands.empty() ? "" : "; ") + std::to_string(from) + (from == to ? "" : "-" + std::to_string(to));
        from = to + 1;
    }
    EXPECT_EQ(bands, reference_row("POE-037").value);
    for (const auto* id : {"POE-033", "POE-035", "POE-036", "POE-037"}) EXPECT_FALSE(was_read(id));
    EXPECT_EQ(powered_bundle_source.standing, Standing::memory);
    EXPECT_EQ(ampacity_source.standing, Standing::memory);
    EXPECT_EQ(extended_power_source.standing, Standing::memory);
}

TEST(PoweredBundles, EachSizeFallsInItsBand) {
    EXPECT_EQ(ampacity_band(1), 0);
    EXPECT_EQ(ampacity_band(2), 1);
    EXPECT_EQ(ampacity_band(7), 1);
    EXPECT_EQ(ampacity_band(8), 2);
    EXPECT_EQ(ampacity_band(192), 6);
    EXPECT_EQ(ampacity_band(193), 7);
}

TEST(PoweredBundles, PinsAreThoseOfTheTable) {
    EXPECT_EQ(std::string(alternative_a_pins) + " / " + std::string(alternative_b_pins),
              reference_row("POE-034").value);
}

}  // namespace streamwright::test::powered_bundles
