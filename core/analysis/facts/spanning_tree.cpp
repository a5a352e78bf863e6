#include "core/analysis/facts/spanning_tree.h"

#include "core/standards/spanning_tree_costs.h"

#include <queue>

#include <algorithm>
#include <functional>
#include <limits>
#include <numeric>
#include <tuple>

namespace streamwright::analysis {

namespace tree_detail {

using catalogue::Bpdus;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// A bridge as the tree sees it. The rank orders bridge identifiers: lower is better.
struct TreeBridge {
    Bpdus bpdus = Bpdus::run;
    bool per_vlan = false;
    bool long_costs = true;
    bool gone = false;
    int rank = 0;
};

/// Priority, then bridge address; without an address the device id decides, after all that have one.
using BridgeIdentifier = std::tuple<int, bool, std::uint64_t>;

BridgeIdentifier identifier(const graph::Wiring& wiring, const graph::Bridge& bridge) {
    BridgeIdentifier best{std::numeric_limits<int>::max(), true, 0};
    for (const int device : bridge.devices) {
        const auto& row = *wiring.devices[at(device)].row;
        const auto& set = row.bridging;
        best = std::min(best, {set.priority.value_or(standards::usual_bridge_priority), !set.address.has_value(),
                               set.address ? set.address->bits : row.id.bits()});
    }
    return best;
}

TreeBridge read_bridge(const graph::Wiring& wiring, const graph::Bridge& bridge) {
    const auto& facts = *wiring.devices[at(bridge.devices.front())].type->bridging;
    TreeBridge read;
    read.bpdus = bpdus_of(wiring, bridge);
    read.gone = bridge.gone;
    read.per_vlan = facts.trees == catalogue::TreeKind::per_vlan;
    read.long_costs = facts.long_path_costs.value_or(true);
    return read;
}

std::vector<TreeBridge> read_bridges(const graph::Wiring& wiring, const graph::NetworkGraph& network) {
    std::vector<TreeBridge> bridges;
    std::vector<std::pair<BridgeIdentifier, int>> order;
    for (const auto& bridge : network.bridges) {
        order.emplace_back(identifier(wiring, bridge), static_cast<int>(bridges.size()));
        bridges.push_back(read_bridge(wiring, bridge));
    }
    std::sort(order.begin(), order.end());
    for (std::size_t rank = 0; rank < order.size(); ++rank)
        bridges[at(order[rank].second)].rank = static_cast<int>(rank);
    return bridges;
}

/// A port of a bridge that runs the tree: one end of a link (an aggregation group is one port).
struct TreePort {
    int bridge = 0, link = 0;
    bool at_a = true;
    std::int64_t cost = 0;
    std::pair<int, int> id;  // port priority, port number
};

TreePort read_port(const graph::Wiring& wiring, const graph::NetworkGraph& network, const TreeBridge& facts, int link,
                   bool at_a, base::BitRate rate) {
    const auto& row = network.links[at(link)];
    TreePort port{at_a ? row.a : row.b, link, at_a, 0, {std::numeric_limits<int>::max(), 0}};
    const auto& members = network.bridges[at(port.bridge)].devices;
    for (const auto ref : at_a ? row.a_ports : row.b_ports) {
        const auto* set = wiring.port_override(ref);
        const int member = static_cast<int>(std::find(members.begin(), members.end(), ref.device) - members.begin());
        const int priority = set && set->port_priority ? *set->port_priority : standards::usual_port_priority;
        port.id = std::min(port.id, {priority, member * 4096 + ref.port + 1});
        if (set && set->path_cost && *set->path_cost > 0 && port.cost == 0) port.cost = *set->path_cost;
    }
    if (port.cost == 0) port.cost = facts.long_costs ? long_path_cost(rate) : short_path_cost(rate);
    return port;
}

/// Links joined through bridges that hand BPDUs on are one segment, as a cable is.
struct Segments {
    std::vector<int> of_link;
    std::vector<std::vector<int>> ports;  // per segment: indices of tree ports
};

struct Merging {
    std::vector<int> parent;
    explicit Merging(std::size_t count) : parent(count) { std::iota(parent.begin(), parent.end(), 0); }
    int find(int x) {
        while (parent[at(x)] != x) x = parent[at(x)] = parent[at(parent[at(x)])];
        return x;
    }
    void merge(int x, int y) { parent[at(find(x))] = find(y); }
};

Segments find_segments(const graph::NetworkGraph& network, const std::vector<TreeBridge>& bridges,
                       const std::vector<TreePort>& ports, const std::vector<bool>& usable) {
    const int links = static_cast<int>(network.links.size());
    Merging merging(network.links.size() + network.bridges.size());
    for (int i = 0; i < links; ++i)
        for (const int bridge : {network.links[at(i)].a, network.links[at(i)].b})
            if (usable[at(i)] && bridges[at(bridge)].bpdus == Bpdus::passed) merging.merge(i, links + bridge);
    Segments segments{std::vector<int>(at(links)), std::vector<std::vector<int>>(merging.parent.size())};
    for (int i = 0; i < links; ++i) segments.of_link[at(i)] = merging.find(i);
    for (std::size_t p = 0; p < ports.size(); ++p)
        segments.ports[at(segments.of_link[at(ports[p].link)])].push_back(static_cast<int>(p));
    return segments;
}

/// One computation of the tree over the usable links.
struct TreeRun {
    const graph::NetworkGraph& network;
    const std::vector<TreeBridge>& bridges;
    const std::vector<TreePort>& ports;
    const std::vector<bool>& usable;
    Segments segments;
    std::vector<std::vector<int>> ports_of;  // per bridge
    Tree tree;

