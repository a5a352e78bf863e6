// Links and directions of the network in words and figures; the half of the network view that reads loads.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/deliver/drawing/network_view.h"

#include <string>
#include <vector>

namespace streamwright::deliver {

/// Every link between two bridges that are drawn; `switch_of_bridge` is -1 for those that are not.
std::vector<NetworkLink> network_links(const analysis::Facts& facts, const base::NumberStyle& numbers,
                                       const std::vector<int>& switch_of_bridge);

/// The fullest of the access ports given by their arcs, at worst: "fullest port 93.1 %"; of the preset while the worst
/// case is not known; empty without any.
struct FullestPort {
    std::string words;
    bool overfull = false;
};
FullestPort fullest_port(const analysis::Facts& facts, const base::NumberStyle& numbers, const std::vector<int>& arcs);

/// Tags of a bridge's devices: "SW-N1", of a stack "SW-1 + SW-2".
std::string bridge_tag(const graph::Wiring& wiring, const graph::Bridge& bridge);
/// "10, 20"; empty for the nameless VLAN.
std::string vlan_numbers(const analysis::Facts& facts, const std::vector<analysis::VlanIndex>& vlans);
/// Items with `between` in between.
std::string joined(const std::vector<std::string>& items, const std::string& between);

}  // namespace streamwright::deliver
