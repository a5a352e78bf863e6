// Reads switches and VLANs for the network drawing; links are read in network_links.cpp.
#include "core/deliver/documents/network_words.h"

#include "core/analysis/rule_help.h"
#include "core/deliver/documents/network_links.h"
#include "core/deliver/documents/words.h"
#include "core/standards/spanning_tree_costs.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::deliver {

namespace network_words_detail {

using analysis::VlanIndex;
using graph::NetworkGraph;
using graph::Wiring;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// Bridges as the drawing takes them: which are switches of their own, and which are endpoints at a switch's port
/// although they have a built-in switch.
struct Folding {
    explicit Folding(const NetworkGraph& graph) : network(graph), links_of(graph.bridges.size()) {
        for (std::size_t i = 0; i < network.links.size(); ++i) {
            const auto& link = network.links[i];
            if (link.a == link.b) continue;
            links_of[at(link.a)].push_back(static_cast<int>(i));
            links_of[at(link.b)].push_back(static_cast<int>(i));
        }
    }
    int neighbour(int bridge) const {
        const auto& link = network.links[at(links_of[at(bridge)].front())];
        return link.a == bridge ? link.b : link.a;
    }
    /// An endpoint at the end of a chain; two that are joined to each other alone are drawn.
    bool is_folded(int bridge) const {
        if (!network.bridges[at(bridge)].endpoint || links_of[at(bridge)].size() != 1) return false;
        const int next = neighbour(bridge);
        return !network.bridges[at(next)].endpoint || links_of[at(next)].size() > 1;
    }
    /// An endpoint joined to no other bridge is no network.
    bool is_drawn(int bridge) const {
        const bool alone = network.bridges[at(bridge)].endpoint && links_of[at(bridge)].empty();
        return !alone && !is_folded(bridge);
    }

