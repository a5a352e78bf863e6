// Which streams inputs can bring at once. Expected values: every choice tried on small problems.
#include "core/analysis/facts/routing_choice.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <set>

namespace streamwright::analysis {
namespace {

using Numbers = std::vector<int>;

/// Of one group a stream counts for one, however many inputs bring it; of several, each input that counts.
int count_of(const RoutingProblem& problem, const RoutingWay& way, const Numbers& cells) {
    std::set<std::pair<int, int>> inputs;  // an input of a cell meets needs of one group only
    for (std::size_t i = 0; i < cells.size(); ++i)
        if (!problem.counted.empty() && problem.counted[static_cast<std::size_t>(cells[i])])
            inputs.emplace(cells[i], way.apart.empty() ? 0 : way.apart[i]);
    return way.apart.empty() ? std::min(1, static_cast<int>(inputs.size())) : static_cast<int>(inputs.size());
}

/// The greatest gain by trying, for each stream, each way with each choice of inputs, and leaving it out.
struct Trial {
    const RoutingProblem& problem;
    Numbers left = problem.cells;
    int counted = 0;  // streams brought by inputs that count

    long long from(std::size_t demand, std::size_t stream) {
        if (demand == problem.demands.size()) return 0;
        const auto& asked = problem.demands[demand];
        if (stream == asked.weights.size()) return from(demand + 1, 0);
        long long best = from(demand, stream + 1);
        for (const auto& way : asked.ways) {
            const auto gain = static_cast<long long>(asked.weights[stream] - way.less);
            Numbers chosen;
            best = std::max(best, gain + spend(demand, stream, way, chosen, -gain));
        }
        return best;
    }
    /// `nothing`: what counts where the needs cannot be met.
    long long spend(std::size_t demand, std::size_t stream, const RoutingWay& way, Numbers& chosen, long long nothing) {
        const auto met = chosen.size();
        if (met == way.needs.size()) {
            const int counts = count_of(problem, way, chosen);
            if (problem.most && counted + counts > *problem.most) return nothing;
            counted += counts;
            const auto best = from(demand, stream + 1);
            counted -= counts;
            return best;
        }
        long long best = nothing;
        for (const int cell : problem.needs[static_cast<std::size_t>(way.needs[met])]) {
            bool shared = false;
            for (std::size_t i = 0; i < met; ++i) shared = shared || (chosen[i] == cell && way.one_input(i, met));
            auto& rest = left[static_cast<std::size_t>(cell)];
            if (!shared && rest == 0) continue;
            rest -= shared ? 0 : 1;
            chosen.push_back(cell);
            best = std::max(best, spend(demand, stream, way, chosen, nothing));
            chosen.pop_back();
            rest += shared ? 0 : 1;
        }
        return best;
    }
};

struct Draw {
    std::mt19937_64 random;
    int below(int count) { return static_cast<int>(random() % static_cast<std::uint64_t>(count)); }