    void prepare() {
        const auto count = network.bridges.size();
        segments = find_segments(network, bridges, ports, usable);
        ports_of.resize(count);
        for (std::size_t p = 0; p < ports.size(); ++p)
            if (usable[at(ports[p].link)]) ports_of[at(ports[p].bridge)].push_back(static_cast<int>(p));
        tree.root_of.assign(count, -1);
        tree.root_cost.assign(count, 0);
        tree.a_role.assign(network.links.size(), TreeRole::down);
        tree.b_role = tree.a_role;
    }

    /// From the best bridge of each island outward; the first bridge that reaches a segment has the least cost there.
    void spread(int root, std::vector<bool>& segment_done) {
        using Entry = std::tuple<std::int64_t, int, int>;  // cost, rank, bridge
        std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
        std::vector<int> reached{root};
        tree.root_of[at(root)] = root;
        open.emplace(0, bridges[at(root)].rank, root);
        while (!open.empty()) {
            const auto [cost, rank, bridge] = open.top();
            open.pop();
            if (cost != tree.root_cost[at(bridge)]) continue;
            for (const int p : ports_of[at(bridge)]) {
                const int segment = segments.of_link[at(ports[at(p)].link)];
                if (segment_done[at(segment)]) continue;
                segment_done[at(segment)] = true;
                for (const int q : segments.ports[at(segment)]) {
                    const auto& port = ports[at(q)];
                    if (!usable[at(port.link)]) continue;
                    const auto candidate = cost + port.cost;
                    auto& known = tree.root_cost[at(port.bridge)];
                    if (tree.root_of[at(port.bridge)] >= 0 && known <= candidate) continue;
                    tree.root_of[at(port.bridge)] = root;
                    known = candidate;
                    open.emplace(candidate, bridges[at(port.bridge)].rank, port.bridge);
                }
            }
        }
    }

    void find_roots() {
        std::vector<int> by_rank;
        for (std::size_t b = 0; b < bridges.size(); ++b)
            if (bridges[b].bpdus == Bpdus::run) by_rank.push_back(static_cast<int>(b));
        std::sort(by_rank.begin(), by_rank.end(),
                  [&](int x, int y) { return bridges[at(x)].rank < bridges[at(y)].rank; });
        std::vector<bool> segment_done(segments.ports.size(), false);
        for (const int bridge : by_rank)
            if (tree.root_of[at(bridge)] < 0) spread(bridge, segment_done);
    }

