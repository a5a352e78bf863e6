#include "core/analysis/facts/forwarding.h"

#include "core/graph/islands.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis {

namespace forwarding_detail {

using catalogue::UnknownGroups;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Someone who asks or routes in a VLAN: at a bridge, or behind one of its leaves.
struct Speaker {
    int bridge = 0;
    int leaf_arc = -1;  // -1: the bridge itself
    std::uint32_t address = 0;
    bool querier = false;
};

/// All that one VLAN's snooping is worked out from.
struct VlanRun {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const Tree& tree;
    VlanIndex vlan;
    VlanSnooping result;
    std::vector<int> part_of;  // per bridge
    int part_count = 0;
    std::vector<Speaker> speakers;  // queriers that would ask, and routers

    const model::Device& first_row(int bridge) const {
        return *wiring.devices[at(network.bridges[at(bridge)].devices.front())].row;
    }
    const catalogue::SwitchFacts& facts(int bridge) const {
        return *wiring.devices[at(network.bridges[at(bridge)].devices.front())].type->bridging;
    }
    bool means_this(model::VlanId id) const { return paths.vlans[at(vlan)] == id; }
    bool among(const std::vector<model::VlanId>& ids) const {
        return std::any_of(ids.begin(), ids.end(), [&](auto id) { return means_this(id); });
    }

    void list_out_arcs() {
        std::vector<std::vector<int>> out(network.bridges.size());
        const auto open = [](TreeRole role) { return role == TreeRole::root || role == TreeRole::designated; };
        std::vector<bool> active(network.links.size(), false);
        for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
            active[at(i)] = tree.forwards(i);
            if (open(tree.a_role[at(i)])) out[at(network.links[at(i)].a)].push_back(network.link_arc(i, true));
            if (open(tree.b_role[at(i)])) out[at(network.links[at(i)].b)].push_back(network.link_arc(i, false));
        }
        for (int i = 0; i < static_cast<int>(network.leaves.size()); ++i)
            if (paths.leaves[at(i)].carries(vlan))
                out[at(network.leaves[at(i)].bridge)].push_back(network.leaf_arc(i, false));
        result.out_starts.push_back(0);
        for (const auto& arcs : out) {
            result.out_arcs.insert(result.out_arcs.end(), arcs.begin(), arcs.end());
            result.out_starts.push_back(static_cast<int>(result.out_arcs.size()));
        }
        auto parts = graph::find_islands(network, active);
        part_of = std::move(parts.of_bridge);
        part_count = parts.count;
    }

    void read_bridges() {
        for (int b = 0; b < static_cast<int>(network.bridges.size()); ++b) {
            const auto& stated = facts(b);
            const auto& set = first_row(b).bridging;
            BridgeSnooping bridge;
            bridge.in_vlan = tree.root_of[at(b)] >= 0;
            const bool off = set.snooping_off || among(set.snooping_off_vlans);
            bridge.snoops = !off && stated.snooping.value_or(false);
            bridge.unstated = !off && (!stated.snooping || (*stated.snooping && !stated.unknown_groups));
            bridge.unknown = stated.unknown_groups.value_or(UnknownGroups::router_ports);
            bridge.lookup = stated.lookup.value_or(catalogue::GroupLookup::ip);
            result.bridges.push_back(std::move(bridge));
        }
    }

    /// Where a device that is no bridge meets the VLAN: its first leaf that carries it.
    std::optional<int> leaf_of(int device) const {
        for (const int leaf : network.leaves_of_device[at(device)])
            if (paths.leaves[at(leaf)].carries(vlan)) return leaf;
        return {};
    }

    void add_speaker(int device, bool querier, std::uint32_t address) {
        const int bridge = network.bridge_of_device[at(device)];
        if (bridge < 0) {
            if (const auto leaf = leaf_of(device))
                speakers.push_back(
                    {network.leaves[at(*leaf)].bridge, network.leaf_arc(*leaf, false), address, querier});
            return;
        }
        auto& snooping = result.bridges[at(bridge)];
        if (!snooping.in_vlan) return;
        if (querier && !snooping.snoops) {
            const auto asks = facts(bridge).queries_without_snooping;
            if (!asks) snooping.unstated = true;
            if (!asks.value_or(false)) return;
        }
        speakers.push_back({bridge, -1, address, querier});
    }