    /// `sides`: needs come in pairs from two halves of the cells, as in real networks; else any, up to three together.
    RoutingProblem problem(bool sides) {
        RoutingProblem p;
        for (int c = 0; c < 4; ++c) p.cells.push_back(1 + below(2));
        for (int n = 0; n < 6; ++n) {
            Numbers cells;
            const int low = sides ? n % 2 * 2 : 0, high = sides ? low + 2 : 4;
            for (int c = low; c < high; ++c)
                if (below(2) == 0) cells.push_back(c);
            if (cells.empty()) cells.push_back(low + below(high - low));
            p.needs.push_back(cells);
        }
        for (int d = 0; d < 4; ++d) p.demands.push_back(demand(sides));
        return p;
    }
    RoutingDemand demand(bool sides) {
        RoutingDemand demand;
        const int ways = sides ? 1 : 1 + below(2), streams = ways == 1 ? 1 + below(2) : 1;
        for (int s = 0; s < streams; ++s) demand.weights.push_back(10 + below(30));
        std::sort(demand.weights.rbegin(), demand.weights.rend());
        for (int w = 0; w < ways; ++w) {
            RoutingWay way;
            const int needs = 1 + below(sides ? 2 : 3);
            for (int n = 0; n < needs; ++n) way.needs.push_back(sides ? n % 2 + 2 * below(3) : below(6));
            if (!sides && below(3) == 0)
                for (int n = 0; n < needs; ++n) way.apart.push_back(below(2));
            if (w > 0) way.less = below(10);
            demand.ways.push_back(way);
        }
        return demand;
    }
};

/// What is taken is what it says: no input twice, each need met, the gain the sum.
void expect_sound(const RoutingProblem& problem, const RoutingChoice& choice) {
    auto left = problem.cells;
    Weight gain = 0;
    for (const auto& taken : choice.taken) {
        const auto& demand = problem.demands[static_cast<std::size_t>(taken.demand)];
        const auto& way = demand.ways[static_cast<std::size_t>(taken.way)];
        gain += demand.weights[static_cast<std::size_t>(taken.stream)] - way.less;
        ASSERT_EQ(taken.cells.size(), way.needs.size());
        for (std::size_t i = 0; i < way.needs.size(); ++i) {
            const auto& of = problem.needs[static_cast<std::size_t>(way.needs[i])];
            EXPECT_TRUE(std::binary_search(of.begin(), of.end(), taken.cells[i]));
            bool shared = false;
            for (std::size_t j = 0; j < i; ++j)
                shared = shared || (taken.cells[j] == taken.cells[i] && way.one_input(j, i));
            if (!shared) --left[static_cast<std::size_t>(taken.cells[i])];
        }
    }
    int count = 0;
    for (const auto& taken : choice.taken)
        count += count_of(
            problem, problem.demands[static_cast<std::size_t>(taken.demand)].ways[static_cast<std::size_t>(taken.way)],
            taken.cells);
    if (problem.most) {
        EXPECT_LE(count, *problem.most);
    }
    EXPECT_TRUE(gain == choice.gain);
    EXPECT_TRUE(std::ranges::all_of(left, [](int each) { return each >= 0; }));
}

TEST(RoutingChoice, EqualsEveryChoiceTried) {
    Draw draw{std::mt19937_64(7)};
    for (int i = 0; i < 600; ++i) {
        const auto problem = draw.problem(i % 2 == 0);
        const auto choice = choose_routing(problem);
        Trial trial{problem};
        EXPECT_EQ(static_cast<long long>(choice.gain), trial.from(0, 0)) << i;
        EXPECT_TRUE(choice.gain == choice.at_most) << i;
        expect_sound(problem, choice);
    }
}

TEST(RoutingChoice, WhereSomeInputsMayBringSoManyStreamsOnlyItEqualsEveryChoiceTried) {
    Draw draw{std::mt19937_64(9)};
    int held = 0;
    for (int i = 0; i < 600; ++i) {
        auto problem = draw.problem(i % 2 == 0);
        for (std::size_t c = 0; c < problem.cells.size(); ++c)  // one side of those that come in pairs, or any
            problem.counted.push_back(i % 2 == 0 ? c < 2 : draw.below(2) == 0);
        const auto free = choose_routing(problem).gain;
        problem.most = draw.below(3);
        const auto choice = choose_routing(problem);
        Trial trial{problem};
        EXPECT_EQ(static_cast<long long>(choice.gain), trial.from(0, 0)) << i;
        EXPECT_TRUE(choice.gain == choice.at_most) << i;
        expect_sound(problem, choice);
        held += choice.gain < free ? 1 : 0;
    }
    EXPECT_GT(held, 100);
}

TEST(RoutingChoice, OutOfPatienceItNamesABoundThatHolds) {
    Draw draw{std::mt19937_64(8)};
    int bounds = 0;
    for (int i = 0; i < 300; ++i) {
        const auto problem = draw.problem(false);
        const auto choice = choose_routing(problem, 2);
        Trial trial{problem};
        const auto best = trial.from(0, 0);
        EXPECT_LE(static_cast<long long>(choice.gain), best) << i;
        EXPECT_GE(static_cast<long long>(choice.at_most), best) << i;
        bounds += choice.gain < choice.at_most ? 1 : 0;
        expect_sound(problem, choice);
    }
    EXPECT_GT(bounds, 0);
}

// 3 of the 4 streams of 7, 5, 4 and 2 need one of two inputs here and one of two there: 7 + 5.
TEST(RoutingChoice, AStreamMayNeedAnInputOnEitherSide) {
    const RoutingProblem problem{{2, 2}, {{0}, {1}}, {{{7, 5, 4, 2}, {{{0, 1}, {}, 0}}, 0}}};
    EXPECT_EQ(static_cast<long long>(choose_routing(problem).gain), 12);
}

TEST(RoutingChoice, NothingAskedIsNothingTaken) {
    EXPECT_TRUE(choose_routing({}).taken.empty());
    EXPECT_TRUE(choose_routing({{1, 2}, {}, {}}).taken.empty());
}

}  // namespace
}  // namespace streamwright::analysis
