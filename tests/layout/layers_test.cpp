// Layers and sheets: small trees worked out by hand, and on random networks what must hold whatever the network:
// every node once below its parent, no sheet beyond its rows, no two blocks of a column on the same row.
#include "core/layout/layers.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <random>
#include <set>

namespace streamwright::layout {
namespace {

using testing::ElementsAre;

TEST(Layers, CountEdgesFromTheRootAndPreferThoseThatCarry) {
    // A square 0-1-2-3 with 3-0 carrying nothing: 3 hangs from 2, not from 0.
    const auto forest = in_layers(4, {{0, 1}, {1, 2}, {2, 3}, {3, 0, false}}, {0});
    EXPECT_THAT(forest.layer, ElementsAre(0, 1, 2, 3));
    EXPECT_THAT(forest.parent, ElementsAre(-1, 0, 1, 2));
    EXPECT_THAT(forest.roots, ElementsAre(0));
}

TEST(Layers, AnIslandHangsFromAnEdgeThatCarriesNothingBeforeItStandsAlone) {
    const auto forest = in_layers(4, {{0, 1, false}, {1, 2}}, {0});
    EXPECT_THAT(forest.layer, ElementsAre(0, 1, 2, 0));
    EXPECT_THAT(forest.roots, ElementsAre(0, 3));
}

TEST(TreeSheets, TwoLayersFitOneSheetAndAStarTakesBothSides) {
    const auto chain = in_layers(3, {{0, 1}, {1, 2}}, {0});
    const auto sheets = tree_sheets(chain, {1, 1, 1}, 5);
    ASSERT_EQ(sheets.size(), 1U);
    EXPECT_EQ(sheets[0].rows, 1);
    const auto star = in_layers(7, {{0, 1}, {0, 2}, {0, 3}, {0, 4}, {0, 5}, {0, 6}}, {0});
    const auto both = tree_sheets(star, std::vector<int>(7, 1), 5);
    ASSERT_EQ(both.size(), 1U);
    EXPECT_EQ(both[0].rows, 3);
    EXPECT_EQ(std::count_if(both[0].spots.begin(), both[0].spots.end(), [](const auto& s) { return s.leftward; }), 3);
}

struct RandomNetwork {
    int nodes;
    std::vector<LayerEdge> edges;
    std::vector<int> own_rows;
};

RandomNetwork draw(std::mt19937& random) {
    RandomNetwork network;
    network.nodes = 1 + static_cast<int>(random() % 60);
    const auto any = [&] { return static_cast<int>(random() % static_cast<unsigned>(network.nodes)); };
    for (int i = 1; i < network.nodes; ++i)
        if (random() % 10 != 0)
            network.edges.push_back({static_cast<int>(random() % static_cast<unsigned>(i)), i, random() % 5 != 0});
    for (unsigned i = random() % 8; i > 0; --i) network.edges.push_back({any(), any(), random() % 2 == 0});
    for (int i = 0; i < network.nodes; ++i) network.own_rows.push_back(1 + static_cast<int>(random() % 4 == 0));
    return network;
}

void expect_sound(const TreeSheet& sheet, int capacity) {
    EXPECT_LE(sheet.rows, capacity);
    std::map<std::pair<int, int>, int> taken;  // column and row of blocks
    for (const auto& spot : sheet.spots) {
        EXPECT_GE(spot.row, 0);
        EXPECT_LE(spot.row + spot.rows, sheet.rows);
        EXPECT_TRUE(spot.column >= 0 && spot.column <= 2);
        if (spot.parent >= 0) {
            EXPECT_EQ(std::abs(sheet.spots[static_cast<std::size_t>(spot.parent)].column - spot.column), 1);
        }
        for (int row = spot.row; row < spot.row + spot.rows; ++row) EXPECT_EQ((taken[{spot.column, row}]++), 0);
    }
}

TEST(TreeSheets, OnRandomNetworksEveryNodeStandsOnceBelowItsParentAndBlocksKeepApart) {
    std::mt19937 random(20);
    for (int round = 0; round < 300; ++round) {
        const auto network = draw(random);
        const auto forest = in_layers(network.nodes, network.edges, {network.nodes / 2});
        std::multiset<int> below, roots;
        for (const auto& sheet : tree_sheets(forest, network.own_rows, 7)) {
            expect_sound(sheet, 7);
            for (const auto& spot : sheet.spots) (spot.parent >= 0 ? below : roots).insert(spot.node);
        }
        for (int node = 0; node < network.nodes; ++node) {
            const bool is_root = forest.parent[static_cast<std::size_t>(node)] < 0;
            EXPECT_EQ(below.count(node), is_root ? 0U : 1U);
            if (is_root) {
                EXPECT_GE(roots.count(node), 1U);
            }
        }
    }
}

}  // namespace
}  // namespace streamwright::layout
