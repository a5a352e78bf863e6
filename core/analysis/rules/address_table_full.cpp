// More addresses than a switch can learn: in all, or behind a port that leads to endpoints only, such as a chain of
// them. Every network port of a device has one address in the VLAN it is untagged in, and a switch has one in each VLAN
// where it is given an IP address; what speaks beyond that is not in the drawing, so the count is the least there will
// be. The built-in switch of an endpoint is not judged in all: what it floods goes to one other port.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis::rules::address_table_full {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 sees %2 addresses at least, and its table holds %3."),
    STREAMWRIGHT_TEXT("Behind %1 stand %2 addresses at least, and its type learns %3 a port.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1Q", "clause 8.8 (filtering database, unknown addresses are flooded)", standards::Standing::memory}};

constexpr RuleWords words{.id = "address-table-full",
                          .theme = Theme::addresses,
                          .title = "More addresses than the switch can learn",
                          .meaning =
                              "What is sent to the addresses that find no place is flooded to every port, or the port "
                              "refuses them: control of single devices fails, always of others.",
                          .measured =
                              "Devices and switches of each VLAN are counted as far as the spanning tree lets them be "
                              "seen, for the switch and behind each port that leads to endpoints only, and held "
                              "against what its type states.",
                          .remedy = "Use a larger switch there, split the VLAN, or shorten the chain behind the port.",
                          .patterns = patterns,
                          .sources = sources};

/// What stands in a part of the network.
struct Heads {
    std::int64_t addresses = 0, switches = 0;
    Heads& operator+=(const Heads& more) {
        addresses += more.addresses;
        switches += more.switches;
        return *this;
    }
    friend Heads operator-(Heads a, const Heads& b) { return {a.addresses - b.addresses, a.switches - b.switches}; }
};

/// How many addresses of one VLAN a bridge sees, and how many beyond each link.
struct Census {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const Tree& tree;
    std::vector<Heads> itself, own;          // per bridge: its own address; with those of its leaves
    std::vector<std::vector<int>> links_of;  // per bridge: forwarding links
    std::vector<int> order, by;              // bridges from the top of each part down; the link upward, or -1
    std::vector<Heads> below, all;           // per bridge: its own and all further down; its whole part

    int far(int link, int bridge) const {
        return network.links[at(link)].a == bridge ? network.links[at(link)].b : network.links[at(link)].a;
    }

    /// An endpoint speaks in the VLAN it is in; a switch where it has an IP address.
    bool speaks(const graph::Bridge& bridge, std::optional<model::VlanId> vlan) const {
        const auto& addresses = wiring.devices[at(bridge.devices.front())].row->addresses;
        return bridge.endpoint || std::any_of(addresses.begin(), addresses.end(),
                                              [&](const auto& each) { return vlan && each.vlan == vlan; });
    }

    void list(const VlanPaths& paths) {
        const auto vlan = tree.vlan;
        links_of.resize(network.bridges.size());
        for (std::size_t b = 0; b < network.bridges.size(); ++b) {
            const auto& bridge = network.bridges[b];
            const bool here = tree.root_of[b] >= 0;
            itself.push_back({here && speaks(bridge, paths.vlans[at(vlan)]) ? 1 : 0, here && !bridge.endpoint ? 1 : 0});
        }
        own = itself;
        for (std::size_t i = 0; i < network.leaves.size(); ++i)
            if (paths.leaves[i].untagged == vlan) ++own[at(network.leaves[i].bridge)].addresses;
        for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
            if (!tree.forwards(i)) continue;
            links_of[at(network.links[at(i)].a)].push_back(i);
            links_of[at(network.links[at(i)].b)].push_back(i);
        }
    }

    void walk_down() {
        by.assign(own.size(), -1);
        std::vector<bool> seen(own.size(), false);
        for (int top = 0; top < static_cast<int>(own.size()); ++top) {
            if (seen[at(top)]) continue;
            seen[at(top)] = true;
            auto next = order.size();
            order.push_back(top);
            for (; next < order.size(); ++next)
                for (const int link : links_of[at(order[next])]) {
                    const int there = far(link, order[next]);
                    if (seen[at(there)]) continue;
                    seen[at(there)] = true;
                    by[at(there)] = link;
                    order.push_back(there);
                }
        }
    }

    void add_up() {
        below = own;
        for (auto bridge = order.rbegin(); bridge != order.rend(); ++bridge)
            if (by[at(*bridge)] >= 0) below[at(far(by[at(*bridge)], *bridge))] += below[at(*bridge)];
        all = below;
        for (const int bridge : order)
            if (by[at(bridge)] >= 0) all[at(bridge)] = all[at(far(by[at(bridge)], bridge))];
    }

    /// Beyond the link, seen from the bridge; nothing for one that closes a loop.
    Heads beyond(int link, int bridge) const {
        if (by[at(bridge)] == link) return all[at(bridge)] - below[at(bridge)];
        const int there = far(link, bridge);
        return by[at(there)] == link ? below[at(there)] : Heads{};
    }
};

