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

/// The first finding of a cable far too long, accepted; `older`: for a form of the rule before the present one.
std::string accept_first(SmallVenue& venue, const std::string& by, bool older = false) {
    venue.b.change<model::Cable>(venue.n1, [](auto& row) { row.length = base::Length::from_count(111'500'000); });
    const Delivered before(venue.b.design);
    const auto& accepted = before.analysis.findings.front();
    auto waiver = model::Waiver::blank(venue.b.fresh<model::WaiverId>());
    waiver.rule = std::string(accepted.rule);
    waiver.rule_revision = analysis::find_rule(accepted.rule)->words.revision - (older ? 1 : 0);
    for (const auto& subject : accepted.subjects) waiver.subjects.push_back(analysis::subject_text(subject));
    waiver.reason = "agreed with the site";
    waiver.by = by;
    venue.b.put(waiver);
    return waiver.rule;
}

TEST(Findings, AcceptedOnesStandLastWithTheirReasonAndWhoAccepted) {
    for (const std::string by : {"Head of AV", ""}) {
        SmallVenue venue;
        const auto rule = accept_first(venue, by);
        const Delivered after(venue.b.design);
        const auto content = after.document("findings");
        const auto& list = table(content);
        ASSERT_FALSE(list.rows.empty());
        const auto& last = list.rows.back();
        EXPECT_EQ(last.group, "accepted");
        EXPECT_EQ(cell(list, last, "Rule"), rule);
        EXPECT_EQ(cell(list, last, "Accepted because"),
                  by.empty() ? "agreed with the site" : "agreed with the site, Head of AV");
        for (const auto& row : list.rows)
            if (&row != &last) {
                EXPECT_EQ(cell(list, row, "Accepted because"), "");
            }
    }
}

TEST(Findings, AnAcceptanceOfAnOlderFormOfTheRuleAsksAgainAndKeepsItsReason) {
    SmallVenue venue;
    const auto rule = accept_first(venue, "Head of AV", true);
    const Delivered after(venue.b.design);
    const auto content = after.document("findings");
    const auto& list = table(content);
    int found = 0;
    for (const auto& row : list.rows) {
        if (cell(list, row, "Accepted because").empty()) continue;
        ++found;
        EXPECT_EQ(cell(list, row, "Rule"), rule);
        EXPECT_NE(row.group, "accepted");
        EXPECT_EQ(cell(list, row, "Accepted because"),
                  "agreed with the site, Head of AV (made for an older form of the rule; asks again)");
    }
    EXPECT_EQ(found, 1);
}

}  // namespace streamwright::test::findings_list
