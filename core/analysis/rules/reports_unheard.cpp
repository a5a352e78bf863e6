// A switch that drops unknown groups lets a stream go only once it has heard somebody ask. Reports travel toward the
// querier and no further (RFC 4541 2.1.1): a switch aside of their way never hears them, and what enters there stays
// there.
#include "core/analysis/facts/stream_walk.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::reports_unheard {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 drops streams in %2 that are asked for where it does not hear it; subscriptions that stay "
                      "dark: %3, the first %4."),
    STREAMWRIGHT_TEXT("%1 drops streams that are asked for where it does not hear it; subscriptions that stay dark: "
                      "%3, the first %4.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 4541", "section 2.1.1 (reports go to router ports only)"},
    {"IETF", "RFC 4541", "section 2.1.2 (streams of groups without members)"},
    {"trade", "unknown groups", "dropped on switches so set: the querier stands where the sources are",
     standards::Standing::practice}};

constexpr RuleWords words{.id = "reports-unheard",
                          .theme = Theme::multicast,
                          .title = "Switch that drops streams it never hears asked for",
                          .meaning =
                              "The displays stay black though all is cabled: the decoders ask toward the querier, the "
                              "sources' switch lies aside of that way, and it drops what nobody has asked it for.",
                          .measured =
                              "For each subscription whose stream does not arrive, the way from encoder to decoder is "
                              "gone through for a switch that drops unknown groups and does not get the decoder's "
                              "reports.",
                          .remedy =
                              "Make that switch, or one behind it, the querier of the VLAN; set its side as a "
                              "multicast router port on the switches toward it; or let it send unknown groups to "
                              "router ports.",
                          .patterns = patterns,
                          .sources = sources};

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
};

bool drops(const BridgeSnooping& bridge) {
    return bridge.keeps_members && !bridge.floods_all && bridge.unknown == catalogue::UnknownGroups::drop;
}

/// Bridges from the first to the last over links that forward; empty where there is no way.
std::vector<int> way(const Reader& r, VlanIndex vlan, int from, int to) {
    std::vector<int> reached{to};
    std::map<int, int> next{{to, to}};  // toward `to`
    for (std::size_t i = 0; i < reached.size() && !next.contains(from); ++i)
        for (const int arc : r.forwarding.vlans[at(vlan)].out(reached[i])) {
            if (!r.network.is_link_arc(arc) || !r.trees.trees[at(vlan)].forwards(arc / 2)) continue;
            const int bridge = r.network.bridge_after(arc);
            if (next.emplace(bridge, reached[i]).second) reached.push_back(bridge);
        }
    if (!next.contains(from)) return {};
    std::vector<int> bridges{from};
    while (bridges.back() != to) bridges.push_back(next.at(bridges.back()));
    return bridges;
}

/// The bridge where the stream ends because the decoder's reports do not come there; -1: it ends for another reason.
int where_dropped(const Reader& r, StreamWalk& walk, int stream, int decoder) {
    const auto& source = r.forwarding.streams[at(stream)];
    if (!source.on_network() || source.group.link_local()) return -1;
    const auto receiver = receiver_of(r.network, r.paths, decoder, source.vlan);
    if (!receiver) return -1;
    std::vector<Membership> learned;
    walk.report(source.vlan, *receiver, source.group, learned);
    std::set<int> heard;
    for (const auto& each : learned) heard.insert(each.bridge);
    for (const int bridge : way(r, source.vlan, source.first_bridge(r.network), receiver->bridge))
        if (drops(r.forwarding.vlans[at(source.vlan)].bridges[at(bridge)]) && !heard.contains(bridge)) return bridge;
    return -1;
}

void report_one(const Reader& r, VlanIndex vlan, int bridge, const model::Subscription& first, std::size_t count,
                Findings& out) {
    const auto device = device_id(r.wiring, r.network.bridges[at(bridge)].devices.front());
    const auto id = r.paths.vlans[at(vlan)];
    std::vector<Subject> subjects{device};
    if (id) subjects.emplace_back(*id);
    std::vector<base::Value> values{named(device), id ? base::Value(named(*id)) : base::Value(std::string()),
                                    static_cast<std::int64_t>(count), named(first.id)};
    out.push_back(found(words.id, Severity::error, std::move(subjects), std::move(values), id ? 0 : 1));
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
           const SpanningTrees& trees, const Forwarding& forwarding, const LinkLoads& loads, Findings& out) {
    const Reader r{wiring, network, paths, trees, forwarding};
    const bool any = std::ranges::any_of(forwarding.vlans, [](const VlanSnooping& vlan) {
        return std::ranges::any_of(vlan.bridges, [](const BridgeSnooping& bridge) { return drops(bridge); });
    });
    if (!any) return;
    StreamWalk walk(network, trees, forwarding);
    std::vector<const model::Subscription*> rows;
    for (const auto& row : wiring.design.subscriptions) rows.push_back(&row);
    std::map<std::pair<VlanIndex, int>, std::set<int>> dark;  // per VLAN and bridge
    for (const auto& preset : loads.presets)
        for (int s = 0; s < static_cast<int>(preset.unserved.size()); ++s)
            for (const int index : preset.unserved[at(s)]) {
                const auto decoder = wiring.device_index(rows[at(index)]->decoder);
                const int bridge = decoder ? where_dropped(r, walk, s, *decoder) : -1;
                if (bridge >= 0) dark[{forwarding.streams[at(s)].vlan, bridge}].insert(index);
            }
    for (const auto& [where, subscriptions] : dark)
        report_one(r, where.first, where.second, *rows[at(*subscriptions.begin())], subscriptions.size(), out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::reports_unheard