const catalogue::SwitchFacts& facts_of(const graph::Wiring& wiring, const graph::Bridge& bridge) {
    return *wiring.devices[at(bridge.devices.front())].type->bridging;
}

Finding too_many(const Subject& subject, std::int64_t have, int limit, int variant) {
    auto finding = found(words.id, Severity::error, {subject}, {named(subject), have, std::int64_t{limit}}, variant);
    finding.measured = have;
    finding.limit = std::int64_t{limit};
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 addresses > %2"), {have, std::int64_t{limit}}));
    return finding;
}

/// Whether some switch or endpoint states less than all there is.
bool worth_counting(const graph::Wiring& wiring, const graph::NetworkGraph& network, std::size_t vlans) {
    const auto all = static_cast<std::int64_t>((network.bridges.size() + network.leaves.size()) * vlans);
    return std::any_of(network.bridges.begin(), network.bridges.end(), [&](const auto& bridge) {
        const auto& facts = facts_of(wiring, bridge);
        return (facts.address_table_size && *facts.address_table_size < all) ||
               (facts.addresses_per_port && *facts.addresses_per_port < all);
    });
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
           const SpanningTrees& trees, Findings& out) {
    if (!worth_counting(wiring, network, paths.vlans.size())) return;
    std::vector<std::int64_t> seen(network.bridges.size(), 0);
    std::map<graph::PortAt, std::pair<int, Heads>> behind;  // the bridge that counts, and what it counts
    for (const auto& tree : trees.trees) {
        Census census{wiring, network, tree, {}, {}, {}, {}, {}, {}, {}};
        census.list(paths);
        census.walk_down();
        census.add_up();
        for (int b = 0; b < static_cast<int>(seen.size()); ++b) {
            if (tree.root_of[at(b)] < 0) continue;
            seen[at(b)] += (census.all[at(b)] - census.itself[at(b)]).addresses;
            for (const int link : census.links_of[at(b)]) {
                const auto& row = network.links[at(link)];
                auto& [bridge, heads] = behind[(row.a == b ? row.a_ports : row.b_ports).front()];
                bridge = b;
                heads += census.beyond(link, b);
            }
        }
    }
    for (std::size_t b = 0; b < seen.size(); ++b)
        if (const auto limit = facts_of(wiring, network.bridges[b]).address_table_size;
            limit && !network.bridges[b].endpoint && seen[b] > *limit)
            out.push_back(too_many(device_id(wiring, network.bridges[b].devices.front()), seen[b], *limit, 0));
    for (const auto& [port, held] : behind)
        if (const auto limit = facts_of(wiring, network.bridges[at(held.first)]).addresses_per_port;
            limit && held.second.switches == 0 && held.second.addresses > *limit)
            out.push_back(too_many(port_subject(wiring, port), held.second.addresses, *limit, 1));
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::address_table_full
