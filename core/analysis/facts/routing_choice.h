// The heaviest streams that the inputs can bring: each stream needs an input out of one set, or one out of each of two
// or more, and an input is spent once. Where sets stand on two sides (sources' side and far side of an arc), that is a
// flow of greatest value, input - stream - input, exact and integral (Ford and Fulkerson 1962; intersections of two
// matroids: Edmonds 1970). What no flow tells exactly is branched upon, within a bound; past it the answer is a bound.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace streamwright::analysis {

__extension__ using Weight = __int128;

/// One input of each of these needs brings the stream.
struct RoutingWay {
    std::vector<int> needs;
    std::vector<int> apart;  // per need: an input meets several needs only where these are equal; empty: all are
    Weight less = 0;         // than the weight of the demand
    bool one_input(std::size_t need, std::size_t other) const { return apart.empty() || apart[need] == apart[other]; }
};

/// Streams of the same needs; of each, one way is taken or none. Only demands of one stream have ways that are `less`.
struct RoutingDemand {
    std::vector<Weight> weights;  // per stream, falling
    std::vector<RoutingWay> ways;
    /// What it may bring at most where not all its ways are listed, from an input of this need at least; 0: all are.
    Weight unexplored = 0;
    int unexplored_need = 0;
};

struct RoutingProblem {
    std::vector<int> cells;               // inputs that are alike: how many
    std::vector<std::vector<int>> needs;  // cells any input of which meets it, sorted; never without an input
    std::vector<RoutingDemand> demands;
    std::vector<bool> counted;  // per cell: its inputs count; empty: none does
    std::optional<int> most;    // streams at most that inputs which count may bring
};

struct RoutingTaken {
    int demand = 0, stream = 0, way = 0;
    std::vector<int>
        cells;  // per need of the way: an input of this cell; of the same cell as an earlier need: the same
    friend bool operator==(const RoutingTaken&, const RoutingTaken&) = default;
};

struct RoutingChoice {
    std::vector<RoutingTaken> taken;
    Weight gain = 0, at_most = 0;  // equal: exact
};

/// `patience` bounds how many flows are tried for each part of the problem that hangs together.
RoutingChoice choose_routing(const RoutingProblem& problem, int patience = 2000);

}  // namespace streamwright::analysis
