// A subscription's stream and decoder are in one VLAN, and some link between their switches does not carry it.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <deque>
#include <limits>
#include <map>
#include <set>

namespace streamwright::analysis::rules::vlan_missing_on_trunk {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%2 needs to cross %1, but is missing at %3. Streams that stop there: %4."),
    STREAMWRIGHT_TEXT("%2 needs to cross %1, but is missing at both ends. Streams that stop there: %4.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1Q", "clause 8.8 (egress by VLAN membership)", standards::Standing::memory}};

constexpr RuleWords words{.id = "vlan-missing-on-trunk",
                          .theme = Theme::multicast,
                          .title = "VLAN missing on a trunk of the path",
                          .meaning =
                              "Each switch port passes only the VLANs it is told to. One forgotten trunk port and "
                              "everything behind it stays black.",
                          .measured =
                              "For each stream that does not arrive the way between the switches is followed, and "
                              "the ports on it that do not carry its VLAN are named.",
                          .remedy = "Tag the VLAN at both ports of the link.",
                          .offers = "Tag the VLAN at the port where it is missing.",
                          .patterns = patterns,
                          .sources = sources};

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const VlanPaths& paths;
    std::vector<std::vector<int>> links_of;  // per bridge
};

bool carries(const Reader& r, int link, VlanIndex vlan) {
    const auto& carried = r.paths.links[at(link)].carried;
    return std::binary_search(carried.begin(), carried.end(), vlan);
}

/// Links of the way from one bridge to another that do not carry the VLAN; the way that misses it least. Links that do
/// not come up lead nowhere. Empty: none missing, or no way.
std::vector<int> missing_between(const Reader& r, int from, int to, VlanIndex vlan) {
    constexpr int far = std::numeric_limits<int>::max();
    std::vector<int> cost(r.network.bridges.size(), far), by(r.network.bridges.size(), -1);
    std::deque<int> open{from};
    cost[at(from)] = 0;
    while (!open.empty()) {
        const int here = open.front();
        open.pop_front();
        for (const int link : r.links_of[at(here)]) {
            if (!r.capacity.arcs[at(r.network.link_arc(link, true))]) continue;
            const auto& row = r.network.links[at(link)];
            const int there = row.a == here ? row.b : row.a;
            const int step = carries(r, link, vlan) ? 0 : 1;
            if (cost[at(here)] + step >= cost[at(there)]) continue;
            cost[at(there)] = cost[at(here)] + step;
            by[at(there)] = link;
            step == 0 ? open.push_front(there) : open.push_back(there);
        }
    }
    std::vector<int> missing;
    for (int here = to; here != from && by[at(here)] >= 0;) {
        const auto& row = r.network.links[at(by[at(here)])];
        if (!carries(r, by[at(here)], vlan)) missing.push_back(by[at(here)]);
        here = row.a == here ? row.b : row.a;
    }
    return missing;
}

std::optional<int> bridge_in(const Reader& r, int device, VlanIndex vlan) {
    if (const int own = r.network.bridge_of_device[at(device)]; own >= 0) return own;
    for (const int leaf : r.network.leaves_of_device[at(device)])
        if (r.paths.leaves[at(leaf)].carries(vlan)) return r.network.leaves[at(leaf)].bridge;
    return std::nullopt;
}

using Missing = std::map<std::pair<int, VlanIndex>, std::set<model::StreamId>>;

void collect(const Reader& r, const model::Subscription& row, const model::Stream& stream, VlanIndex vlan,
             Missing& missing) {
    const auto encoder = r.wiring.device_index(stream.encoder), decoder = r.wiring.device_index(row.decoder);
    if (!encoder || !decoder) return;
    const auto from = bridge_in(r, *encoder, vlan), to = bridge_in(r, *decoder, vlan);
    if (!from || !to) return;
    for (const int link : missing_between(r, *from, *to, vlan)) missing[{link, vlan}].insert(stream.id);
}

std::optional<Remedy> tag_at(const graph::Wiring& wiring, graph::PortAt port, model::VlanId vlan) {
    auto row = port_settings(wiring, port);
    row.tagged.push_back(vlan);
    return Remedy{line(STREAMWRIGHT_TEXT("Tag %1 at %2"), {named(vlan), port_ref(wiring, port)}),
                  model::ConfigurePort{std::move(row), nullptr}};
}

void add_finding(const Reader& r, const graph::Runs& runs, int index, VlanIndex vlan,
                 const std::set<model::StreamId>& streams, Findings& out) {
    const auto& link = r.network.links[at(index)];
    const auto& vlans = r.paths.links[at(index)];
    const auto id = r.paths.vlans[at(vlan)];
    // An end that takes the VLAN untagged where the other does not is the mismatch rule's.
    if (!id || ((vlans.a.untagged == vlan) != (vlans.b.untagged == vlan))) return;
    const bool at_a = !vlans.a.carries(vlan), at_b = !vlans.b.carries(vlan);
    const auto port = (at_a ? link.a_ports : link.b_ports).front();
    const auto cable = cable_id(r.wiring, runs.list[at(link.runs.front())].cables.front());
    std::vector<base::Ref> names;
    for (const auto stream : streams) names.push_back(named(stream));
    auto finding = found(words.id, Severity::error, {cable, *id},
                         {named(cable), named(*id), port_ref(r.wiring, port), std::move(names)}, at_a && at_b ? 1 : 0);
    if (at_a != at_b && link.runs.size() == 1)
        if (auto remedy = tag_at(r.wiring, port, *id)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           Findings& out) {
    Reader reader{wiring, network, capacity, paths, {}};
    reader.links_of.resize(network.bridges.size());
    for (int link = 0; link < static_cast<int>(network.links.size()); ++link)
        for (const int bridge : {network.links[at(link)].a, network.links[at(link)].b})
            reader.links_of[at(bridge)].push_back(link);
    const auto streams = streams_by_index(wiring);
    std::vector<const model::Subscription*> rows;
    for (const auto& row : wiring.design.subscriptions) rows.push_back(&row);
    Missing missing;
    for (const auto& preset : loads.presets)
        for (std::size_t s = 0; s < preset.unserved.size(); ++s)
            for (const int index : preset.unserved[s])
                collect(reader, *rows[at(index)], *streams[s], forwarding.streams[s].vlan, missing);
    for (const auto& [where, stopped] : missing) add_finding(reader, runs, where.first, where.second, stopped, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::vlan_missing_on_trunk
