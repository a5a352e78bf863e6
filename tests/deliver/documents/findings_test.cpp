// The findings list says what the report says, each finding once.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

namespace streamwright::test::findings_list {

TEST(Findings, EachReportedFindingIsARow) {
    SmallVenue venue;
    venue.b.change<model::Cable>(venue.n1, [](auto& row) { row.length = base::Length::from_count(111'500'000); });
    const Delivered delivered(venue.b.design);
    const auto source = delivered.source();
    const auto content = delivered.document("findings");
    const auto& list = table(content);
    EXPECT_EQ(list.rows.size(), source.findings.size());
    EXPECT_FALSE(list.rows.empty());
    for (const auto& row : list.rows) {
        EXPECT_FALSE(cell(list, row, "Finding").empty());
        EXPECT_FALSE(cell(list, row, "Severity").empty());
    }
}

TEST(Findings, AnEmptyDesignHasNothingToReport) {
    const Delivered delivered{model::Design{}};
    const auto content = delivered.document("findings");
    EXPECT_TRUE(table(content).rows.empty());
    EXPECT_EQ(table(content).notes.size(), 1u);
}

TEST(Findings, AcceptedOnesStandLastWithTheirReason) {
    SmallVenue venue;
    venue.b.change<model::Cable>(venue.n1, [](auto& row) { row.length = base::Length::from_count(111'500'000); });
    const Delivered before(venue.b.design);
    ASSERT_FALSE(before.analysis.findings.empty());
    const auto& accepted = before.analysis.findings.front();
    auto waiver = model::Waiver::blank(venue.b.fresh<model::WaiverId>());
    waiver.rule = std::string(accepted.rule);
    waiver.rule_revision = analysis::find_rule(accepted.rule)->words.revision;
    for (const auto& subject : accepted.subjects) waiver.subjects.push_back(analysis::subject_text(subject));
    waiver.reason = "agreed with the site";
    venue.b.put(waiver);
    const Delivered after(venue.b.design);
    const auto content = after.document("findings");
    const auto& list = table(content);
    ASSERT_FALSE(list.rows.empty());
    EXPECT_EQ(list.rows.back().group, "accepted");
    EXPECT_EQ(cell(list, list.rows.back(), "Accepted because"), "agreed with the site");
}

}  // namespace streamwright::test::findings_list