    /// Per segment the port whose bridge offers the best way to the root; -1: no running bridge there.
    std::vector<int> designated() const {
        std::vector<int> best(segments.ports.size(), -1);
        const auto key = [&](int p) {
            const auto& port = ports[at(p)];
            return std::tuple(tree.root_cost[at(port.bridge)], bridges[at(port.bridge)].rank, port.id);
        };
        for (std::size_t s = 0; s < best.size(); ++s)
            for (const int p : segments.ports[s])
                if (usable[at(ports[at(p)].link)] && (best[s] < 0 || key(p) < key(best[s]))) best[s] = p;
        return best;
    }

    int root_port(int bridge, const std::vector<int>& best) const {
        int chosen = -1;
        const auto key = [&](int p) {
            const auto& offer = ports[at(best[at(segments.of_link[at(ports[at(p)].link)])])];
            return std::tuple(tree.root_cost[at(offer.bridge)] + ports[at(p)].cost, bridges[at(offer.bridge)].rank,
                              offer.id, ports[at(p)].id);
        };
        for (const int p : ports_of[at(bridge)]) {
            const int offer = best[at(segments.of_link[at(ports[at(p)].link)])];
            if (ports[at(offer)].bridge == bridge) continue;
            if (chosen < 0 || key(p) < key(chosen)) chosen = p;
        }
        return chosen;
    }

    void give_roles() {
        for (std::size_t i = 0; i < network.links.size(); ++i)
            if (usable[i]) tree.a_role[i] = tree.b_role[i] = TreeRole::designated;  // ends without a tree forward
        const auto best = designated();
        for (std::size_t b = 0; b < bridges.size(); ++b) {
            if (bridges[b].bpdus != Bpdus::run) continue;
            const int bridge = static_cast<int>(b);
            const int root = tree.root_of[b] == bridge ? -1 : root_port(bridge, best);
            for (const int p : ports_of[b]) {
                const auto& port = ports[at(p)];
                auto& role = (port.at_a ? tree.a_role : tree.b_role)[at(port.link)];
                if (p == root)
                    role = TreeRole::root;
                else if (best[at(segments.of_link[at(port.link)])] != p)
                    role = TreeRole::alternate;
            }
        }
    }

