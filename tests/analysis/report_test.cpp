#include "core/analysis/report.h"

#include "tests/support/clean_design.h"

#include <gtest/gtest.h>

namespace streamwright::test::report_test {

using analysis::Severity;
using namespace base::literals;

/// One error (output to output), one advice (open end).
CleanDesign two_findings() {
    auto c = clean_design();
    c.b.open_cable(types::cat6a(), port_of(c.switch_a, "9"));
    const auto a = c.b.device(types::source(), "SRC-8"), b = c.b.device(types::source(), "SRC-9");
    c.b.cable(types::hdmi(), port_of(a, "out"), port_of(b, "out"), 2_m);
    return c;
}

void waive(CleanDesign& c, const analysis::Finding& finding, int revision) {
    auto row = model::Waiver::blank(c.b.fresh<model::WaiverId>());
    row.rule = std::string(finding.rule);
    row.rule_revision = revision;
    for (const auto& subject : finding.subjects) row.subjects.push_back(analysis::subject_text(subject));
    row.reason = "Agreed on site.";
    c.b.put(row);
}

TEST(Report, putsTheGravestFirstAndCounts) {
    const auto c = two_findings();
    const auto reported = analysis::report(c.design(), analyse_findings(c.design()));
    ASSERT_EQ(reported.size(), 2u);
    EXPECT_EQ(reported[0].finding.severity, Severity::error);
    const auto counts = analysis::count(reported);
    EXPECT_EQ(counts.error, 1);
    EXPECT_EQ(counts.warning, 0);
    EXPECT_EQ(counts.advice, 1);
}

TEST(Report, marksAWaivedFindingAndDoesNotCountIt) {
    auto c = two_findings();
    waive(c, finding_of(c.design(), "outputs-joined"), 1);
    const auto reported = analysis::report(c.design(), analyse_findings(c.design()));
    ASSERT_EQ(reported.size(), 2u) << "a waived finding stays";
    EXPECT_TRUE(reported[0].waiver);
    EXPECT_EQ(analysis::count(reported).error, 0);
}

TEST(Report, asksAgainWhereTheWaiverIsOlderThanTheRule) {
    auto c = two_findings();
    waive(c, finding_of(c.design(), "outputs-joined"), 0);
    const auto reported = analysis::report(c.design(), analyse_findings(c.design()));
    EXPECT_TRUE(reported[0].waiver_outdated);
    EXPECT_TRUE(reported[0].waiver) << "its reason is still there to be read and renewed";
    EXPECT_EQ(analysis::count(reported).error, 1);
}

TEST(Report, namesRowsAsTheyAreCalledNow) {
    auto c = two_findings();
    const auto finding = finding_of(c.design(), "outputs-joined");
    for (const auto& row : c.design().devices)
        if (row.tag == "SRC-8") c.b.change<model::Device>(row.id, [](auto& device) { device.tag = "LECTERN"; });
    EXPECT_NE(english_sentence(c.design(), finding).find("LECTERN out"), std::string::npos);
}

TEST(Report, namesPortsVlansAndRowsThatAreGone) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "9"), [](auto& row) { row.label = "1/0/9"; });
    const auto book = analysis::english(c.design());
    const auto name = [&](const analysis::Subject& subject) {
        return book.name(base::Ref{analysis::subject_text(subject)});
    };
    EXPECT_EQ(name(port_of(c.switch_b, "9")), "SW-B 1/0/9");
    EXPECT_EQ(name(port_of(c.switch_b, "8")), "SW-B 8");
    EXPECT_EQ(name(c.usual), "VLAN 30 AV media");
    EXPECT_EQ(name(c.preset), "Lecture");
    EXPECT_EQ(name(c.shown), "DEC-1 main (Lecture)");
    EXPECT_EQ(name(model::DeviceId(5)), analysis::subject_text(model::DeviceId(5)));
}

}  // namespace streamwright::test::report_test
