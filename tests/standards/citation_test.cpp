// Citations read as a reader would write them, and say what was not confirmed.
#include "core/standards/citation.h"

#include "core/standards/copper_reach.h"
#include "core/standards/fibre_loss.h"
#include "core/standards/poe.h"

#include <gtest/gtest.h>

namespace streamwright::test::citations {

using standards::Citation;
using standards::Standing;

TEST(Citation, JoinsItsPartsAndSaysItsStanding) {
    EXPECT_EQ((Citation{"IEEE", "802.3", "clause 55"}).text(), "IEEE 802.3 clause 55");
    EXPECT_EQ((Citation{"IEEE", "802.1D-1998", "", Standing::practice}).text(), "IEEE 802.1D-1998, common practice");
    EXPECT_EQ((Citation{"TIA", "TSB-155-A", "", Standing::memory}).text(), "TIA TSB-155-A, from memory");
    EXPECT_EQ((Citation{"", "", "", Standing::practice}).text(), "common practice");
}

TEST(Citation, EveryRowHasOne) {
    for (const auto& row : standards::copper_reaches()) EXPECT_FALSE(row.source.document.empty()) << row.phy;
    for (const auto& row : standards::fibre_reaches()) EXPECT_FALSE(row.source.document.empty()) << row.phy;
    for (const auto& row : standards::loss_budgets()) EXPECT_FALSE(row.source.document.empty()) << row.phy;
    for (const auto& row : standards::attenuations()) EXPECT_FALSE(row.source.document.empty());
    for (const auto& row : standards::poe_classes()) EXPECT_FALSE(row.source.document.empty()) << row.number;
}

}  // namespace streamwright::test::citations
