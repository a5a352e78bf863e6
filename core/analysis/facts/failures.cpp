#include "core/analysis/facts/failures.h"

#include <algorithm>
#include <numeric>

namespace streamwright::analysis {

namespace failures_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Parts that bridges fall into over the links that stand and are up.
int count_parts(const graph::NetworkGraph& network, const std::vector<std::optional<base::BitRate>>& capacity) {
    std::vector<int> parent(network.bridges.size());
    std::iota(parent.begin(), parent.end(), 0);
    const auto find = [&](int b) {
        while (parent[at(b)] != b) b = parent[at(b)] = parent[at(parent[at(b)])];
        return b;
    };
    auto parts = std::count_if(network.bridges.begin(), network.bridges.end(), [](const auto& b) { return !b.gone; });
    for (std::size_t i = 0; i < network.links.size(); ++i) {
        if (!capacity[2 * i]) continue;
        const int a = find(network.links[i].a), b = find(network.links[i].b);
        if (a == b) continue;
        parent[at(a)] = b;
        --parts;
    }
    return static_cast<int>(parts);
}

std::vector<int> opened_links(const WholeNetwork& whole, const LostState& state) {
    std::vector<int> opened;
    if (state.edge_only()) return opened;
    for (std::size_t v = 0; v < whole.trees.trees.size(); ++v)
        for (int link = 0; link < static_cast<int>(whole.network.links.size()); ++link)
            if (!whole.trees.trees[v].forwards(link) && state.trees().trees[v].forwards(link)) opened.push_back(link);
    std::sort(opened.begin(), opened.end());
    opened.erase(std::unique(opened.begin(), opened.end()), opened.end());
    return opened;
}

}  // namespace failures_detail

std::optional<Failures> find_outcomes(const WholeNetwork& whole, const LinkLoads& loads, std::vector<Failing> failing,
                                      const std::stop_token& stop, const Progress& progress) {
    using namespace failures_detail;
    Failures failures{count_parts(whole.network, whole.capacity.arcs), {}};
    if (failing.empty()) return failures;
    LostState state(whole);
    LoadMemory memory(whole, loads, state);
    const auto all = failing.size();
    failures.outcomes.reserve(all);
    for (auto& each : failing) {
        if (stop.stop_requested()) return std::nullopt;
        state.apply(each.lost);
        auto change = memory.change();
        Outcome outcome{
            std::move(each), std::move(change.lost), std::move(change.overfull), failures.parts, {}, {}, {}};
        if (!state.edge_only()) outcome.parts = count_parts(state.network(), state.capacity());
        outcome.opened = opened_links(whole, state);
        outcome.back = time_until_back(whole, state, change.moved);
        outcome.moved = std::move(change.moved);
        failures.outcomes.push_back(std::move(outcome));
        if (progress) progress(failures.outcomes.size(), all);
    }
    return failures;
}

bool asked_to_outlive(model::Survival survive, FailingKind kind) {
    switch (survive) {
        case model::Survival::nothing:
            return false;
        case model::Survival::link:
            return kind == FailingKind::link || kind == FailingKind::duct;
        case model::Survival::link_or_switch:
            return kind != FailingKind::access;
    }
    return false;
}

std::optional<Failures> find_failures(const graph::Wiring& wiring, const graph::Runs& runs,
                                      const graph::NetworkGraph& network, const LinkCapacity& capacity,
                                      const VlanPaths& paths, const SpanningTrees& trees, const Forwarding& forwarding,
                                      const LinkLoads& loads, const PowerBudget& power, const std::stop_token& stop) {
    const auto survive = wiring.design.settings().survive;
    std::vector<Failing> failing;
    if (survive != model::Survival::nothing) failing = list_failing(wiring, runs, network, power);
    std::erase_if(failing, [&](const Failing& each) { return !asked_to_outlive(survive, each.kind); });
    return find_outcomes({wiring, runs, network, capacity, paths, trees, forwarding}, loads, std::move(failing), stop);
}

}  // namespace streamwright::analysis
