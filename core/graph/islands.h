// Islands: which bridges can reach each other over a set of links.
#pragma once

#include "core/graph/network_graph.h"

#include <vector>

namespace streamwright::graph {

struct Islands {
    std::vector<int> of_bridge;  // per bridge: its island, numbered by smallest bridge
    int count = 0;
    friend bool operator==(const Islands&, const Islands&) = default;
};

/// Over the links marked usable (one mark per link).
Islands find_islands(const NetworkGraph& network, const std::vector<bool>& usable);
/// Over all links.
Islands find_islands(const NetworkGraph& network);

}  // namespace streamwright::graph
