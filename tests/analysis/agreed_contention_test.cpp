// The worst case within an agreement against every routing that keeps to it, each put through the ordinary loads.
#include "core/analysis/agreed_contention.h"

#include "tests/cases/field_room.h"
#include "tests/graph/mode_room.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

#include <random>

namespace streamwright::test::agreed_contention_test {

using namespace base::literals;

/// Encoders and decoders on three switches in a row; the second trunk is the one agreed on.
struct Row {
    FieldRoom room;
    std::vector<model::StreamId> streams;
    std::vector<model::DeviceId> decoders;
    model::CableId trunk{0};

    explicit Row(std::mt19937_64& random) {
        std::vector<model::DeviceId> bridges;
        for (const char* tag : {"SW-A", "SW-B", "SW-C"}) bridges.push_back(room.add_switch(tag));
        room.trunk(bridges[0], bridges[1]);
        trunk = room.trunk(bridges[1], bridges[2]);
        room.querier(bridges[random() % 3]);
        const auto place = [&] { return bridges[random() % 3]; };
        for (int i = 0; i < 4; ++i)
            streams.push_back(
                room.encoder(place(), base::BitRate::from_count(100'000'000 * (1 + static_cast<int>(random() % 8)))));
        for (int i = 0; i < 3; ++i) decoders.push_back(room.decoder(place()));
    }
    int arc(const NetworkFacts& facts, bool a_to_b) const {
        for (int link = 0; link < static_cast<int>(facts.network.links.size()); ++link) {
            const int each = facts.network.link_arc(link, a_to_b);
            if (graph::arc_ends(facts.wiring, facts.runs, facts.network, each).link == trunk) return each;
        }
        return -1;
    }
};

/// The greatest load of every routing that shows at most so many different streams over the arc.
base::Rate greatest_kept(const Row& row, int sources, bool a_to_b) {
    base::Rate greatest;
    for (int routing = 0; routing < 5 * 5 * 5; ++routing) {
        auto b = row.room.b;
        int left = routing;
        for (const auto decoder : row.decoders) {
            if (left % 5 > 0)
                b.subscribe(row.room.preset, row.streams[static_cast<std::size_t>(left % 5 - 1)], decoder);
            left /= 5;
        }
        const NetworkFacts facts(b.design);
        const int arc = row.arc(facts, a_to_b);
        const auto& preset = facts.loads.presets.front();
        const auto across = analysis::sources_across(facts.wiring, facts.network, facts.paths, facts.trees,
                                                     facts.forwarding, preset, arc);
        // What flows unasked is there whatever is agreed; of it nothing is counted that nobody is shown.
        std::vector<int> routed;
        const auto& idle = facts.loads.idle.arcs[static_cast<std::size_t>(arc)].streams;
        std::ranges::set_difference(across, idle, std::back_inserter(routed));
        if (static_cast<int>(across.size()) <= sources)
            greatest = std::max(greatest, preset.arcs[static_cast<std::size_t>(arc)].wire);
        EXPECT_LE(routed.size(), across.size());
    }
    return greatest;
}

TEST(AgreedContention, isTheGreatestOfAllRoutingsThatKeepToIt) {
    std::mt19937_64 random(9);
    int limited = 0;
    for (int round = 0; round < 12; ++round) {
        Row row(random);
        const int sources = static_cast<int>(random() % 3);
        row.room.b.change<model::Cable>(row.trunk, [&](auto& cable) { cable.agreed = {sources, "IT", ""}; });
        const NetworkFacts facts(row.room.b.design);
        const auto worst = analysis::find_worst_case(
            facts.wiring, facts.network, facts.paths, facts.trees, facts.forwarding, facts.loads, {},
            analysis::agreed_pictures(facts.wiring, facts.runs, facts.network));
        ASSERT_TRUE(worst);
        for (const bool a_to_b : {true, false}) {
            const int arc = row.arc(facts, a_to_b);
            const auto& most = worst->arcs[static_cast<std::size_t>(arc)];
            const auto& within = worst->agreed.at(arc);
            EXPECT_EQ(within.wire, greatest_kept(row, sources, a_to_b)) << "round " << round << ", " << sources;
            limited += within.wire < most.wire ? 1 : 0;
        }
    }
    EXPECT_GT(limited, 5);
}

/// The greatest load of an arc over all presets that show at most so many different streams across it.
base::Rate greatest_of_presets(const NetworkFacts& facts, int arc, int sources) {
    base::Rate greatest;
    for (const auto& preset : facts.loads.presets) {
        const auto across = analysis::sources_across(facts.wiring, facts.network, facts.paths, facts.trees,
                                                     facts.forwarding, preset, arc);
        if (static_cast<int>(across.size()) <= sources)
            greatest = std::max(greatest, preset.arcs[static_cast<std::size_t>(arc)].wire);
    }
    return greatest;
}

class AgreedContentionModes : public testing::TestWithParam<RoomMode> {};

TEST_P(AgreedContentionModes, isTheGreatestOfAllRoutingsThatKeepToIt) {
    int arcs = 0, limited = 0, bounds = 0;
    for (std::uint64_t seed = 1000; seed < 1150 && !HasFailure(); ++seed) {
        ModeRoom room(GetParam(), seed);
        room.add_every_routing();
        const auto facts = room.facts();
        for (int sources = 0; sources < 3; ++sources) {
            analysis::AgreedPictures limits;
            for (int arc = 0; arc < 2 * static_cast<int>(facts.network.links.size()); ++arc) limits[arc] = sources;
            const auto worst = *analysis::find_worst_case(facts.wiring, facts.network, facts.paths, facts.trees,
                                                          facts.forwarding, facts.loads, {}, limits);
            for (const auto& [arc, within] : worst.agreed) {
                const auto kept = greatest_of_presets(facts, arc, sources);
                ++arcs;
                bounds += within.at_most ? 1 : 0;
                limited += within.wire < worst.arcs[static_cast<std::size_t>(arc)].wire ? 1 : 0;
                if (within.at_most)
                    EXPECT_GE(within.wire, kept);
                else
                    EXPECT_EQ(within.wire, kept)
                        << "seed " << seed << ", arc " << arc << ", " << sources << " "
                        << within.wire.ceil().count() / 1000000 << " " << kept.ceil().count() / 1000000 << " routed "
                        << testing::PrintToString(facts.tags(within.routed)) << " unasked "
                        << testing::PrintToString(facts.tags(within.unasked));
            }
        }
    }
    EXPECT_GT(arcs, 1000);
    EXPECT_GT(limited, GetParam() == RoomMode::flood ? -1 : 60);
    EXPECT_LE(bounds, arcs / 20);
}

INSTANTIATE_TEST_SUITE_P(All, AgreedContentionModes,
                         testing::Values(RoomMode::flood, RoomMode::router_ports, RoomMode::drop, RoomMode::mixed));

TEST(AgreedContention, theLeastOfALinkCounts) {
    std::mt19937_64 random(1);
    Row row(random);
    EXPECT_TRUE(analysis::find_agreements(NetworkFacts(row.room.b.design).wiring, NetworkFacts(row.room.b.design).runs,
                                          NetworkFacts(row.room.b.design).network)
                    .empty());
    row.room.b.change<model::Cable>(row.trunk, [](auto& cable) { cable.agreed = {4, "IT", "2026-11-20"}; });
    const NetworkFacts facts(row.room.b.design);
    const auto agreements = analysis::find_agreements(facts.wiring, facts.runs, facts.network);
    ASSERT_EQ(agreements.size(), 1u);
    EXPECT_EQ(agreements.front().cable, row.trunk);
    EXPECT_EQ(analysis::by_whom(agreements.front().agreed), "IT, 2026-11-20");
}

}  // namespace streamwright::test::agreed_contention_test
