#include "core/analysis/facts/routing_choice.h"

#include "core/analysis/facts/routing_part.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <set>
#include <utility>

namespace streamwright::analysis {

namespace choice_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Inputs of cells that meet the same needs are alike.
struct Merged {
    RoutingProblem problem;
    std::vector<std::vector<int>> cells;  // per merged cell: those it stands for
};

Merged merge(const RoutingProblem& asked) {
    std::vector<std::vector<int>> met(asked.cells.size());
    for (std::size_t n = 0; n < asked.needs.size(); ++n)
        for (const int cell : asked.needs[n]) met[at(cell)].push_back(static_cast<int>(n));
    Merged result;
    result.problem.demands = asked.demands;
    result.problem.most = asked.most;
    const auto counted = [&](std::size_t c) { return asked.most && !asked.counted.empty() && asked.counted[c]; };
    result.problem.needs.resize(asked.needs.size());
    std::map<std::pair<bool, std::vector<int>>, int> seen;
    for (std::size_t c = 0; c < met.size(); ++c) {
        if (met[c].empty() || asked.cells[c] == 0) continue;
        const auto [place, fresh] = seen.try_emplace({counted(c), met[c]}, static_cast<int>(result.cells.size()));
        if (fresh) {
            result.cells.emplace_back();
            result.problem.cells.push_back(0);
            result.problem.counted.push_back(counted(c));
            for (const int need : met[c]) result.problem.needs[at(need)].push_back(place->second);
        }
        result.problem.cells[at(place->second)] += asked.cells[c];
        result.cells[at(place->second)].push_back(static_cast<int>(c));
    }
    return result;
}

/// Demands that share cells, however far round, together.
std::vector<std::vector<int>> parts_of(const RoutingProblem& problem) {
    std::vector<int> parent(problem.cells.size());
    std::iota(parent.begin(), parent.end(), 0);
    const auto find = [&](int cell) {
        while (parent[at(cell)] != cell) cell = parent[at(cell)] = parent[at(parent[at(cell)])];
        return cell;
    };
    const auto first_cell = [&](const RoutingDemand& demand) {
        return problem.needs[at(demand.ways.front().needs.front())].front();
    };
    for (const auto& demand : problem.demands)
        for (const auto& way : demand.ways)
            for (const int need : way.needs)
                for (const int cell : problem.needs[at(need)]) parent[at(find(cell))] = find(first_cell(demand));
    std::map<int, std::vector<int>> parts;
    for (std::size_t d = 0; d < problem.demands.size(); ++d)
        if (!problem.demands[d].ways.empty() && !problem.demands[d].weights.empty())
            parts[find(first_cell(problem.demands[d]))].push_back(static_cast<int>(d));
    std::vector<std::vector<int>> result;
    for (auto& [root, list] : parts) result.push_back(std::move(list));
    return result;
}

/// The inputs of merged cells handed out among those they stand for.
void hand_out(const RoutingProblem& asked, const Merged& merged, RoutingChoice& choice) {
    auto left = asked.cells;
    for (auto& taken : choice.taken) {
        const auto shared = taken.cells;
        const auto& way = merged.problem.demands[at(taken.demand)].ways[at(taken.way)];
        for (std::size_t i = 0; i < shared.size(); ++i) {
            std::size_t first = 0;
            while (first < i && (shared[first] != shared[i] || !way.one_input(first, i))) ++first;
            if (first < i) {
                taken.cells[i] = taken.cells[first];
                continue;
            }
            taken.cells[i] =
                *std::ranges::find_if(merged.cells[at(shared[i])], [&](int each) { return left[at(each)] > 0; });
            --left[at(taken.cells[i])];
        }
    }
}

/// How many inputs of a part count.
int countable(const RoutingProblem& problem, const std::vector<int>& part, int most) {
    std::set<int> cells;
    for (const int d : part)
        for (const auto& way : problem.demands[at(d)].ways)
            for (const int need : way.needs)
                for (const int cell : problem.needs[at(need)])
                    if (problem.counted[at(cell)]) cells.insert(cell);
    int count = 0;
    for (const int cell : cells) count = std::min(most, count + problem.cells[at(cell)]);
    return count;
}

/// The best of parts side by side where `most` is shared among them: what each gains with so many, put together.
class SharedAmong {
public:
    explicit SharedAmong(int most) : best_(at(most + 1)) {}
    void add(const std::vector<RoutingChoice>& with) {
        std::vector<RoutingChoice> next(best_.size());
        for (std::size_t n = 0; n < best_.size(); ++n)
            for (std::size_t k = 0; k < with.size() && k <= n; ++k) {
                const auto& rest = best_[n - k];
                next[n].at_most = std::max(next[n].at_most, rest.at_most + with[k].at_most);
                if (k > 0 && rest.gain + with[k].gain <= next[n].gain) continue;
                next[n].gain = rest.gain + with[k].gain;
                next[n].taken = rest.taken;
                next[n].taken.insert(next[n].taken.end(), with[k].taken.begin(), with[k].taken.end());
            }
        best_ = std::move(next);
    }
    RoutingChoice all() && { return std::move(best_.back()); }

private:
    std::vector<RoutingChoice> best_;  // by how many may count
};

RoutingChoice choose_listed(const RoutingProblem& problem, int patience) {
    constexpr int plenty = 1 << 30;
    SharedAmong shared(problem.most.value_or(0));
    for (const auto& part : parts_of(problem)) {
        std::vector<RoutingChoice> with;
        const int most = problem.most ? countable(problem, part, *problem.most) : 0;
        for (int n = 0; n <= most; ++n) with.push_back(choose_part(problem, part, problem.most ? n : plenty, patience));
        shared.add(with);
    }
    return std::move(shared).all();
}

}  // namespace choice_detail

RoutingChoice choose_routing(const RoutingProblem& asked, int patience) {
    using namespace choice_detail;
    const auto merged = merge(asked);
    auto choice = choose_listed(merged.problem, patience);
    hand_out(asked, merged, choice);
    auto bound = merged.problem;
    bool bounded = false;
    for (auto& demand : bound.demands) {
        if (demand.unexplored == 0) continue;
        bounded = true;
        Weight most = demand.unexplored;
        for (const Weight each : demand.weights) most = std::max(most, each);
        demand = {{most}, {{{demand.unexplored_need}, {}, 0}}, 0, 0};
    }
    if (bounded) choice.at_most = std::max(choice.gain, choose_listed(bound, patience).at_most);
    return choice;
}

}  // namespace streamwright::analysis
