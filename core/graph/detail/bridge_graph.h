// The bridges and links as a graph of Boost.Graph, for its algorithms; included by .cpp files only.
#pragma once

#include "core/graph/network_graph.h"

#include <boost/graph/adjacency_list.hpp>

#include <vector>

namespace streamwright::graph::detail {

using BridgeGraph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS>;

inline BridgeGraph bridge_graph(const NetworkGraph& network, const std::vector<bool>& usable) {
    BridgeGraph graph(network.bridges.size());
    for (std::size_t i = 0; i < network.links.size(); ++i)
        if (usable[i])
            boost::add_edge(static_cast<std::size_t>(network.links[i].a), static_cast<std::size_t>(network.links[i].b),
                            graph);
    return graph;
}

}  // namespace streamwright::graph::detail
