// Curing all findings of a rule at once: each remedy sees the ones before it, what cannot be cured says why, and the
// start is untouched. What is expected comes from curing by hand, one whole analysis after another.
#include "core/analysis/settle_all.h"

#include "core/analysis/report.h"
#include "core/analysis/rule.h"
#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::settle_all_test {

using analysis::Settling;
using testing::Each;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

std::vector<Settling> outcomes(const analysis::Settled& settled) {
    std::vector<Settling> all;
    for (const auto& step : settled.steps) all.push_back(step.outcome);
    return all;
}

analysis::SettleAsk all_of(const model::Design& design, std::string_view rule) {
    return {analysis::open_keys(design, analyse_findings(design), rule), {}};
}

/// The clean design with more streams of the first encoder, all to the first stream's group.
CleanDesign crowded_group(int more) {
    auto c = clean_design();
    for (int i = 0; i < more; ++i) c.b.stream(c.encoder, 1_Mbps, "239.192.1.1");
    return c;
}

TEST(SettleAll, eachRemedySeesTheOnesBefore) {
    const auto c = crowded_group(4);
    const auto ask = all_of(c.design(), "group-used-twice");
    ASSERT_EQ(ask.keys.size(), 4u) << "five streams on one group: four pairs of neighbours";
    const auto settled = analysis::settle_all(c.design(), ask);
    ASSERT_TRUE(settled);
    EXPECT_THAT(outcomes(*settled), Each(testing::AnyOf(Settling::settled, Settling::settled_before)));
    EXPECT_THAT(rules_found(settled->design), IsEmpty());
    std::set<base::Ipv4> groups;
    for (const auto& stream : settled->design.streams) groups.insert(*stream.group);
    EXPECT_EQ(groups.size(), settled->design.streams.size()) << "no two were given the same free group";
    EXPECT_THAT(settled->raised_later, IsEmpty());
}

TEST(SettleAll, withoutFollowingOnlyTheOnesAskedForGo) {
    const auto c = crowded_group(2);
    auto ask = all_of(c.design(), "group-used-twice");
    ASSERT_EQ(ask.keys.size(), 2u) << "three streams: the first and second, the second and third";
    ask.follow = false;
    const auto settled = analysis::settle_all(c.design(), ask);
    ASSERT_TRUE(settled);
    EXPECT_THAT(rules_found(settled->design), ElementsAre("group-used-twice")) << "the first and third";
    EXPECT_EQ(settled->findings, analyse_findings(settled->design)) << "what it says stands is what stands";
}

TEST(SettleAll, isWhatOneAfterAnotherGives) {
    const auto c = crowded_group(3);
    auto by_hand = c.design();
    const auto ask = all_of(by_hand, "group-used-twice");
    for (const auto& key : ask.keys) {
        const auto findings = analyse_findings(by_hand);
        const auto found = std::ranges::find_if(findings, [&](const auto& each) { return each.key() == key; });
        if (found != findings.end()) by_hand = cured(by_hand, *found);
    }
    // Of four on one group the first and third are left, and are a pair anew.
    while (!rules_found(by_hand).empty()) by_hand = cured(by_hand, finding_of(by_hand, "group-used-twice"));
    const auto before = c.design();
    const auto settled = analysis::settle_all(c.design(), ask);
    ASSERT_TRUE(settled);
    EXPECT_EQ(settled->design, by_hand);
    EXPECT_EQ(c.design(), before) << "only a copy is worked on";
}

TEST(SettleAll, saysWhichHaveNoRemedy) {
    auto c = clean_design();
    c.b.device(types::encoder(), "ENC-8");
    const auto ask = all_of(c.design(), "encoder-without-source");
    ASSERT_EQ(ask.keys.size(), 1u);
    const auto settled = analysis::settle_all(c.design(), ask);
    ASSERT_TRUE(settled);
    EXPECT_THAT(outcomes(*settled), ElementsAre(Settling::no_remedy));
    EXPECT_FALSE(settled->steps[0].change);
    EXPECT_EQ(settled->design, c.design());
}

/// A third encoder of the second VLAN is plugged into the second's port; the free port that the remedy moves it to is
/// of the usual VLAN, where its stream reaches nobody.
CleanDesign two_on_one_port() {
    auto c = clean_design();
    const auto source = c.b.device(types::source(), "SRC-8");
    const auto encoder = c.b.device(types::encoder(), "ENC-8");
    c.b.cable(types::hdmi(), port_of(source, "out"), port_of(encoder, "in"), 2_m);
    c.b.cable(types::cat6a(), port_of(encoder, "net"), port_of(c.switch_a, "2"), 20_m);
    const auto stream = c.b.stream(encoder, 1_Mbps, "239.192.1.9", c.second);
    c.b.subscribe(c.b.preset("Concert"), stream, c.decoder2);
    return c;
}