    void find_speakers() {
        for (std::size_t i = 0; i < wiring.devices.size(); ++i) {
            const auto& set = wiring.devices[i].row->bridging;
            for (const auto& querier : set.queriers)
                if (means_this(querier.vlan))
                    add_speaker(static_cast<int>(i), true, querier.address ? querier.address->bits : 0);
            if (among(set.multicast_router_vlans)) add_speaker(static_cast<int>(i), false, 1);
        }
        for (int i = 0; i < static_cast<int>(network.leaves.size()); ++i) {
            const auto& leaf = network.leaves[at(i)];
            const auto* set = wiring.port_override(leaf.bridge_port);
            if (set && set->router_port && paths.leaves[at(i)].carries(vlan))
                speakers.push_back({leaf.bridge, network.leaf_arc(i, false), 1, false});
        }
    }

    /// Lowest address wins; 0.0.0.0 never wins against an address, and those without one do not yield to each other
    /// (RFC 4541 2.1.1). Losers ask no more.
    void elect() {
        std::vector<std::optional<std::size_t>> winner(at(part_count));
        for (std::size_t i = 0; i < speakers.size(); ++i) {
            if (!speakers[i].querier || speakers[i].address == 0) continue;
            auto& best = winner[at(part_of[at(speakers[i].bridge)])];
            if (!best || speakers[i].address < speakers[*best].address) best = i;
        }
        std::vector<Speaker> kept;
        std::vector<int> heard(at(part_count), -1);
        for (std::size_t i = 0; i < speakers.size(); ++i) {
            const auto& speaker = speakers[i];
            const auto part = at(part_of[at(speaker.bridge)]);
            if (speaker.querier && winner[part] && *winner[part] != i) continue;
            kept.push_back(speaker);
            if (!speaker.querier) continue;
            result.queriers.push_back(speaker.bridge);
            if (heard[part] < 0) heard[part] = speaker.bridge;
        }
        speakers = std::move(kept);
        for (std::size_t b = 0; b < result.bridges.size(); ++b) {
            auto& bridge = result.bridges[b];
            result.querier_of.push_back(bridge.in_vlan ? heard[at(part_of[b])] : -1);
            bridge.keeps_members = bridge.snoops && result.querier_of[b] >= 0;
            bridge.floods_all = !bridge.snoops;
            if (!bridge.snoops || result.querier_of[b] >= 0) continue;
            const auto floods = facts(static_cast<int>(b)).floods_without_querier;
            if (!floods && bridge.in_vlan) bridge.unstated = true;
            bridge.floods_all = floods.value_or(false);
        }
    }

    /// Marks the arc toward the speaker on each bridge of its part, outward from the speaker.
    void mark_toward(int speaker_bridge, bool real, bool zero) {
        std::vector<bool> seen(network.bridges.size(), false);
        std::vector<int> open{speaker_bridge};
        seen[at(speaker_bridge)] = true;
        while (!open.empty()) {
            const int bridge = open.back();
            open.pop_back();
            for (const int arc : result.out(bridge)) {
                if (!network.is_link_arc(arc) || !tree.forwards(arc / 2)) continue;
                const int next = network.bridge_after(arc);
                if (seen[at(next)]) continue;
                seen[at(next)] = true;
                open.push_back(next);
                const auto zero_counts = facts(next).zero_query_makes_router_port;
                if (!real && zero && !zero_counts) result.bridges[at(next)].unstated = true;
                if (real || (zero && zero_counts.value_or(false)))
                    result.bridges[at(next)].router_arcs.push_back(arc ^ 1);
            }
        }
    }

    void mark_router_ports() {
        std::map<int, std::pair<bool, bool>> sites;  // per bridge: a speaker with an address, one without
        for (const auto& speaker : speakers) {
            auto& [real, zero] = sites[speaker.bridge];
            (speaker.address != 0 ? real : zero) = true;
            const bool counts =
                speaker.address != 0 || facts(speaker.bridge).zero_query_makes_router_port.value_or(false);
            if (speaker.leaf_arc >= 0 && counts)
                result.bridges[at(speaker.bridge)].router_arcs.push_back(speaker.leaf_arc);
        }
        for (const auto& [bridge, kinds] : sites) mark_toward(bridge, kinds.first, kinds.second);
        for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
            if (!tree.forwards(i)) continue;
            const auto& link = network.links[at(i)];
            for (const bool at_a : {true, false}) {
                const auto* set = wiring.port_override(at_a ? link.a_ports.front() : link.b_ports.front());
                if (set && set->router_port)
                    result.bridges[at(at_a ? link.a : link.b)].router_arcs.push_back(network.link_arc(i, at_a));
            }
        }
        for (auto& bridge : result.bridges) {
            auto& arcs = bridge.router_arcs;
            std::sort(arcs.begin(), arcs.end());
            arcs.erase(std::unique(arcs.begin(), arcs.end()), arcs.end());
        }
    }
};

