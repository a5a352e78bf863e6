#include "core/analysis/facts/routing_part.h"

#include "core/analysis/facts/routing_flow.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace streamwright::analysis {

namespace part_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Sets of cells that must stand on the same side, or on opposite ones.
class Sides {
public:
    explicit Sides(std::size_t cells) : parent_(cells), other_(cells, false) {
        std::iota(parent_.begin(), parent_.end(), 0);
    }
    /// Its representative, and whether it stands opposite to it.
    std::pair<int, bool> find(int cell) {
        bool other = false;
        int root = cell;
        for (; parent_[at(root)] != root; root = parent_[at(root)]) other ^= other_[at(root)];
        bool rest = other;
        while (parent_[at(cell)] != root && cell != root) {
            const int up = parent_[at(cell)];
            const bool step = other_[at(cell)];
            parent_[at(cell)] = root;
            other_[at(cell)] = rest;
            rest ^= step;
            cell = up;
        }
        return {root, other};
    }
    bool tie(int a, int b, bool opposite) {
        const auto [root_a, other_a] = find(a);
        const auto [root_b, other_b] = find(b);
        if (root_a == root_b) return (other_a != other_b) == opposite;
        parent_[at(root_b)] = root_a;
        other_[at(root_b)] = (other_a != other_b) != opposite;
        return true;
    }

private:
    std::vector<int> parent_;
    std::vector<bool> other_;
};

/// How a demand stands in the flow: one or two of its needs, or none where it is let through for nothing. `exact`:
/// that is all it needs.
struct Stand {
    std::vector<int> needs;  // ids of sets of cells
    bool exact = true;
};

/// A part of the problem under way: what is left of cells and demands.
struct State {
    std::vector<int> cells;
    std::vector<RoutingDemand> demands;
    std::vector<std::pair<int, int>> named;  // per demand: the demand asked about, and its first stream
    std::vector<RoutingTaken> taken;
    int left = 0;  // streams that inputs which count may still bring
    Weight gain = 0;
};

struct Relaxed {
    Weight value = 0;
    std::vector<int> counts;                           // per demand: streams taken
    std::vector<std::vector<std::vector<int>>> cells;  // per demand, per need of its stand: a cell for each
    std::vector<Stand> stands;
};

struct Chooser {
    std::vector<std::vector<int>> needs;
    std::vector<bool> counted;
    int patience = 0;
    RoutingChoice best;
    bool told_all = true;

    /// All the cells of each need on one side, and the two needs on opposite ones. Changes nothing where that fails.
    bool place(Sides& sides, const std::vector<int>& stand) {
        auto tried = sides;
        for (const int need : stand)
            for (const int cell : needs[at(need)])
                if (!tried.tie(needs[at(need)].front(), cell, false)) return false;
        if (stand.size() == 2 && !tried.tie(needs[at(stand[0])].front(), needs[at(stand[1])].front(), true))
            return false;
        sides = std::move(tried);
        return true;
    }

    int need_of(std::vector<int> cells) {
        std::sort(cells.begin(), cells.end());
        cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
        const auto found = std::find(needs.begin(), needs.end(), cells);
        if (found != needs.end()) return static_cast<int>(found - needs.begin());
        needs.push_back(std::move(cells));
        return static_cast<int>(needs.size()) - 1;
    }

    /// Any way needs at least an input of the smallest of its needs.
    std::vector<int> least(const RoutingDemand& demand) {
        std::vector<int> cells;
        for (const auto& way : demand.ways) {
            const int smallest = *std::min_element(way.needs.begin(), way.needs.end(), [&](int a, int b) {
                return needs[at(a)].size() < needs[at(b)].size();
            });
            cells.insert(cells.end(), needs[at(smallest)].begin(), needs[at(smallest)].end());
        }
        return {need_of(std::move(cells))};
    }

