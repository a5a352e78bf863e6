// The two directions of the network that a run of cable belongs to.
#pragma once

#include "core/graph/network_graph.h"

#include <vector>

namespace streamwright::graph {

/// Both arcs of its link or leaf; none where the run is no part of the network.
std::vector<int> arcs_of_run(const NetworkGraph& network, int run);

}  // namespace streamwright::graph