VlanRun start(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths, const Tree& tree,
              VlanIndex vlan) {
    VlanRun run{wiring, network, paths, tree, vlan, {}, {}, 0, {}};
    run.list_out_arcs();
    run.read_bridges();
    run.find_speakers();
    return run;
}

VlanSnooping finish(VlanRun& run) {
    run.elect();
    run.mark_router_ports();
    return std::move(run.result);
}

/// Finds where each stream enters the network.
struct SourceFinder {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    std::vector<std::optional<VlanIndex>> untagged_of;  // per bridge: of its first link; wanted for endpoints

    void prepare() {
        untagged_of.resize(network.bridges.size());
        for (std::size_t i = 0; i < network.links.size(); ++i)
            for (const bool at_a : {true, false}) {
                if (network.links[i].gone()) continue;
                auto& slot = untagged_of[at(at_a ? network.links[i].a : network.links[i].b)];
                if (!slot) slot = (at_a ? paths.links[i].a : paths.links[i].b).untagged;
            }
    }

    std::optional<int> leaf_for(const model::Stream& stream, int device) const {
        const auto& leaves = network.leaves_of_device[at(device)];
        if (leaves.empty()) return {};
        if (!stream.network_port) return leaves.front();
        for (const int leaf : leaves)
            if (wiring.port_type(network.leaves[at(leaf)].device_port).key == *stream.network_port) return leaf;
        return {};
    }

    StreamWay find(int index) const {
        const auto& stream = *wiring.streams[at(index)].row;
        const int device = wiring.streams[at(index)].encoder;
        StreamWay way;
        way.group.name =
            stream.group ? stream.group->bits : (std::uint64_t{1} << 32) + static_cast<std::uint64_t>(index);
        if (device < 0) return way;
        std::optional<VlanIndex> vlan;
        if (stream.vlan) vlan = paths.index(stream.vlan);
        if (stream.vlan && !vlan) return way;
        if (const int bridge = network.bridge_of_device[at(device)]; bridge >= 0) {
            if (!vlan) vlan = untagged_of[at(bridge)];
            if (vlan) way.source_bridge = bridge;
        } else if (const auto leaf = leaf_for(stream, device)) {
            const auto& port = paths.leaves[at(*leaf)];
            if (!vlan) vlan = port.untagged;
            if (vlan && port.carries(*vlan)) way.source_leaf = *leaf;
        }
        way.vlan = vlan.value_or(0);
        return way;
    }
};

}  // namespace forwarding_detail

std::vector<Asker> would_ask(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                             const Tree& tree, VlanIndex vlan) {
    std::vector<Asker> askers;
    for (const auto& speaker : forwarding_detail::start(wiring, network, paths, tree, vlan).speakers)
        if (speaker.querier) askers.push_back({speaker.bridge, speaker.leaf_arc < 0, speaker.address != 0});
    return askers;
}

std::optional<VlanSnooping> snooping_asked_from(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                                const VlanPaths& paths, const Tree& tree, VlanIndex vlan, int bridge) {
    using forwarding_detail::at;
    auto run = forwarding_detail::start(wiring, network, paths, tree, vlan);
    const auto& snooping = run.result.bridges[at(bridge)];
    if (!snooping.in_vlan) return std::nullopt;
    if (!snooping.snoops && !run.facts(bridge).queries_without_snooping.value_or(false)) return std::nullopt;
    std::erase_if(run.speakers, [&](const auto& each) {
        return each.querier && run.part_of[at(each.bridge)] == run.part_of[at(bridge)];
    });
    run.speakers.push_back({bridge, -1, 1, true});
    return forwarding_detail::finish(run);
}

void find_ways_again(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                     std::span<const int> streams, std::vector<StreamWay>& ways) {
    using forwarding_detail::at;
    if (streams.empty()) return;
    forwarding_detail::SourceFinder sources{wiring, network, paths, {}};
    sources.prepare();
    for (const int stream : streams) ways[at(stream)] = sources.find(stream);
}

Forwarding find_forwarding(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                           const SpanningTrees& trees) {
    Forwarding forwarding;
    for (std::size_t v = 0; v < paths.vlans.size(); ++v) {
        auto run = forwarding_detail::start(wiring, network, paths, trees.trees[v], static_cast<VlanIndex>(v));
        forwarding.vlans.push_back(forwarding_detail::finish(run));
    }
    forwarding_detail::SourceFinder sources{wiring, network, paths, {}};
    sources.prepare();
    forwarding.streams.reserve(wiring.design.streams.size());
    for (int stream = 0; stream < static_cast<int>(wiring.streams.size()); ++stream)
        forwarding.streams.push_back(sources.find(stream));
    return forwarding;
}

}  // namespace streamwright::analysis
