// What the rules about spanning trees share: the way through the active tree, who is heard beyond a port, and which
// bridges share a root.
#pragma once

#include "core/analysis/rule_help.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// The cable that names the link.
model::CableId link_cable(const graph::Wiring& wiring, const graph::Runs& runs, const graph::Link& link);
/// The devices that name the bridges.
std::vector<base::Ref> bridge_refs(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                   const std::vector<int>& bridges);

/// The active links as trees: from each bridge the link toward the top of its part, so that the way between two bridges
/// is found by climbing, however many links are blocked.
struct ActiveForest {
    std::vector<int> up;     // per bridge: the link upward; -1: a top
    std::vector<int> depth;  // per bridge: links to its top
};
ActiveForest active_forest(const graph::NetworkGraph& network, const Tree& tree);
/// The links between two bridges in no order; nothing where no active way joins them.
std::optional<std::vector<int>> active_way(const graph::NetworkGraph& network, const ActiveForest& forest, int from,
                                           int to);

/// Another bridge that runs the tree, met beyond the link seen from this end: at its far end, or through bridges that
/// hand BPDUs on.
std::optional<int> bridge_heard(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                const LinkCapacity& capacity, LinkEnd end);

/// The bridges that run a tree and follow one root, in any of the VLANs.
struct RootPart {
    int root = 0;
    std::vector<int> bridges;  // sorted, the root among them
    std::vector<int> blocked;  // links of the part with a blocked end, sorted
};
std::vector<RootPart> root_parts(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                 const SpanningTrees& trees);

/// The ports of the bridge, one a link that is up, whose path cost follows its speed.
std::vector<LinkEnd> uncosted_ends(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                   const LinkCapacity& capacity, int bridge);
/// The first port of that end of the link.
graph::PortAt end_port(const graph::NetworkGraph& network, LinkEnd end);

}  // namespace streamwright::analysis
