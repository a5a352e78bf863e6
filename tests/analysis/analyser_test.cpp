// The incremental analyser is only a faster way to the same answer: after each of thousands of random edits and undos
// it must hold what a fresh analysis holds, facts and findings, and its differences must add up.
#include "core/analysis/analyser.h"

#include "tests/support/campus.h"
#include "tests/support/clean_design.h"
#include "tests/support/random_edit.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <random>
#include <set>

namespace streamwright::test::analyser_test {

using analysis::analyse;
using analysis::Analyser;
using analysis::Facts;
using analysis::FactSet;
using analysis::Finding;

/// Which facts differ between two states; the wiring is left out, it names rows of its own design.
template <std::size_t... I>
FactSet differing(const Facts& a, const Facts& b, std::index_sequence<I...>) {
    FactSet set;
    const auto one = [&]<class Fact>(const Fact*) {
        if constexpr (!std::is_same_v<Fact, graph::Wiring>)
            if (!(a.get<Fact>() == b.get<Fact>())) set = set | analysis::fact_bit<Fact>();
    };
    (one(static_cast<const std::tuple_element_t<I, analysis::FactTuple>*>(nullptr)), ...);
    return set;
}
FactSet differing(const Facts& a, const Facts& b) {
    return differing(a, b, std::make_index_sequence<analysis::fact_count>{});
}

/// A design, its analyser, and the findings as someone who only hears of differences would know them.
struct Watched {
    model::Design design;
    Analyser analyser;
    std::map<std::string, Finding> heard;
    std::vector<model::Delta> done;

