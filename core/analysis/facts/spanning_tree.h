// Prompt. Spanning tree by IEEE 802.1Q: root, path costs, port roles, blocked ports, per tree (one common tree, or one
// per VLAN). Bridges that do not run it are looked through.
#pragma once

#include "core/analysis/facts/vlan_paths.h"
#include "core/graph/network_graph.h"

#include <cstdint>
#include <vector>

namespace streamwright::analysis {

enum class TreeRole { down, root, designated, alternate };

struct LinkEnd {
    int link = 0;
    bool at_a = true;
    friend auto operator<=>(const LinkEnd&, const LinkEnd&) = default;
};

struct Tree {
    VlanIndex vlan = 0;                    // a common tree is repeated for each VLAN it serves
    std::vector<int> root_of;              // per bridge: its island's root bridge; -1: not in this VLAN
    std::vector<std::int64_t> root_cost;   // per bridge
    std::vector<TreeRole> a_role, b_role;  // per link
    bool forwards(int link) const;         // neither end blocked nor down
    std::vector<LinkEnd> blocked() const;  // alternate ends
    friend bool operator==(const Tree&, const Tree&) = default;
};

struct SpanningTrees {
    std::vector<Tree> trees;  // per VLAN index
    friend bool operator==(const SpanningTrees&, const SpanningTrees&) = default;
};

SpanningTrees find_spanning_trees(const graph::Wiring&, const graph::Runs&, const graph::NetworkGraph&,
                                  const LinkCapacity&, const VlanPaths&);

/// What the bridge does with BPDUs here, by its type and whether its tree is off. Not stated: a switch runs a tree, a
/// built-in switch hands BPDUs on as a plain switch does.
catalogue::Bpdus bpdus_of(const graph::Wiring&, const graph::Bridge&);
/// The priority in its bridge identifier; of a stack the best one set.
int bridge_priority(const graph::Wiring&, const graph::Bridge&);

/// Path cost of a speed by IEEE 802.1Q (20,000,000 / Mb/s, long scale) or by the short scale of 802.1D-1998.
std::int64_t long_path_cost(base::BitRate rate);
std::int64_t short_path_cost(base::BitRate rate);

}  // namespace streamwright::analysis
