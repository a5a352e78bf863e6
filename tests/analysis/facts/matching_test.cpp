// Greedy matching of streams to groups of inputs. Expected values: every subset and every assignment tried.
#include "core/analysis/facts/matching.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace streamwright::analysis {
namespace {

struct Problem {
    std::vector<int> capacities;
    std::vector<int> weights;
    std::vector<std::vector<int>> groups;  // per element
};

/// The heaviest set that can be assigned, by trying each element in each of its groups and nowhere.
int best_by_trial(const Problem& p, std::size_t element, std::vector<int>& room) {
    if (element == p.weights.size()) return 0;
    int best = best_by_trial(p, element + 1, room);
    for (const int group : p.groups[element]) {
        if (room[group] == 0) continue;
        --room[group];
        best = std::max(best, p.weights[element] + best_by_trial(p, element + 1, room));
        ++room[group];
    }
    return best;
}

TEST(SlotMatching, GreedyIsAsHeavyAsAnyAssignment) {
    std::mt19937_64 random(7);
    const auto below = [&](int count) { return static_cast<int>(random() % static_cast<std::uint64_t>(count)); };
    for (int round = 0; round < 300; ++round) {
        Problem p;
        const int groups = 1 + below(4);
        for (int g = 0; g < groups; ++g) p.capacities.push_back(below(3));
        for (int e = 0; e < 7; ++e) {
            p.weights.push_back(1 + below(9));
            p.groups.emplace_back();
            for (int g = 0; g < groups; ++g)
                if (below(2) == 0) p.groups.back().push_back(g);
        }
        std::vector<std::size_t> order{0, 1, 2, 3, 4, 5, 6};
        std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return p.weights[a] > p.weights[b]; });
        SlotMatching matching(p.capacities);
        int sum = 0;
        for (const auto e : order)
            if (matching.take(static_cast<int>(e), p.groups[e])) sum += p.weights[e];
        auto room = p.capacities;
        ASSERT_EQ(sum, best_by_trial(p, 0, room)) << "round " << round;
        int held = 0;
        for (std::size_t g = 0; g < p.capacities.size(); ++g) {
            ASSERT_LE(static_cast<int>(matching.matched()[g].size()), p.capacities[g]);
            for (const int e : matching.matched()[g]) {
                held += p.weights[e];
                ASSERT_NE(std::find(p.groups[e].begin(), p.groups[e].end(), static_cast<int>(g)), p.groups[e].end());
            }
        }
        ASSERT_EQ(held, sum);
    }
}

}  // namespace
}  // namespace streamwright::analysis
