// A snooping switch keeps one entry for each group that somebody behind it watches. What happens to a group without an
// entry is the maker's: it is flooded, it is dropped, or snooping stops for the whole switch. Only groups with members
// are counted, in the preset that has most of them at once; a type that states no limit is not judged.
#include "core/analysis/facts/stream_walk.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace streamwright::analysis::rules::snooping_table_full {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 must hold %2 groups in preset %3, and its table holds %4: %5 too many."),
    STREAMWRIGHT_TEXT("%1 must hold %2 groups in preset %3, %5 of the %4 that its table holds."),
    STREAMWRIGHT_TEXT("%1 must hold %2 groups in preset %3, and its type takes %4 a port: %5 too many.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 4541", "section 2.1.2 (forwarding table)"},
    {"trade", "snooping tables", "keep a fifth of them free", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "snooping-table-full",
    .theme = Theme::multicast,
    .title = "Snooping table full",
    .meaning =
        "The groups that find no place are flooded to every port or reach nobody; some switches "
        "give up snooping altogether.",
    .measured =
        "In each preset the memberships that a switch learns are counted, per VLAN and group, and "
        "held against the table its type states, for the switch and for one port. Above the table "
        "is an error, above four fifths of it a warning.",
    .remedy = "Use a larger switch there, fewer groups, or spread the receivers.",
    .patterns = patterns,
    .sources = sources};

constexpr int free_share_percent = 80;

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;

    const catalogue::SwitchFacts& facts(int bridge) const {
        return *wiring.devices[at(network.bridges[at(bridge)].devices.front())].type->bridging;
    }
    std::optional<Receiver> receiver_of(int decoder, VlanIndex vlan) const {
        if (const int bridge = network.bridge_of_device[at(decoder)]; bridge >= 0) return Receiver{bridge, -1};
        for (const int leaf : network.leaves_of_device[at(decoder)])
            if (paths.leaves[at(leaf)].carries(vlan))
                return Receiver{network.leaves[at(leaf)].bridge, network.leaf_arc(leaf, false)};
        return {};
    }
};

/// Whether any table could be full: no switch holds more groups than there are streams.
bool worth_counting(const Reader& r) {
    const auto streams = static_cast<int>(r.forwarding.streams.size());
    for (int b = 0; b < static_cast<int>(r.network.bridges.size()); ++b) {
        const auto& facts = r.facts(b);
        if (facts.group_table_size && streams * 100 > *facts.group_table_size * free_share_percent) return true;
        if (facts.groups_per_port && streams > *facts.groups_per_port) return true;
    }
    return false;
}

/// An entry of a table: bridge, VLAN, group as the bridge tells groups apart.
using Entry = std::tuple<int, VlanIndex, std::uint64_t>;

/// Entries of one preset, and those that one port asks for.
struct Entries {
    std::vector<Entry> of_bridge;
    std::vector<std::pair<int, Entry>> of_port;  // by arc
};

template <class Each>
void make_unique(std::vector<Each>& list) {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
}

Entries entries_in(const Reader& r, StreamWalk& walk, model::PresetId preset,
                   const std::map<model::StreamId, int>& streams) {
    Entries entries;
    std::vector<Membership> learned;
    for (const auto& row : r.wiring.design.subscriptions) {
        const auto stream = streams.find(row.stream);
        if (row.preset != preset || stream == streams.end()) continue;
        const auto& way = r.forwarding.streams[at(stream->second)];
        const auto decoder = r.wiring.device_index(row.decoder);
        if (!decoder || !way.on_network() || way.group.link_local()) continue;
        const auto receiver = r.receiver_of(*decoder, way.vlan);
        if (!receiver) continue;
        learned.clear();
        walk.report(way.vlan, *receiver, way.group, learned);
        for (const auto& each : learned) {
            const bool by_mac = r.facts(each.bridge).lookup == catalogue::GroupLookup::mac;
            const Entry entry{each.bridge, way.vlan, by_mac ? each.group.mac() : each.group.name};
            entries.of_bridge.push_back(entry);
            if (each.arc >= 0) entries.of_port.emplace_back(each.arc, entry);
        }
    }
    make_unique(entries.of_bridge);
    make_unique(entries.of_port);
    return entries;
}

/// The most groups at once, and where.
struct Most {
    std::int64_t groups = 0;
    model::PresetId preset{0};
};
using MostBy = std::map<int, Most>;  // by bridge, or by arc

template <class List, class Key>
void raise(MostBy& most, const List& list, model::PresetId preset, Key&& key) {
    std::map<int, std::int64_t> counts;
    for (const auto& each : list) ++counts[key(each)];
    for (const auto& [where, count] : counts)
        if (count > most[where].groups) most[where] = {count, preset};
}

base::Text filled(std::int64_t groups, int limit) {
    if (limit == 0) return line(STREAMWRIGHT_TEXT("%1 groups, no place"), {groups});
    return line(STREAMWRIGHT_TEXT("%1 groups / %2 = %3"),
                {groups, std::int64_t{limit}, base::Percent{groups * 1000 / limit}});
}

void judge_table(const Reader& r, int bridge, const Most& most, Findings& out) {
    const auto limit = r.facts(bridge).group_table_size;
    if (!limit || most.groups * 100 <= std::int64_t{*limit} * free_share_percent) return;
    const bool over = most.groups > *limit;
    const auto id = device_id(r.wiring, r.network.bridges[at(bridge)].devices.front());
    const base::Value last =
        over ? base::Value(most.groups - *limit) : base::Value(base::Percent{most.groups * 1000 / *limit});
    auto finding = found(words.id, over ? Severity::error : Severity::warning, {id},
                         {named(id), most.groups, named(most.preset), std::int64_t{*limit}, last}, over ? 0 : 1);
    finding.measured = most.groups;
    finding.limit = std::int64_t{*limit};
    finding.terms.push_back(filled(most.groups, *limit));
    out.push_back(std::move(finding));
}

void judge_port(const Reader& r, const graph::Runs& runs, int arc, const Most& most, Findings& out) {
    const auto limit = r.facts(r.network.bridge_before(arc)).groups_per_port;
    if (!limit || most.groups <= *limit) return;
    const auto port = graph::arc_ends(r.wiring, runs, r.network, arc).from_port;
    auto finding = found(
        words.id, Severity::error, {port_subject(r.wiring, port)},
        {port_ref(r.wiring, port), most.groups, named(most.preset), std::int64_t{*limit}, most.groups - *limit}, 2);
    finding.measured = most.groups;
    finding.limit = std::int64_t{*limit};
    finding.terms.push_back(filled(most.groups, *limit));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const VlanPaths& paths, const SpanningTrees& trees, const Forwarding& forwarding, Findings& out) {
    const Reader r{wiring, network, paths, trees, forwarding};
    if (!worth_counting(r)) return;
    std::map<model::StreamId, int> streams;
    for (const auto* row : streams_by_index(wiring)) streams.emplace(row->id, static_cast<int>(streams.size()));
    StreamWalk walk(network, trees, forwarding);
    MostBy by_bridge, by_port;
    for (const auto& preset : wiring.design.presets) {
        const auto entries = entries_in(r, walk, preset.id, streams);
        raise(by_bridge, entries.of_bridge, preset.id, [](const Entry& each) { return std::get<0>(each); });
        raise(by_port, entries.of_port, preset.id, [](const auto& each) { return each.first; });
    }
    for (const auto& [bridge, most] : by_bridge) judge_table(r, bridge, most, out);
    for (const auto& [arc, most] : by_port) judge_port(r, runs, arc, most, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::snooping_table_full
