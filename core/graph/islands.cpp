#include "core/graph/islands.h"

#include "core/graph/detail/bridge_graph.h"

#include <boost/graph/connected_components.hpp>

namespace streamwright::graph {

Islands find_islands(const NetworkGraph& network, const std::vector<bool>& usable) {
    Islands islands;
    islands.of_bridge.assign(network.bridges.size(), 0);
    if (network.bridges.empty()) return islands;
    const auto graph = detail::bridge_graph(network, usable);
    // Boost numbers components in the order of the vertices it starts from, so by smallest bridge.
    islands.count = boost::connected_components(graph, islands.of_bridge.data());
    return islands;
}

Islands find_islands(const NetworkGraph& network) {
    return find_islands(network, std::vector<bool>(network.links.size(), true));
}

}  // namespace streamwright::graph
