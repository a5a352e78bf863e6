// One part of a problem of choice that hangs together: by a flow of greatest value where that tells it exactly, and
// branched upon within a bound where not.
#pragma once

#include "core/analysis/facts/routing_choice.h"

#include <vector>

namespace streamwright::analysis {

/// Of these demands; `most`: streams at most that inputs which count bring. `at_most` above `gain` where patience ran
/// out.
RoutingChoice choose_part(const RoutingProblem& problem, const std::vector<int>& demands, int most, int patience);

}  // namespace streamwright::analysis
