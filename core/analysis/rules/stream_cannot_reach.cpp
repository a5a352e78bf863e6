// A subscription whose stream has no way to the decoder: not cabled, not joined, or not in the VLAN.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/graph/islands.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::stream_cannot_reach {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 cannot show %2: %3 is not cabled to a switch."),
    STREAMWRIGHT_TEXT("%1 cannot show %2: no cables join the switches of %3 and %4."),
    STREAMWRIGHT_TEXT("%1 cannot show %2: the switch port of %3 is not in %4."),
    STREAMWRIGHT_TEXT("%1 cannot show %2: a port on the cable of %3 is switched off.")};

constexpr RuleWords words{.id = "stream-cannot-reach",
                          .theme = Theme::multicast,
                          .title = "Stream that cannot reach its decoder",
                          .meaning =
                              "The display stays black in that preset. Streams stay inside their VLAN unless something "
                              "routes them.",
                          .measured =
                              "For each subscription of each preset a way is looked for from the encoder over "
                              "cables, switches and VLANs to the decoder.",
                          .remedy =
                              "Cable the endpoint to a switch, join the switches, put the port into the VLAN, or "
                              "switch the port on.",
                          .offers = "Make the stream's VLAN the untagged one at the switch port.",
                          .patterns = patterns,
                          .no_source = "Follows from the drawing: no way over cables, switches and VLANs."};

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const VlanPaths& paths;
    graph::Islands islands;
};

/// Links that are down for another reason than a port switched off have a rule of their own, and count as there.
std::vector<bool> usable_links(const graph::NetworkGraph& network, const LinkCapacity& capacity) {
    std::vector<bool> usable;
    for (const auto& link : network.links)
        usable.push_back(std::any_of(link.runs.begin(), link.runs.end(),
                                     [&](int run) { return capacity.runs[at(run)].reason != NoLink::disabled; }));
    return usable;
}

/// Bridges that the device hangs on or is.
std::vector<int> bridges_of(const Reader& r, int device) {
    std::vector<int> bridges;
    if (const int own = r.network.bridge_of_device[at(device)]; own >= 0) bridges.push_back(own);
    for (const int leaf : r.network.leaves_of_device[at(device)]) bridges.push_back(r.network.leaves[at(leaf)].bridge);
    return bridges;
}

bool joined(const Reader& r, int a, int b) {
    for (const int from : bridges_of(r, a))
        for (const int to : bridges_of(r, b))
            if (r.islands.of_bridge[at(from)] == r.islands.of_bridge[at(to)]) return true;
    return false;
}

/// The device's leaf that is switched off, where no other is alive.
bool switched_off(const Reader& r, int device) {
    const auto& leaves = r.network.leaves_of_device[at(device)];
    return !leaves.empty() && std::all_of(leaves.begin(), leaves.end(), [&](int leaf) {
        return r.capacity.runs[at(r.network.leaves[at(leaf)].run)].reason == NoLink::disabled;
    });
}

/// The device's leaf outside the VLAN, where all are up and none is inside.
std::optional<int> leaf_outside(const Reader& r, int device, VlanIndex vlan) {
    const auto& leaves = r.network.leaves_of_device[at(device)];
    const bool other = std::any_of(leaves.begin(), leaves.end(), [&](int leaf) {
        return r.paths.leaves[at(leaf)].carries(vlan) || !r.capacity.runs[at(r.network.leaves[at(leaf)].run)].rate;
    });
    return other || leaves.empty() ? std::nullopt : std::optional(leaves.front());
}

std::optional<Remedy> put_in_vlan(const Reader& r, int leaf, model::VlanId vlan) {
    const auto port = r.network.leaves[at(leaf)].bridge_port;
    auto row = port_settings(r.wiring, port);
    row.untagged = vlan;
    row.no_untagged = false;
    std::erase(row.tagged, vlan);
    return Remedy{line(STREAMWRIGHT_TEXT("Make %1 untagged at %2"), {named(vlan), port_ref(r.wiring, port)}),
                  model::ConfigurePort{std::move(row), nullptr}};
}

Finding about(const model::Subscription& row, const model::Stream& stream, std::vector<base::Ref> more, int variant) {
    std::vector<base::Value> values{named(row.id), named(stream.id)};
    for (auto& name : more) values.emplace_back(std::move(name));
    return found(words.id, Severity::error, {row.id, row.decoder, stream.id}, std::move(values), variant);
}

void judge(const Reader& r, const model::Subscription& row, const model::Stream& stream, VlanIndex vlan,
           Findings& out) {
    const auto encoder = r.wiring.device_index(stream.encoder), decoder = r.wiring.device_index(row.decoder);
    if (!encoder || !decoder) return;
    for (const int device : {*encoder, *decoder}) {
        const auto name = named(device_id(r.wiring, device));
        if (bridges_of(r, device).empty()) return out.push_back(about(row, stream, {name}, 0));
        if (switched_off(r, device)) return out.push_back(about(row, stream, {name}, 3));
    }
    if (!joined(r, *encoder, *decoder))
        return out.push_back(about(row, stream, {named(stream.encoder), named(row.decoder)}, 1));
    for (const int device : {*encoder, *decoder}) {
        const auto leaf = leaf_outside(r, device, vlan);
        const auto id = r.paths.vlans[at(vlan)];
        if (!leaf || !id) continue;
        auto finding = about(row, stream, {named(device_id(r.wiring, device)), named(*id)}, 2);
        if (auto remedy = put_in_vlan(r, *leaf, *id)) finding.remedies.push_back(std::move(*remedy));
        return out.push_back(std::move(finding));
    }
}

// Other reasons (a VLAN missing on a trunk, no querier, a link that does not come up) have rules of their own.
void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkCapacity& capacity,
           const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads, Findings& out) {
    const Reader reader{wiring, network, capacity, paths,
                        graph::find_islands(network, usable_links(network, capacity))};
    const auto streams = streams_by_index(wiring);
    std::vector<const model::Subscription*> rows;
    for (const auto& row : wiring.design.subscriptions) rows.push_back(&row);
    for (const auto& preset : loads.presets)
        for (std::size_t s = 0; s < preset.unserved.size(); ++s)
            for (const int index : preset.unserved[s])
                judge(reader, *rows[at(index)], *streams[s], forwarding.streams[s].vlan, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::stream_cannot_reach
