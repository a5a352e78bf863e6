// Every network fact of a design in one go, for tests.
#pragma once

#include "core/analysis/facts/worst_case.h"
#include "core/graph/network_graph.h"
#include "core/model/design.h"

#include <span>
#include <string>
#include <vector>

namespace streamwright::test {

struct NetworkFacts {
    explicit NetworkFacts(const model::Design& design)
        : wiring(graph::wire(design)),
          runs(graph::find_runs(wiring)),
          network(graph::build_network(wiring, runs)),
          capacity(analysis::find_link_capacity(wiring, runs, network)),
          paths(analysis::find_vlan_paths(wiring, runs, network, capacity)),
          trees(analysis::find_spanning_trees(wiring, runs, network, capacity, paths)),
          forwarding(analysis::find_forwarding(wiring, network, paths, trees)),
          loads(analysis::find_link_loads(wiring, network, paths, trees, forwarding)) {}

    graph::Wiring wiring;
    graph::Runs runs;
    graph::NetworkGraph network;
    analysis::LinkCapacity capacity;
    analysis::VlanPaths paths;
    analysis::SpanningTrees trees;
    analysis::Forwarding forwarding;
    analysis::LinkLoads loads;

    analysis::WorstCase worst() const {
        return *analysis::find_worst_case(wiring, network, paths, trees, forwarding, loads, {});
    }
    const std::string& tag(model::DeviceId id) const { return wiring.design.devices.find(id)->tag; }
    /// The arc between two devices by their tags, the first one cabled; -1: none.
    int arc(const std::string& from, const std::string& to) const {
        for (int i = 0; i < network.arc_count(); ++i) {
            const auto ends = graph::arc_ends(wiring, runs, network, i);
            if (tag(ends.from) == from && tag(ends.to) == to) return i;
        }
        return -1;
    }
    /// Streams on the arc by their tags, in the order of their ids.
    std::vector<std::string> tags(std::span<const int> streams) const {
        std::vector<std::string> all, some;
        for (const auto& row : wiring.design.streams) all.push_back(row.tag);
        for (const int s : streams) some.push_back(all[static_cast<std::size_t>(s)]);
        return some;
    }
};

}  // namespace streamwright::test
