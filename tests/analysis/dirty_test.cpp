#include "core/analysis/dirty.h"

#include "tests/support/clean_design.h"

#include <gtest/gtest.h>

namespace streamwright::test::dirty_test {

using analysis::fact_bit;
using namespace base::literals;

template <class Row, class Change>
analysis::FactSet spoilt(const typename Row::Key& key, Change&& change) {
    auto c = clean_design();
    c.b.sheet();
    const auto before = c.design();
    c.b.change<Row>(key, std::forward<Change>(change));
    return analysis::spoilt_by(model::difference(before, c.design())).facts;
}

TEST(Dirty, drawingTitlesAndAcceptancesSpoilNothing) {
    const auto c = clean_design();
    EXPECT_FALSE(spoilt<model::Note>(model::NoteId(1), [](auto& row) { row.text = "x"; }).any());
    EXPECT_FALSE(spoilt<model::Waiver>(model::WaiverId(1), [](auto& row) { row.reason = "x"; }).any());
    EXPECT_FALSE(spoilt<model::Preset>(c.preset, [](auto& row) { row.name = "x"; }).any());
    EXPECT_FALSE(spoilt<model::Vlan>(c.usual, [](auto& row) { row.name = "x"; }).any());
    EXPECT_FALSE(spoilt<model::Cable>(c.trunk, [](auto& row) { row.progress.pulled = true; }).any());
    EXPECT_FALSE(spoilt<model::Place>({model::SheetId(1), c.encoder}, [](auto& row) { row.turned = true; }).any());
}

TEST(Dirty, titlesAndPlansOfTheDesignRunRulesButMakeNoNetworkAgain) {
    const auto wiring = fact_bit<graph::Wiring>();
    EXPECT_EQ(spoilt<model::Settings>({}, [](auto& row) { row.title = "x"; }), wiring);
    EXPECT_EQ(spoilt<model::Settings>({}, [](auto& row) { row.security.account_directory.reset(); }), wiring);
    EXPECT_EQ(spoilt<model::Settings>({}, [](auto& row) { row.spares.endpoints_percent = 10; }), wiring);
}

TEST(Dirty, whereADeviceIsMountedIsSeenInTheWiring) {
    auto c = clean_design();
    const auto rack = c.b.rack("North A");
    const auto before = c.design();
    c.b.change<model::Device>(c.switch_a, [&](auto& row) { row.rack = model::RackPlace{rack, 3}; });
    EXPECT_EQ(analysis::spoilt_by(model::difference(before, c.design())).facts, fact_bit<graph::Wiring>());
}

TEST(Dirty, theHeightOfARackRunsRulesAgain) {
    auto c = clean_design();
    const auto rack = c.b.rack("North A");
    const auto before = c.design();
    c.b.change<model::Rack>(rack, [](auto& row) { row.units -= 1; });
    EXPECT_EQ(analysis::spoilt_by(model::difference(before, c.design())).facts, fact_bit<graph::Wiring>());
}

TEST(Dirty, aWallIsSeenInTheWiringAndItsNameNowhere) {
    auto c = clean_design();
    auto row = model::Wall::blank(model::WallId(1));
    row.rows = 1;
    row.tiles = {c.display, c.display2};
    c.b.put(row);
    const auto changed = [&](auto&& change) {
        const auto before = c.design();
        c.b.change<model::Wall>(row.id, change);
        return analysis::spoilt_by(model::difference(before, c.design())).facts;
    };
    EXPECT_FALSE(changed([](auto& wall) { wall.name = "Left", wall.note = "x"; }).any());
    EXPECT_EQ(changed([](auto& wall) { wall.gap_across = 2_mm; }), fact_bit<graph::Wiring>());
    EXPECT_EQ(changed([](auto& wall) { wall.tiles[1].reset(); }), fact_bit<graph::Wiring>());
}

TEST(Dirty, whoSitsFarthestIsSeenInTheWiring) {
    auto c = clean_design();
    const auto room = c.b.room("1.01", "Hall");
    const auto before = c.design();
    c.b.change<model::Room>(room, [](auto& row) { row.farthest_viewer = 8_m; });
    EXPECT_EQ(analysis::spoilt_by(model::difference(before, c.design())).facts, fact_bit<graph::Wiring>());
}

TEST(Dirty, aRenameSpoilsTagsOnly) {
    const auto c = clean_design();
    const auto tags = fact_bit<analysis::TagUse>();
    EXPECT_EQ(spoilt<model::Device>(c.encoder, [](auto& row) { row.tag = "x"; }), tags);
    EXPECT_EQ(spoilt<model::Cable>(c.trunk, [](auto& row) { row.tag = "x"; }), tags);
}

TEST(Dirty, aLengthLeavesTheNetworkAlone) {
    const auto c = clean_design();
    const auto facts = spoilt<model::Cable>(c.trunk, [](auto& row) { row.length = 70_m; });
    EXPECT_TRUE(facts.has(fact_bit<analysis::CableLengths>()));
    EXPECT_FALSE(facts.has(fact_bit<graph::NetworkGraph>() | fact_bit<analysis::LinkLoads>()));
}

TEST(Dirty, onlyRulesThatReadLengthsSeeALength) {
    auto c = clean_design();
    const auto before = c.design();
    c.b.change<model::Cable>(c.trunk, [](auto& row) { row.length = 70_m; });
    const auto length = analysis::spoilt_by(model::difference(before, c.design()));
    EXPECT_TRUE(length.facts.has(fact_bit<graph::Wiring>()));
    EXPECT_FALSE(length.wiring_seen);
    c.b.change<model::Device>(c.encoder, [](auto& row) { row.note = "x"; });
    EXPECT_TRUE(analysis::spoilt_by(model::difference(before, c.design())).wiring_seen);
}

TEST(Dirty, aStreamLeavesTheTreesAlone) {
    const auto c = clean_design();
    const auto facts = spoilt<model::Stream>(c.stream, [](auto& row) { row.payload_rate = 300_Mbps; });
    EXPECT_TRUE(facts.has(fact_bit<analysis::LinkLoads>()));
    EXPECT_TRUE(facts.has(analysis::deferred_facts));
    EXPECT_FALSE(facts.has(fact_bit<analysis::SpanningTrees>() | fact_bit<graph::Runs>()));
}

TEST(Dirty, whatIsSetOnAPicturePortLeavesTheNetworkAlone) {
    const auto c = clean_design();
    const auto port = port_of(c.source, "out");
    const auto wiring = fact_bit<graph::Wiring>();
    EXPECT_EQ(spoilt<model::PortOverride>(port, [](auto& row) { row.picture = standards::VideoFormat{}; }),
              wiring | fact_bit<analysis::VideoChains>());
    EXPECT_EQ(spoilt<model::PortOverride>(port, [](auto& row) { row.protection = standards::HdcpContent::type_1; }),
              wiring);
}

TEST(Dirty, aChangeSpreadsToWhatIsComputedFromIt) {
    EXPECT_TRUE(analysis::derived_from(fact_bit<analysis::VlanPaths>()).has(fact_bit<analysis::LinkLoads>()));
    EXPECT_TRUE(analysis::derived_from(fact_bit<graph::Runs>()).has(fact_bit<analysis::CableLengths>()));
    EXPECT_FALSE(analysis::derived_from(fact_bit<analysis::PowerBudget>()).any());
    EXPECT_FALSE(analysis::derived_from(fact_bit<graph::Wiring>()).any());
}

}  // namespace streamwright::test::dirty_test