    const NetworkGraph& network;
    std::vector<std::vector<int>> links_of;  // per bridge, loops left out
};

struct Behind {
    std::set<int> devices;
    std::vector<int> arcs;
};

void add_leaves(Behind& behind, const NetworkGraph& network, int bridge) {
    for (std::size_t i = 0; i < network.leaves.size(); ++i) {
        if (network.leaves[i].bridge != bridge) continue;
        behind.devices.insert(network.leaves[i].device_port.device);
        for (const bool to_bridge : {true, false})
            behind.arcs.push_back(network.leaf_arc(static_cast<int>(i), to_bridge));
    }
}

/// What stands behind the access ports of a bridge, folded endpoints and what hangs on them included.
Behind behind(const Folding& folding, int bridge) {
    Behind found;
    add_leaves(found, folding.network, bridge);
    for (const int link : folding.links_of[at(bridge)]) {
        const auto& row = folding.network.links[at(link)];
        const int other = row.a == bridge ? row.b : row.a;
        if (!folding.is_folded(other)) continue;
        found.devices.insert(folding.network.bridges[at(other)].devices.front());
        add_leaves(found, folding.network, other);
        for (const bool a_to_b : {true, false}) found.arcs.push_back(folding.network.link_arc(link, a_to_b));
    }
    return found;
}

std::string counted(int count, const std::string& one, const std::string& many) {
    return std::to_string(count) + " " + (count == 1 ? one : many);
}

void count_endpoints(NetworkSwitch& words, const analysis::Facts& facts, const base::NumberStyle& numbers,
                     const Behind& behind) {
    const auto& wiring = facts.get<Wiring>();
    int encoders = 0, decoders = 0, both = 0, others = 0;
    for (const int device : behind.devices) {
        const bool sends = analysis::encodes(wiring, device), shows = analysis::decodes(wiring, device);
        ++(sends && shows ? both : sends ? encoders : shows ? decoders : others);
    }
    std::vector<std::string> endpoints, rest;
    if (encoders > 0) endpoints.push_back(counted(encoders, "encoder", "encoders"));
    if (decoders > 0) endpoints.push_back(counted(decoders, "decoder", "decoders"));
    if (both > 0) endpoints.push_back(std::to_string(both) + " both");
    if (others > 0) rest.push_back(counted(others, "other", "others"));
    auto fullest = fullest_port(facts, numbers, behind.arcs);
    words.port_overfull = fullest.overfull;
    if (!fullest.words.empty()) rest.push_back(std::move(fullest.words));
    words.endpoints = endpoints.empty() ? "no encoder, no decoder" : joined(endpoints, ", ");
    words.others = joined(rest, ", ");
}

/// "Root" where it is so in every VLAN of the bridge, else with the numbers of those in which it is.
void add_mark(NetworkSwitch& words, const analysis::Facts& facts, const std::string& mark,
              const std::vector<VlanIndex>& here, std::size_t of) {
    if (here.empty()) return;
    const auto numbers = here.size() < of ? vlan_numbers(facts, here) : std::string();
    words.marks.push_back(numbers.empty() ? mark : mark + " " + numbers);
}

std::vector<VlanIndex> vlans_of(const analysis::Facts& facts, int bridge) {
    std::vector<VlanIndex> vlans;
    for (const auto& tree : facts.get<analysis::SpanningTrees>().trees)
        if (tree.root_of[at(bridge)] >= 0) vlans.push_back(tree.vlan);
    return vlans;
}

void add_marks(NetworkSwitch& words, const analysis::Facts& facts, int bridge, std::size_t of, bool in_tree) {
    std::vector<VlanIndex> root, asks;
    for (const auto& tree : facts.get<analysis::SpanningTrees>().trees)
        if (tree.root_of[at(bridge)] == bridge && in_tree) root.push_back(tree.vlan);
    const auto& snooping = facts.get<analysis::Forwarding>().vlans;
    for (std::size_t vlan = 0; vlan < snooping.size(); ++vlan)
        if (std::ranges::find(snooping[vlan].queriers, bridge) != snooping[vlan].queriers.end())
            asks.push_back(static_cast<VlanIndex>(vlan));
    add_mark(words, facts, "Root", root, of);
    add_mark(words, facts, "Querier", asks, of);
}

int priority_of(const Wiring& wiring, const graph::Bridge& bridge) {
    int best = 1 << 16;
    for (const int device : bridge.devices)
        best = std::min(best,
                        wiring.devices[at(device)].row->bridging.priority.value_or(standards::usual_bridge_priority));
    return best;
}

/// As the spanning tree takes it: a switch of which nothing is stated runs one, a built-in switch does not.
bool runs_tree(const graph::WiredDevice& device, bool endpoint) {
    using catalogue::Bpdus;
    if (!device.type || !device.type->bridging || device.row->bridging.tree_off) return false;
    return device.type->bridging->bpdus.value_or(endpoint ? Bpdus::passed : Bpdus::run) == Bpdus::run;
}

NetworkSwitch switch_words(const analysis::Facts& facts, const base::NumberStyle& numbers, const Folding& folding,
                           int index) {
    const auto& wiring = facts.get<Wiring>();
    const auto& bridge = folding.network.bridges[at(index)];
    const auto& first = wiring.devices[at(bridge.devices.front())];
    NetworkSwitch words;
    words.subject = "device:" + first.row->id.text();
    words.tag = bridge_tag(wiring, bridge);
    words.mark = first.type;
    words.type = first.type ? first.type->name : std::string();
    if (bridge.devices.size() > 1) words.type = "stack of " + std::to_string(bridge.devices.size()) + ", " + words.type;
    const auto vlans = vlans_of(facts, index);
    const auto vlan_list = vlan_numbers(facts, vlans);
    words.setting = runs_tree(first, bridge.endpoint) ? "priority " + std::to_string(priority_of(wiring, bridge))
                                                      : "no spanning tree";
    if (!vlan_list.empty()) words.setting += (vlans.size() == 1 ? ", VLAN " : ", VLANs ") + vlan_list;
    add_marks(words, facts, index, vlans.size(), runs_tree(first, bridge.endpoint));
    count_endpoints(words, facts, numbers, behind(folding, index));
    return words;
}

/// Bridges that are drawn, by tag.
std::vector<int> drawn_bridges(const Wiring& wiring, const Folding& folding) {
    std::vector<int> drawn;
    for (int i = 0; i < static_cast<int>(folding.network.bridges.size()); ++i)
        if (folding.is_drawn(i)) drawn.push_back(i);
    const auto tag = [&](int bridge) { return bridge_tag(wiring, folding.network.bridges[at(bridge)]); };
    std::ranges::stable_sort(drawn, [&](int x, int y) { return counts_before(tag(x), tag(y)); });
    return drawn;
}

/// The first of the bridges by tag, and how many there are beside it.
std::string tags_of(const analysis::Facts& facts, const std::set<int>& bridges) {
    if (bridges.empty()) return "none";
    std::vector<std::string> tags;
    for (const int bridge : bridges)
        tags.push_back(bridge_tag(facts.get<Wiring>(), facts.get<NetworkGraph>().bridges[at(bridge)]));
    std::ranges::sort(tags, counts_before);
    return tags.size() == 1 ? tags.front() : tags.front() + ", " + std::to_string(tags.size() - 1) + " more";
}

std::string blocked_words(const analysis::Facts& facts, const analysis::Tree& tree) {
    std::vector<std::string> cables;
    const auto& network = facts.get<NetworkGraph>();
    for (const auto& end : tree.blocked()) {
        const auto ends = graph::arc_ends(facts.get<Wiring>(), facts.get<graph::Runs>(), network,
                                          network.link_arc(end.link, end.at_a));
        cables.push_back(facts.get<Wiring>().design.cables.find(ends.link)->tag);
    }
    std::ranges::sort(cables, counts_before);
    return cables.empty() ? "none" : joined(cables, ", ");
}

std::vector<VlanWords> vlan_rows(const analysis::Facts& facts) {
    std::vector<VlanWords> rows;
    const auto& vlans = facts.get<analysis::VlanPaths>().vlans;
    const auto& trees = facts.get<analysis::SpanningTrees>().trees;
    const auto& snooping = facts.get<analysis::Forwarding>().vlans;
    for (std::size_t i = 0; i < vlans.size() && i < trees.size() && i < snooping.size(); ++i) {
        const auto* row = vlans[i] ? facts.get<Wiring>().design.vlans.find(*vlans[i]) : nullptr;
        std::set<int> roots;
        for (const int root : trees[i].root_of)
            if (root >= 0) roots.insert(root);
        rows.push_back({row ? std::to_string(row->vid) : "none", row ? row->name : "untagged", tags_of(facts, roots),
                        tags_of(facts, {snooping[i].queriers.begin(), snooping[i].queriers.end()}),
                        blocked_words(facts, trees[i])});
    }
    return rows;
}

std::vector<std::string> notes_of(const analysis::Facts& facts) {
    std::vector<std::string> notes;
    const auto& network = facts.get<NetworkGraph>();
    for (std::size_t i = 0; i < network.links.size(); ++i) {
        const auto& link = network.links[i];
        if (link.a != link.b) continue;
        const auto ends = graph::arc_ends(facts.get<Wiring>(), facts.get<graph::Runs>(), network,
                                          network.link_arc(static_cast<int>(i), true));
        notes.push_back(facts.get<Wiring>().design.cables.find(ends.link)->tag + " joins " +
                        bridge_tag(facts.get<Wiring>(), network.bridges[at(link.a)]) + " to itself.");
    }
    if (!network.directs.empty())
        notes.push_back(
            counted(static_cast<int>(network.directs.size()), "network cable joins", "network cables join") +
            " two devices without a switch.");
    return notes;
}

/// Roots of trees, those of the most bridges first.
std::vector<int> roots_of(const analysis::Facts& facts, const std::vector<int>& switch_of_bridge) {
    std::map<int, int> followers;  // per switch
    for (const auto& tree : facts.get<analysis::SpanningTrees>().trees)
        for (const int root : tree.root_of)
            if (root >= 0 && switch_of_bridge[at(root)] >= 0) ++followers[switch_of_bridge[at(root)]];
    std::vector<int> roots;
    for (const auto& [root, count] : followers) roots.push_back(root);
    std::ranges::stable_sort(roots, [&](int x, int y) { return followers[x] > followers[y]; });
    return roots;
}

void name_preset(NetworkView& view, const analysis::Facts& facts) {
    const auto& presets = facts.get<analysis::LinkLoads>().presets;
    const auto* row = presets.empty() ? nullptr : facts.get<Wiring>().design.presets.find(presets.front().preset);
    view.load_word = presets.empty() ? "idle" : "preset";
    view.load_title = presets.empty() ? "nothing routed" : "preset " + (row ? row->name : std::string());
}

}  // namespace network_words_detail

NetworkView network_view(const analysis::Facts& facts, const base::NumberStyle& numbers) {
    using namespace network_words_detail;
    const auto& network = facts.get<NetworkGraph>();
    const Folding folding(network);
    const auto drawn = drawn_bridges(facts.get<Wiring>(), folding);
    std::vector<int> switch_of_bridge(network.bridges.size(), -1);
    NetworkView view;
    for (const int bridge : drawn) {
        switch_of_bridge[at(bridge)] = static_cast<int>(view.switches.size());
        view.switches.push_back(switch_words(facts, numbers, folding, bridge));
    }
    view.links = network_links(facts, numbers, switch_of_bridge);
    view.roots = roots_of(facts, switch_of_bridge);
    view.vlans = vlan_rows(facts);
    view.notes = notes_of(facts);
    for (const auto& link : view.links)
        if (!link.agreement.empty()) view.notes.push_back("Agreed for " + link.tag + ": " + link.agreement + ".");
    view.headroom_percent = facts.get<Wiring>().design.settings().headroom_percent;
    name_preset(view, facts);
    return view;
}

}  // namespace streamwright::deliver
