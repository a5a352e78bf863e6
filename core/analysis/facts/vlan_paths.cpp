#include "core/analysis/facts/vlan_paths.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace streamwright::analysis {

namespace vlan_detail {

bool has(const std::vector<VlanIndex>& sorted, VlanIndex vlan) {
    return std::binary_search(sorted.begin(), sorted.end(), vlan);
}

/// Reads what a port says of VLANs; ids that name no VLAN of the design are left out.
struct PortReader {
    const graph::Wiring& wiring;
    std::map<model::VlanId, VlanIndex> indices;
    std::optional<VlanIndex> usual;
    bool nameless = false;

    std::optional<VlanIndex> find(model::VlanId id) const {
        const auto at = indices.find(id);
        return at == indices.end() ? std::nullopt : std::optional(at->second);
    }

    PortVlans read(graph::PortAt at) const {
        const auto* set = wiring.port_override(at);
        if (nameless || !set) return {usual, {}};
        PortVlans vlans;
        if (set->untagged)
            vlans.untagged = find(*set->untagged);
        else if (!set->no_untagged)
            vlans.untagged = usual;
        for (const auto id : set->tagged)
            if (const auto vlan = find(id); vlan && vlan != vlans.untagged) vlans.tagged.push_back(*vlan);
        std::sort(vlans.tagged.begin(), vlans.tagged.end());
        vlans.tagged.erase(std::unique(vlans.tagged.begin(), vlans.tagged.end()), vlans.tagged.end());
        return vlans;
    }

    /// Whether someone set VLANs on the port.
    bool says(graph::PortAt at) const {
        const auto* set = wiring.port_override(at);
        return set && (set->untagged || set->no_untagged || !set->tagged.empty());
    }
};

PortReader make_reader(const graph::Wiring& wiring, VlanPaths& paths) {
    std::vector<const model::Vlan*> rows;
    for (const auto& row : wiring.design.vlans) rows.push_back(&row);
    std::sort(rows.begin(), rows.end(),
              [](const auto* a, const auto* b) { return std::tuple(a->vid, a->id) < std::tuple(b->vid, b->id); });
    PortReader reader{wiring, {}, {}, rows.empty()};
    if (rows.empty()) {
        paths.vlans.push_back({});
        reader.usual = 0;
        return reader;
    }
    for (const auto* row : rows) {
        reader.indices[row->id] = static_cast<VlanIndex>(paths.vlans.size());
        paths.vlans.push_back(row->id);
    }
    // IEEE 802.1Q: a port that says nothing is untagged in VLAN 1.
    if (const auto usual = wiring.design.settings().usual_vlan)
        reader.usual = reader.find(*usual);
    else if (rows.front()->vid == 1)
        reader.usual = 0;
    return reader;
}

/// A built-in switch knows no VLANs unless its port says some: it hands on what the switch before it sends. Each
/// endpoint takes over the port before it, from the switches outward, so that daisy chains end up in one VLAN.
std::vector<std::optional<PortVlans>> adopted(const graph::NetworkGraph& network, const PortReader& reader) {
    std::vector<std::optional<PortVlans>> taken(network.bridges.size());
    std::vector<std::vector<int>> links_of(network.bridges.size());
    std::vector<int> order;
    const auto endpoint = [&](int bridge) { return network.bridges[static_cast<std::size_t>(bridge)].endpoint; };
    const auto take = [&](int bridge, graph::PortAt own, PortVlans vlans) {
        auto& slot = taken[static_cast<std::size_t>(bridge)];
        if (!endpoint(bridge) || slot || reader.says(own)) return;
        slot = std::move(vlans);
        order.push_back(bridge);
    };
    for (std::size_t i = 0; i < network.links.size(); ++i) {
        const auto& link = network.links[i];
        if (link.gone() || (!endpoint(link.a) && !endpoint(link.b))) continue;
        links_of[static_cast<std::size_t>(link.a)].push_back(static_cast<int>(i));
        links_of[static_cast<std::size_t>(link.b)].push_back(static_cast<int>(i));
        if (!endpoint(link.a)) take(link.b, link.b_ports.front(), reader.read(link.a_ports.front()));
        if (!endpoint(link.b)) take(link.a, link.a_ports.front(), reader.read(link.b_ports.front()));
    }
    for (std::size_t next = 0; next < order.size(); ++next) {
        const int bridge = order[next];
        for (const int i : links_of[static_cast<std::size_t>(bridge)]) {
            const auto& link = network.links[static_cast<std::size_t>(i)];
            const bool from_a = link.a == bridge;
            const auto own = from_a ? link.a_ports.front() : link.b_ports.front();
            const auto vlans = reader.says(own) ? reader.read(own) : *taken[static_cast<std::size_t>(bridge)];
            take(from_a ? link.b : link.a, from_a ? link.b_ports.front() : link.a_ports.front(), vlans);
        }
    }
    return taken;
}

std::vector<VlanIndex> carried(const PortVlans& a, const PortVlans& b) {
    std::vector<VlanIndex> both;
    std::set_intersection(a.tagged.begin(), a.tagged.end(), b.tagged.begin(), b.tagged.end(), std::back_inserter(both));
    if (a.untagged && a.untagged == b.untagged)
        both.insert(std::upper_bound(both.begin(), both.end(), *a.untagged), *a.untagged);
    return both;
}

}  // namespace vlan_detail

bool PortVlans::carries(VlanIndex vlan) const { return untagged == vlan || tags(vlan); }
bool PortVlans::tags(VlanIndex vlan) const { return vlan_detail::has(tagged, vlan); }

std::optional<VlanIndex> VlanPaths::index(std::optional<model::VlanId> vlan) const {
    const auto at = std::find(vlans.begin(), vlans.end(), vlan);
    return at == vlans.end() ? std::nullopt : std::optional(static_cast<VlanIndex>(at - vlans.begin()));
}

VlanPaths find_vlan_paths(const graph::Wiring& wiring, const graph::Runs&, const graph::NetworkGraph& network,
                          const LinkCapacity& capacity) {
    VlanPaths paths;
    const auto reader = vlan_detail::make_reader(wiring, paths);
    const auto taken = vlan_detail::adopted(network, reader);
    const auto read = [&](int bridge, graph::PortAt port) {
        const auto& adopted = taken[static_cast<std::size_t>(bridge)];
        return adopted && !reader.says(port) ? *adopted : reader.read(port);
    };
    paths.links.reserve(network.links.size());
    for (std::size_t i = 0; i < network.links.size(); ++i) {
        const auto& link = network.links[i];
        if (link.gone()) {
            paths.links.emplace_back();
            continue;
        }
        LinkVlans vlans{read(link.a, link.a_ports.front()), read(link.b, link.b_ports.front()), {}};
        if (capacity.arcs[2 * i]) vlans.carried = vlan_detail::carried(vlans.a, vlans.b);
        paths.links.push_back(std::move(vlans));
    }
    paths.leaves.reserve(network.leaves.size());
    for (std::size_t i = 0; i < network.leaves.size(); ++i) {
        const bool up = capacity.arcs[2 * (network.links.size() + i)].has_value();
        const auto& leaf = network.leaves[i];
        paths.leaves.push_back(up ? read(leaf.bridge, leaf.bridge_port) : PortVlans{});
    }
    return paths;
}

}  // namespace streamwright::analysis