    std::vector<Stand> stand_all(const State& state, Sides& sides) {
        std::vector<Stand> stands(state.demands.size());
        std::vector<std::size_t> order(state.demands.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            const auto rank = [&](std::size_t d) {
                return state.demands[d].ways.size() == 1 ? state.demands[d].ways[0].needs.size() : 9;
            };
            return rank(a) < rank(b);
        });
        for (const auto d : order) {
            const auto& demand = state.demands[d];
            auto& stand = stands[d];
            if (demand.weights.empty()) continue;
            const auto& only = demand.ways.front().needs;
            stand.exact = demand.ways.size() == 1 && only.size() <= 2 && demand.ways.front().less == 0;
            if (stand.exact && place(sides, only)) {
                stand.needs = only;
                continue;
            }
            stand.exact = false;
            auto one = least(demand);
            if (place(sides, one)) stand.needs = std::move(one);
        }
        return stands;
    }

    /// Which cells flow in from the start. Each group of sides may be turned round; those that count stand there, so
    /// that one pipe before them holds what may come. Nothing of that where a group has them on both sides.
    struct Near {
        std::vector<bool> cells;
        bool holds = true;
    };
    Near near_cells(const State& state, Sides& sides) const {
        const auto count = state.cells.size();
        std::vector<char> seen(count, 0);  // per group: 1 and 2: some that count stand as it does, or opposite
        for (std::size_t c = 0; c < count && !counted.empty(); ++c) {
            const auto [root, other] = sides.find(static_cast<int>(c));
            if (counted[c]) seen[at(root)] |= other ? 2 : 1;
        }
        Near near;
        for (std::size_t c = 0; c < count; ++c) {
            const auto [root, other] = sides.find(static_cast<int>(c));
            near.cells.push_back(other != (seen[at(root)] == 1));
            near.holds = near.holds && seen[at(root)] != 3;
        }
        return near;
    }

    bool is_counted(int cell) const { return !counted.empty() && counted[at(cell)]; }

    /// What a way counts for: a stream that several inputs bring for one, streams of several groups for each input.
    int counts(const RoutingWay& way, const std::vector<int>& cells) const {
        int count = 0;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            std::size_t first = 0;
            while (first < i && (cells[first] != cells[i] || !way.one_input(first, i))) ++first;
            count += first == i && is_counted(cells[i]) ? 1 : 0;
        }
        return way.apart.empty() ? std::min(count, 1) : count;
    }

    struct Pipes {
        std::vector<int> value;               // per demand: numbers of its pipes with value
        std::vector<std::pair<int, int>> in;  // need, pipe: from or to the need
    };

    Relaxed relax(const State& state) {
        Sides sides(state.cells.size());
        Relaxed result;
        result.stands = stand_all(state, sides);
        const int cells = static_cast<int>(state.cells.size()), count = static_cast<int>(state.demands.size());
        const int first_need = 2 + cells, first_demand = first_need + static_cast<int>(needs.size());
        const int held = first_demand + 2 * count;
        RoutingFlow flow(held + 1);
        std::vector<bool> used(needs.size(), false);
        for (const auto& stand : result.stands)
            for (const int need : stand.needs) used[at(need)] = true;
        const auto sided = near_cells(state, sides);
        const auto near = [&](int cell) { return sided.cells[at(cell)]; };
        constexpr int plenty = 1 << 30;
        flow.add_pipe(0, held, sided.holds ? state.left : plenty);
        for (int c = 0; c < cells; ++c)
            near(c) ? flow.add_pipe(is_counted(c) ? held : 0, 2 + c, state.cells[at(c)])
                    : flow.add_pipe(2 + c, 1, state.cells[at(c)]);
        std::vector<std::vector<std::pair<int, int>>> of_need(needs.size());  // cell, pipe
        for (std::size_t n = 0; n < needs.size(); ++n) {
            if (!used[n]) continue;
            const int node = first_need + static_cast<int>(n);
            for (const int c : needs[n])
                of_need[n].emplace_back(
                    c, near(c) ? flow.add_pipe(2 + c, node, plenty) : flow.add_pipe(node, 2 + c, plenty));
        }
        std::vector<Pipes> pipes(state.demands.size());
        for (int d = 0; d < count; ++d) {
            const auto& demand = state.demands[at(d)];
            if (demand.weights.empty()) continue;
            const int in = first_demand + 2 * d, out = in + 1;
            bool from_start = true, to_end = true;
            for (const int need : result.stands[at(d)].needs) {
                const bool is_near = near(needs[at(need)].front());
                (is_near ? from_start : to_end) = false;
                const int node = first_need + need;
                pipes[at(d)].in.emplace_back(
                    need, is_near ? flow.add_pipe(node, in, plenty) : flow.add_pipe(out, node, plenty));
            }
            if (from_start) flow.add_pipe(0, in, plenty);
            if (to_end) flow.add_pipe(out, 1, plenty);
            for (std::size_t i = 0, next = 0; i < demand.weights.size(); i = next) {
                while (next < demand.weights.size() && demand.weights[next] == demand.weights[i]) ++next;
                pipes[at(d)].value.push_back(flow.add_pipe(in, out, static_cast<int>(next - i), demand.weights[i]));
            }
        }
        result.value = flow.send(0, 1);
        read(state, flow, of_need, pipes, result);
        return result;
    }

    /// Who was taken, and inputs of which cells bring them.
    void read(const State& state, const RoutingFlow& flow, const std::vector<std::vector<std::pair<int, int>>>& of_need,
              const std::vector<Pipes>& pipes, Relaxed& result) const {
        std::vector<std::vector<int>> ready(needs.size());  // per need: a cell for each input that flows
        for (std::size_t n = 0; n < of_need.size(); ++n)
            for (const auto& [cell, pipe] : of_need[n]) ready[n].insert(ready[n].end(), at(flow.through(pipe)), cell);
        result.counts.assign(state.demands.size(), 0);
        result.cells.resize(state.demands.size());
        for (std::size_t d = 0; d < state.demands.size(); ++d) {
            for (const int pipe : pipes[d].value) result.counts[d] += flow.through(pipe);
            for (const auto& [need, pipe] : pipes[d].in) {
                auto& from = ready[at(need)];
                auto& list = result.cells[d].emplace_back();
                for (int i = 0; i < flow.through(pipe); ++i) {
                    list.push_back(from.back());
                    from.pop_back();
                }
            }
        }
    }

    void keep_best(const State& state, const Relaxed& relaxed) {
        best.gain = state.gain + relaxed.value;
        best.taken = state.taken;
        for (std::size_t d = 0; d < state.demands.size(); ++d)
            for (int i = 0; i < relaxed.counts[d]; ++i) {
                RoutingTaken taken{state.named[d].first, state.named[d].second + i, 0, {}};
                for (const auto& list : relaxed.cells[d]) taken.cells.push_back(list[at(i)]);
                best.taken.push_back(std::move(taken));
            }
    }

    /// Best first down; what is cut off cannot beat what was found.
    void search(const State& state) {
        if (patience-- <= 0) {
            told_all = false;
            return;
        }
        const auto relaxed = relax(state);
        if (state.gain + relaxed.value <= best.gain) return;
        int open = -1;
        for (std::size_t d = 0; d < state.demands.size(); ++d)
            if (relaxed.counts[d] > 0 && !relaxed.stands[d].exact) open = static_cast<int>(d);
        if (open < 0) open = too_many(state, relaxed);
        if (open < 0) return keep_best(state, relaxed);
        branch(state, open);
    }

    /// A demand that takes part where more came than may; none: -1.
    int too_many(const State& state, const Relaxed& relaxed) const {
        int came = 0, open = -1;
        for (std::size_t d = 0; d < state.demands.size(); ++d)
            for (int i = 0; i < relaxed.counts[d]; ++i) {
                std::vector<int> cells;
                for (const auto& list : relaxed.cells[d]) cells.push_back(list[at(i)]);
                const int count = counts(state.demands[d].ways.front(), cells);
                if (count == 0) continue;
                came += count;
                open = static_cast<int>(d);
            }
        return came > state.left ? open : -1;
    }

    /// The first stream of the demand: with each of its ways, from each choice of inputs; or without it.
    void branch(const State& state, int open) {
        auto rest = state;
        auto& demand = rest.demands[at(open)];
        const auto weight = demand.weights.front();
        demand.weights.erase(demand.weights.begin());
        const auto name = rest.named[at(open)];
        ++rest.named[at(open)].second;
        const auto ways = state.demands[at(open)].ways;
        for (std::size_t w = 0; w < ways.size(); ++w) {
            if (weight <= ways[w].less) continue;
            auto with = rest;
            with.gain += weight - ways[w].less;
            with.taken.push_back({name.first, name.second, static_cast<int>(w), {}});
            spend(with, ways[w]);
        }
        rest.demands[at(open)].weights.clear();  // the heavier ones first: without this none after it
        search(rest);
    }

    void spend_count(State state, int count) {
        state.left -= count;
        if (state.left >= 0) search(state);
    }

    /// Meets the needs of the last one taken, one after the other; an input may meet several.
    void spend(const State& state, const RoutingWay& way) {
        const auto met = state.taken.back().cells.size();
        if (met == way.needs.size()) return spend_count(state, counts(way, state.taken.back().cells));
        const auto of = needs[at(way.needs[met])];
        const auto& so_far = state.taken.back().cells;
        for (std::size_t i = 0; i < so_far.size(); ++i) {
            if (!way.one_input(i, met) || !std::binary_search(of.begin(), of.end(), so_far[i])) continue;
            auto next = state;
            next.taken.back().cells.push_back(so_far[i]);
            return spend(next, way);
        }
        for (const int cell : of) {
            if (state.cells[at(cell)] == 0) continue;
            if (patience <= 0) {
                told_all = false;
                return;
            }
            auto next = state;
            --next.cells[at(cell)];
            next.taken.back().cells.push_back(cell);
            spend(next, way);
        }
    }
};

}  // namespace part_detail

RoutingChoice choose_part(const RoutingProblem& problem, const std::vector<int>& demands, int most, int patience) {
    part_detail::Chooser chooser{problem.needs, problem.counted, patience, {}, true};
    part_detail::State state{problem.cells, {}, {}, {}, most, 0};
    for (const int d : demands) {
        state.demands.push_back(problem.demands[part_detail::at(d)]);
        state.named.emplace_back(d, 0);
    }
    const auto bound = chooser.relax(state).value;
    chooser.search(state);
    auto choice = std::move(chooser.best);
    choice.at_most = chooser.told_all ? choice.gain : bound;
    return choice;
}

}  // namespace streamwright::analysis
