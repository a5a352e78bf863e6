// The benchmarks of this program: each prints its rows. Nothing here fails by the clock.
#pragma once

#include "tests/bench/timing.h"

#include <ostream>
#include <vector>

namespace streamwright::bench {

struct EditFigures {
    Milliseconds slowest_p99{};  // of the slowest kind
    Milliseconds deferred{};     // after the last edit
};

/// Every single failure, one row a size.
void bench_failures(std::ostream& out, const std::vector<int>& sizes);
void bench_deliver(std::ostream& out, int endpoints);
/// Rounds: edits of each kind. Prints its table where `out` is given.
EditFigures bench_edits(std::ostream* out, int endpoints, int rounds);
/// The edits' figures are those of the sizes, in their order.
void bench_growth(std::ostream& out, const std::vector<int>& sizes, const std::vector<EditFigures>& edits, int rounds);
/// One direction of a campus of each size against a solver.
void bench_worst(std::ostream& out, const std::vector<int>& sizes);

}  // namespace streamwright::bench
