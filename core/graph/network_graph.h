// The network: bridges (switches, stacks, endpoints with a built-in switch) joined by links, and leaves (single
// network ports of everything else). Each link and each leaf has two arcs, one per direction.
#pragma once

#include "core/graph/runs.h"
#include "core/graph/wiring.h"

#include <vector>

namespace streamwright::graph {

struct Bridge {
    std::vector<int> devices;  // one, or the members of a stack, by id
    bool endpoint = false;     // a built-in switch of an endpoint
    bool gone = false;         // taken out whole (network_cut.h)
    friend bool operator==(const Bridge&, const Bridge&) = default;
};

/// One run, or the runs of an aggregation group, between two bridges (or a bridge and itself: a loop).
struct Link {
    int a = 0, b = 0;                           // bridges
    std::vector<int> runs;                      // by index; the first names the link
    std::vector<PortAt> a_ports, b_ports;       // per run
    bool aggregated = false;                    // a group at both ends
    bool gone() const { return runs.empty(); }  // taken out whole (network_cut.h)
    friend bool operator==(const Link&, const Link&) = default;
};

/// A network port of a device that is no bridge, cabled to a bridge.
struct Leaf {
    int bridge = 0;
    PortAt device_port, bridge_port;
    int run = 0;
    friend bool operator==(const Leaf&, const Leaf&) = default;
};

/// Two devices that are no bridges, cabled to each other directly.
struct Direct {
    PortAt a, b;
    int run = 0;
    friend bool operator==(const Direct&, const Direct&) = default;
};

struct NetworkGraph {
    std::vector<Bridge> bridges;
    std::vector<Link> links;
    std::vector<Leaf> leaves;
    std::vector<Direct> directs;
    std::vector<int> bridge_of_device;               // -1: none
    std::vector<std::vector<int>> leaves_of_device;  // per device: indices into leaves

    /// Arcs: link i has 2i (a to b) and 2i+1 (b to a); leaf j has 2(links+j) (device to bridge) and one more (back).
    int arc_count() const { return 2 * static_cast<int>(links.size() + leaves.size()); }
    int link_arc(int link, bool a_to_b) const { return 2 * link + (a_to_b ? 0 : 1); }
    int leaf_arc(int leaf, bool to_bridge) const {
        return 2 * (static_cast<int>(links.size()) + leaf) + (to_bridge ? 0 : 1);
    }
    bool is_link_arc(int arc) const { return arc < 2 * static_cast<int>(links.size()); }
    /// The bridge that an arc reaches, or leaves; -1 where that end is a leaf's device.
    int bridge_after(int arc) const { return bridge_at(arc, arc % 2 == 0); }
    int bridge_before(int arc) const { return bridge_at(arc, arc % 2 != 0); }
    friend bool operator==(const NetworkGraph&, const NetworkGraph&) = default;

private:
    int bridge_at(int arc, bool far_end) const {
        const auto index = static_cast<std::size_t>(arc / 2);
        if (index < links.size()) return far_end ? links[index].b : links[index].a;
        return far_end ? leaves[index - links.size()].bridge : -1;
    }
};

NetworkGraph build_network(const Wiring& wiring, const Runs& runs);

/// What an arc is, for messages and documents.
struct ArcEnds {
    model::CableId link;  // the cable that names the link: the first of its first run
    model::DeviceId from, to;
    PortAt from_port, to_port;
    bool is_link = false;  // false: a leaf
};
ArcEnds arc_ends(const Wiring& wiring, const Runs& runs, const NetworkGraph& network, int arc);

}  // namespace streamwright::graph