    explicit Watched(const model::Design& start) : design(start), analyser(start) {
        for (const auto& finding : analyser.findings()) heard.emplace(finding.key(), finding);
    }
    void hear(const analysis::FindingsChange& change) {
        for (const auto& key : change.removed) EXPECT_EQ(heard.erase(key), 1u) << key;
        for (const auto& finding : change.added) EXPECT_TRUE(heard.emplace(finding.key(), finding).second);
        for (const auto& finding : change.changed) heard.at(finding.key()) = finding;
    }
    void apply(const model::Delta& delta) {
        model::apply(design, delta);
        hear(analyser.update(design, delta));
    }
    void wait_for_worker() {
        if (!analyser.deferred_pending()) return;
        auto worst = Analyser::deferred(*analyser.frozen(), {});
        ASSERT_TRUE(worst);
        hear(analyser.take_deferred(analyser.revision(), std::move(*worst)));
    }
};

void expect_same(const Watched& watched, const std::string& what) {
    const auto fresh = analyse(watched.design);
    const auto facts = differing(watched.analyser.facts(), fresh.facts);
    EXPECT_EQ(facts.bits, 0u) << "facts not recomputed after " << what << ", bits " << facts.bits;
    ASSERT_EQ(watched.analyser.findings().size(), fresh.findings.size()) << "after " << what;
    ASSERT_EQ(watched.heard.size(), fresh.findings.size()) << "differences do not add up after " << what;
    for (std::size_t i = 0; i < fresh.findings.size(); ++i) {
        EXPECT_EQ(watched.analyser.findings()[i], fresh.findings[i]) << fresh.findings[i].key() << " after " << what;
        EXPECT_EQ(watched.heard.at(fresh.findings[i].key()), fresh.findings[i]) << "after " << what;
    }
}

bool is_prompt(const Finding& finding) { return !analysis::find_rule(finding.rule)->deferred; }

/// What answers in the edit's own call, held against the prompt answer of a fresh analyser.
void expect_prompt_same(const Watched& watched, const std::string& what) {
    const Analyser fresh(watched.design);
    const auto facts = differing(watched.analyser.facts(), fresh.facts()).bits & ~analysis::deferred_facts.bits;
    EXPECT_EQ(facts, 0u) << "prompt facts not recomputed after " << what << ", bits " << facts;
    std::vector<Finding> held, wanted;
    std::ranges::copy_if(watched.analyser.findings(), std::back_inserter(held), is_prompt);
    std::ranges::copy_if(fresh.findings(), std::back_inserter(wanted), is_prompt);
    EXPECT_EQ(held.size(), wanted.size()) << "after " << what;
    EXPECT_TRUE(held == wanted) << "prompt findings differ after " << what;
}

/// One random edit, or now and then the undo of the last; the verb's name, or nothing if none was found.
std::string step(Watched& watched, const catalogue::Catalogue& library, std::mt19937_64& random) {
    if (!watched.done.empty() && random() % 5 == 0) {
        const auto inverse = watched.done.back().inverse();
        watched.done.pop_back();
        watched.apply(inverse);
        return "undo";
    }
    const auto edit = random_edit(watched.design, library, random);
    if (!edit) return {};
    const auto delta = model::make_edit(watched.design, *edit);
    if (!delta || delta->empty()) return {};
    watched.done.push_back(*delta);
    watched.apply(*delta);
    return std::string(model::edit_names()[edit->index()]);
}

TEST(Analyser, agreesWithAFreshAnalysisAfterEveryEdit) {
    const auto library = types::all();
    std::set<std::string> drawn;
    int edits = 0;
    for (std::uint64_t seed = 1; (seed <= 25 || edits < 10'000) && !testing::Test::HasFailure(); ++seed) {
        std::mt19937_64 random(seed);
        Watched watched(clean_design().design());
        for (int i = 0; i < 160 && !testing::Test::HasFailure(); ++i) {
            const auto verb = step(watched, library, random);
            if (verb.empty()) continue;
            drawn.insert(verb);
            ++edits;
            expect_prompt_same(watched, verb + ", seed " + std::to_string(seed) + ", step " + std::to_string(i));
            if (random() % 4 == 0) continue;  // some edits overtake the worker
            watched.wait_for_worker();
            expect_same(watched, verb + ", seed " + std::to_string(seed) + ", step " + std::to_string(i));
        }
    }
    for (const auto name : model::edit_names())
        EXPECT_TRUE(drawn.count(std::string(name))) << name << " was never drawn";
    EXPECT_TRUE(drawn.count("undo"));
}

// A large design is judged on two threads; what comes out is held against each rule run by itself.
TEST(Analyser, twoThreadsGiveWhatOneGives) {
    const auto library = types::all();
    std::mt19937_64 random(77);
    Watched watched(campus(1000, 5));
    ASSERT_GT(watched.design.devices.size(), 2000u);
    for (int edits = 0; edits < 20 && !testing::Test::HasFailure();) edits += step(watched, library, random) != "";
    watched.wait_for_worker();
    expect_same(watched, "twenty edits");
    std::set<std::string> alone;
    for (const auto& rule : analysis::all_rules()) {
        analysis::Findings findings;
        rule.run(watched.analyser.facts(), findings);
        for (const auto& finding : findings) alone.insert(finding.key());
    }
    EXPECT_EQ(alone.size(), watched.analyser.findings().size());
    const auto& facts = watched.analyser.facts();
    const auto wiring = graph::wire(watched.design);
    const auto runs = graph::find_runs(wiring);
    EXPECT_TRUE(analysis::find_cable_lengths(wiring, runs) == facts.get<analysis::CableLengths>());
    EXPECT_TRUE(analysis::find_address_plan(wiring, runs) == facts.get<analysis::AddressPlan>());
    EXPECT_TRUE(analysis::find_power_budget(wiring, runs) == facts.get<analysis::PowerBudget>());
}

TEST(Analyser, runsNothingAfterARename) {
    const auto c = clean_design();
    Watched watched(c.design());
    watched.wait_for_worker();
    auto next = c.design();
    const auto delta = model::make_edit(next, model::Rename{c.encoder, "LECTERN", {}});
    ASSERT_TRUE(delta);
    model::apply(next, *delta);
    const auto change = watched.analyser.update(next, *delta);
    EXPECT_EQ(change.recomputed, analysis::fact_bit<analysis::TagUse>());
    EXPECT_FALSE(change.differing.any());
    EXPECT_FALSE(watched.analyser.deferred_pending());
}

TEST(Analyser, judgesReachAgainInAWarmerRoom) {
    using namespace base::literals;
    auto c = clean_design();
    const auto room = c.b.room("0.1", "Plant");
    c.b.change<model::Device>(c.decoder, [&](auto& row) { row.room = room; });
    c.b.change<model::Cable>(c.decoder_cable, [](auto& row) { row.length = 85_m; });
    Watched watched(c.design());
    watched.wait_for_worker();
    EXPECT_TRUE(watched.heard.empty());
    auto warm = *c.design().rooms.find(room);
    warm.temperature = 60_degC;  // 83.0 m at most, screened: network-values.csv COP-017
    watched.apply(*model::make_edit(watched.design, model::AddRows{{warm}}));
    ASSERT_EQ(watched.heard.size(), 1u);
    EXPECT_EQ(watched.heard.begin()->second.rule, "copper-too-long");
    expect_same(watched, "a warmer room");
}

TEST(Analyser, keepsDeferredFindingsUntilTheWorkerAnswers) {
    using namespace base::literals;
    auto c = clean_design();
    for (const auto id : {c.switch_a, c.switch_b})
        c.b.port(port_of(id, "s1"), [](auto& row) { row.rate_limit = 1_Gbps; });
    Watched watched(c.design());
    EXPECT_TRUE(watched.analyser.deferred_pending());
    const auto old_revision = watched.analyser.revision();
    auto worst = Analyser::deferred(*watched.analyser.frozen(), {});
    ASSERT_TRUE(worst);
    watched.apply(*model::make_edit(watched.design, model::SetStream{[&] {
                                        auto row = *watched.design.streams.find(c.stream);
                                        row.payload_rate = 300_Mbps;
                                        return row;
                                    }()}));
    const auto late = watched.analyser.take_deferred(old_revision, *worst);
    EXPECT_FALSE(late.recomputed.any()) << "an answer about an older design is dropped";
    EXPECT_TRUE(watched.analyser.deferred_pending());
    watched.wait_for_worker();
    EXPECT_FALSE(watched.analyser.deferred_pending());
    expect_same(watched, "a change of rate");
}

TEST(Analyser, aStoppedWorkerGivesNothing) {
    const Analyser analyser(clean_design().design());
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(Analyser::deferred(*analyser.frozen(), stop.get_token()));
}

TEST(Analyser, aFrozenStateIsNotTouchedByLaterEdits) {
    using namespace base::literals;
    const auto c = clean_design();
    Watched watched(c.design());
    const auto frozen = watched.analyser.frozen();
    const auto lengths = frozen->get<analysis::CableLengths>();
    watched.apply(*model::make_edit(watched.design, model::SetLength{{c.trunk}, 99_m}));
    EXPECT_EQ(frozen->get<analysis::CableLengths>(), lengths);
    EXPECT_NE(watched.analyser.facts().get<analysis::CableLengths>(), lengths);
}

}  // namespace streamwright::test::analyser_test
