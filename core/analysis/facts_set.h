// All derived facts side by side, and sets of them. The order is the order of derivation.
#pragma once

#include "core/analysis/facts/address_plan.h"
#include "core/analysis/facts/aggregation_risk.h"
#include "core/analysis/facts/cable_length.h"
#include "core/analysis/facts/failures.h"
#include "core/analysis/facts/fibre_channel.h"
#include "core/analysis/facts/forwarding.h"
#include "core/analysis/facts/link_capacity.h"
#include "core/analysis/facts/link_load.h"
#include "core/analysis/facts/power_budget.h"
#include "core/analysis/facts/querier_place.h"
#include "core/analysis/facts/spanning_tree.h"
#include "core/analysis/facts/tag_use.h"
#include "core/analysis/facts/video_chain.h"
#include "core/analysis/facts/vlan_paths.h"
#include "core/analysis/facts/worst_case.h"
#include "core/graph/network_graph.h"
#include "core/graph/runs.h"
#include "core/graph/signal_graph.h"
#include "core/graph/wiring.h"

#include <cstddef>
#include <memory>
#include <tuple>
#include <type_traits>

namespace streamwright::analysis {

using FactTuple = std::tuple<graph::Wiring, graph::Runs, graph::SignalGraph, graph::NetworkGraph, LinkCapacity,
                             VlanPaths, SpanningTrees, Forwarding, LinkLoads, CableLengths, FibreChannels, PowerBudget,
                             AddressPlan, TagUse, VideoChains, WorstCase, QuerierPlaces, Failures, AggregationRisk>;
inline constexpr std::size_t fact_count = std::tuple_size_v<FactTuple>;

/// Bits of facts, in the order of FactTuple.
struct FactSet {
    unsigned bits = 0;
    constexpr bool any() const { return bits != 0; }
    constexpr bool has(FactSet other) const { return (bits & other.bits) != 0; }
    friend constexpr FactSet operator|(FactSet a, FactSet b) { return {a.bits | b.bits}; }
    friend constexpr FactSet operator&(FactSet a, FactSet b) { return {a.bits & b.bits}; }
    friend constexpr bool operator==(FactSet, FactSet) = default;
};

namespace detail {
template <class Fact, std::size_t I = 0>
constexpr std::size_t fact_index() {
    static_assert(I < fact_count, "not a fact: a rule may read only what FactTuple lists");
    if constexpr (std::is_same_v<std::tuple_element_t<I, FactTuple>, Fact>)
        return I;
    else
        return fact_index<Fact, I + 1>();
}
}  // namespace detail

template <class Fact>
constexpr FactSet fact_bit() {
    return {1U << detail::fact_index<Fact>()};
}

/// Facts that a worker computes on a frozen design after the edit has been answered.
inline constexpr FactSet deferred_facts =
    fact_bit<WorstCase>() | fact_bit<QuerierPlaces>() | fact_bit<Failures>() | fact_bit<AggregationRisk>();

namespace detail {
template <class Tuple>
struct SharedTuple;
template <class... Fact>
struct SharedTuple<std::tuple<Fact...>> {
    using type = std::tuple<std::shared_ptr<const Fact>...>;
    static type fresh() { return {std::make_shared<const Fact>()...}; }
};
}  // namespace detail

/// Each fact is held shared and never changed, so that a frozen copy for a worker costs a few pointers.
struct Facts {
    typename detail::SharedTuple<FactTuple>::type all = detail::SharedTuple<FactTuple>::fresh();
    bool deferred_known = false;  // the deferred facts are of this design

    template <class Fact>
    const Fact& get() const {
        return *std::get<std::shared_ptr<const Fact>>(all);
    }
    template <class Fact>
    void set(Fact value) {
        std::get<std::shared_ptr<const Fact>>(all) = std::make_shared<const Fact>(std::move(value));
    }
};

}  // namespace streamwright::analysis
