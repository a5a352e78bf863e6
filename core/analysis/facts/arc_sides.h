// What lies behind an arc and what beyond it. The bridges of each VLAN's active tree are numbered so that a branch is
// one range of numbers; each question is then a comparison or two.
#pragma once

#include "core/analysis/facts/forwarding.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// The active tree of a VLAN, each part from its querier (or its first bridge) outward.
struct TreeOrder {
    std::vector<int> position;             // per bridge
    std::vector<int> branch_end;           // per position: the branch of that bridge is [position, branch_end)
    std::vector<int> part_low, part_high;  // per position: the range of its part
    std::vector<bool> heard;               // per position: a querier is heard there
    std::vector<int> parent_arc;           // per bridge: the arc from its parent into it; -1: none
};

TreeOrder order_tree(const graph::NetworkGraph& network, const Tree& tree, const VlanSnooping& snooping);

/// Per bridge, whether a loop that nothing cuts is in its part: elsewhere there is one way between any two bridges.
std::vector<bool> looped_parts(const graph::NetworkGraph& network, const Tree& tree, const TreeOrder& order);

struct ArcSides {
    bool leaf = false;     // beyond is one device, at the bridge of position low
    bool outside = false;  // beyond is the part without the range, else the range itself
    int low = 0, high = 0;
    int part_low = 0, part_high = 0;

    bool part(int position) const { return position >= part_low && position < part_high; }
    bool behind(int position) const {
        const bool inside = position >= low && position < high;
        return part(position) && inside == outside;
    }
};

/// Nothing where no subscription changes what the arc carries: blocked or down links, VLANs it does not carry, and the
/// way from a device into the network.
std::optional<ArcSides> sides_of(const graph::NetworkGraph& network, const VlanPaths& paths, const TreeOrder& order,
                                 VlanIndex vlan, int arc);

}  // namespace streamwright::analysis