    /// Bridges without a tree belong to the root heard on one of their links, else they are alone.
    void place_silent() {
        for (std::size_t round = 0, changed = 1; changed != 0 && round < bridges.size(); ++round) {
            changed = 0;
            for (std::size_t i = 0; i < network.links.size(); ++i) {
                auto& a = tree.root_of[at(network.links[i].a)];
                auto& b = tree.root_of[at(network.links[i].b)];
                if (!usable[i] || (a < 0) == (b < 0)) continue;
                (a < 0 ? a : b) = std::max(a, b);
                changed = 1;
            }
        }
        for (std::size_t b = 0; b < bridges.size(); ++b)
            if (tree.root_of[b] < 0) tree.root_of[b] = static_cast<int>(b);
    }
};

Tree compute(const graph::NetworkGraph& network, const std::vector<TreeBridge>& bridges,
             const std::vector<TreePort>& ports, const std::vector<bool>& usable) {
    TreeRun run{network, bridges, ports, usable, {}, {}, {}};
    run.prepare();
    run.find_roots();
    run.give_roles();
    run.place_silent();
    return std::move(run.tree);
}

/// The tree as one VLAN knows it: only its links and its bridges.
Tree seen_by(Tree tree, VlanIndex vlan, const graph::NetworkGraph& network, const VlanPaths& paths) {
    tree.vlan = vlan;
    std::vector<bool> in_vlan(network.bridges.size(), false);
    for (std::size_t i = 0; i < network.links.size(); ++i) {
        const auto& carried = paths.links[i].carried;
        if (std::binary_search(carried.begin(), carried.end(), vlan))
            in_vlan[at(network.links[i].a)] = in_vlan[at(network.links[i].b)] = true;
        else
            tree.a_role[i] = tree.b_role[i] = TreeRole::down;
    }
    for (std::size_t i = 0; i < network.leaves.size(); ++i)
        if (paths.leaves[i].carries(vlan)) in_vlan[at(network.leaves[i].bridge)] = true;
    for (std::size_t b = 0; b < in_vlan.size(); ++b)
        if (!in_vlan[b]) tree.root_of[b] = -1;
    return tree;
}

}  // namespace tree_detail

bool Tree::forwards(int link) const {
    const auto open = [](TreeRole role) { return role == TreeRole::root || role == TreeRole::designated; };
    return open(a_role[static_cast<std::size_t>(link)]) && open(b_role[static_cast<std::size_t>(link)]);
}

std::vector<LinkEnd> Tree::blocked() const {
    std::vector<LinkEnd> ends;
    for (std::size_t i = 0; i < a_role.size(); ++i) {
        if (a_role[i] == TreeRole::alternate) ends.push_back({static_cast<int>(i), true});
        if (b_role[i] == TreeRole::alternate) ends.push_back({static_cast<int>(i), false});
    }
    return ends;
}

catalogue::Bpdus bpdus_of(const graph::Wiring& wiring, const graph::Bridge& bridge) {
    const auto& first = wiring.devices[tree_detail::at(bridge.devices.front())];
    using catalogue::Bpdus;
    const auto stated = first.type->bridging->bpdus.value_or(bridge.endpoint ? Bpdus::passed : Bpdus::run);
    return first.row->bridging.tree_off && stated == Bpdus::run ? Bpdus::passed : stated;
}

int bridge_priority(const graph::Wiring& wiring, const graph::Bridge& bridge) {
    return std::get<0>(tree_detail::identifier(wiring, bridge));
}

std::int64_t long_path_cost(base::BitRate rate) { return standards::long_path_cost(rate); }
std::int64_t short_path_cost(base::BitRate rate) { return standards::short_path_cost(rate); }

SpanningTrees find_spanning_trees(const graph::Wiring& wiring, const graph::Runs&, const graph::NetworkGraph& network,
                                  const LinkCapacity& capacity, const VlanPaths& paths) {
    using tree_detail::compute, tree_detail::read_bridges, tree_detail::read_port, tree_detail::seen_by;
    const auto bridges = read_bridges(wiring, network);
    std::vector<bool> up(network.links.size());
    std::vector<tree_detail::TreePort> ports;
    for (std::size_t i = 0; i < network.links.size(); ++i) {
        up[i] = capacity.arcs[2 * i].has_value();
        if (!up[i]) continue;
        for (const bool at_a : {true, false}) {
            const auto& facts = bridges[static_cast<std::size_t>(at_a ? network.links[i].a : network.links[i].b)];
            if (facts.bpdus == catalogue::Bpdus::run)
                ports.push_back(read_port(wiring, network, facts, static_cast<int>(i), at_a, *capacity.arcs[2 * i]));
        }
    }
    // One bridge with a common tree among them, and all speak in one tree.
    const bool per_vlan = !bridges.empty() && std::all_of(bridges.begin(), bridges.end(), [](const auto& bridge) {
        return bridge.bpdus != catalogue::Bpdus::run || bridge.per_vlan || bridge.gone;
    });
    SpanningTrees trees;
    const int vlans = static_cast<int>(paths.vlans.size());
    const auto common = per_vlan ? Tree{} : compute(network, bridges, ports, up);
    for (VlanIndex vlan = 0; vlan < vlans; ++vlan) {
        if (!per_vlan) {
            trees.trees.push_back(seen_by(common, vlan, network, paths));
            continue;
        }
        auto usable = up;
        for (std::size_t i = 0; i < usable.size(); ++i) {
            const auto& carried = paths.links[i].carried;
            usable[i] = std::binary_search(carried.begin(), carried.end(), vlan);
        }
        trees.trees.push_back(seen_by(compute(network, bridges, ports, usable), vlan, network, paths));
    }
    return trees;
}

}  // namespace streamwright::analysis