std::vector<std::string> keys_of(const analysis::Findings& findings) {
    std::vector<std::string> keys;
    for (const auto& finding : findings) keys.push_back(finding.key());
    std::ranges::sort(keys);
    return keys;
}

TEST(SettleAll, leavesOutWhatWouldRaiseAnotherUnlessToldTo) {
    const auto c = two_on_one_port();
    auto ask = all_of(c.design(), "port-used-twice");
    ASSERT_EQ(ask.keys.size(), 1u);
    const auto before = keys_of(analyse_findings(c.design()));
    const auto by_hand = cured(c.design(), finding_of(c.design(), "port-used-twice"));
    std::vector<std::string> fresh;
    std::ranges::set_difference(keys_of(analyse_findings(by_hand)), before, std::back_inserter(fresh));
    ASSERT_FALSE(fresh.empty()) << "the case is one that raises";
    const auto left = analysis::settle_all(c.design(), ask);
    ASSERT_TRUE(left);
    EXPECT_THAT(outcomes(*left), ElementsAre(Settling::raises));
    EXPECT_EQ(keys_of(left->steps[0].raised), fresh);
    EXPECT_EQ(left->design, c.design());
    ask.even_if_it_raises.insert(ask.keys[0]);
    const auto made = analysis::settle_all(c.design(), ask);
    ASSERT_TRUE(made);
    EXPECT_THAT(outcomes(*made), ElementsAre(Settling::settled));
    EXPECT_EQ(keys_of(made->steps[0].raised), fresh) << "and still says so";
    EXPECT_EQ(made->design, by_hand);
}

TEST(SettleAll, acceptedOnesAreNotAskedFor) {
    auto c = crowded_group(2);
    const auto findings = analyse_findings(c.design());
    auto waiver = model::Waiver::blank(c.b.fresh<model::WaiverId>());
    waiver.rule = "group-used-twice";
    waiver.rule_revision = analysis::find_rule("group-used-twice")->words.revision;
    const auto accepted = finding_of(c.design(), "group-used-twice");
    for (const auto& subject : accepted.subjects) waiver.subjects.push_back(analysis::subject_text(subject));
    waiver.reason = "Both carry the same picture.";
    c.b.put(waiver);
    const auto keys = analysis::open_keys(c.design(), findings, "group-used-twice");
    EXPECT_EQ(keys.size(), 1u);
    EXPECT_NE(keys.front(), accepted.key());
}

TEST(SettleAll, onlyTheOnesAskedForAndInThatOrder) {
    auto c = clean_design();
    const auto first = c.b.open_cable(types::cat6a(), port_of(c.switch_a, "9"));
    const auto second = c.b.open_cable(types::cat6a(), port_of(c.switch_a, "10"));
    auto ask = all_of(c.design(), "cable-end-open");
    ASSERT_EQ(ask.keys.size(), 2u);
    const auto kept = ask.keys[0].find(first.text()) != std::string::npos ? first : second;
    ask.keys = {ask.keys[1], "cable-end-open cable:nothing"};
    const auto settled = analysis::settle_all(c.design(), ask);
    ASSERT_TRUE(settled);
    EXPECT_THAT(outcomes(*settled), ElementsAre(Settling::settled)) << "one that does not stand is passed over";
    EXPECT_TRUE(settled->design.cables.contains(kept));
    EXPECT_EQ(settled->design.cables.size(), c.design().cables.size() - 1);
}

TEST(SettleAll, tellsHowFarItIsAndStopsWhenAsked) {
    const auto c = crowded_group(4);
    const auto ask = all_of(c.design(), "group-used-twice");
    std::vector<std::size_t> told;
    std::stop_source stop;
    const auto stopped = analysis::settle_all(
        c.design(), ask,
        [&](std::size_t done, std::size_t of) {
            told.push_back(done);
            EXPECT_GE(of, 4u);
            if (done == 2) stop.request_stop();
        },
        stop.get_token());
    EXPECT_FALSE(stopped) << "half a job is not handed out";
    EXPECT_THAT(told, ElementsAre(0u, 1u, 2u));
}

}  // namespace streamwright::test::settle_all_test
