// A snooping switch keeps one entry for each group that somebody behind it watches. What happens to a group without an
// entry is the maker's: it is flooded, it is dropped, or snooping stops for the whole switch. Only groups with members
// are counted, in the preset that has most of them at once; a type that states no limit is not judged.
#include "core/analysis/facts/stream_walk.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <numeric>
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

/// The most groups at once, and in which preset.
struct Most {
    std::int64_t groups = 0;
    model::PresetId preset{0};
};

/// Counts something once a group: groups come one after the other, and the last one seen is remembered.
struct Tally {
    std::vector<int> last;
    std::vector<std::int64_t> count;
    explicit Tally(std::size_t size) : last(size, -1), count(size, 0) {}
    void add(int where, int group) {
        if (last[at(where)] == group) return;
        last[at(where)] = group;
        ++count[at(where)];
    }
    void raise(std::vector<Most>& most, model::PresetId preset) const {
        for (std::size_t i = 0; i < count.size(); ++i)
            if (count[i] > most[i].groups) most[i] = {count[i], preset};
    }
};

/// The streams in the order of VLAN, group MAC address and group, so that what a table holds as one stands together.
struct Order {
    std::vector<int> place, by_ip, by_mac;  // per stream: its place; the number of its group, and of its MAC address
    explicit Order(const Forwarding& forwarding) {
        const auto key = [&](int s) {
            const auto& way = forwarding.streams[at(s)];
            return std::tuple(way.vlan, way.group.mac(), way.group.name);
        };
        std::vector<int> sorted(forwarding.streams.size());
        std::iota(sorted.begin(), sorted.end(), 0);
        std::sort(sorted.begin(), sorted.end(), [&](int a, int b) { return key(a) < key(b); });
        place = by_ip = by_mac = sorted;
        int ip = 0, mac = 0;
        for (int i = 0; i < static_cast<int>(sorted.size()); ++i) {
            const int stream = sorted[at(i)];
            if (i > 0) {
                const auto before = key(sorted[at(i - 1)]), here = key(stream);
                const bool same_mac =
                    std::get<0>(before) == std::get<0>(here) && std::get<1>(before) == std::get<1>(here);
                mac += same_mac ? 0 : 1;
                ip += before == here ? 0 : 1;
            }
            place[at(stream)] = i;
            by_ip[at(stream)] = ip;
            by_mac[at(stream)] = mac;
        }
    }
};

/// Someone in a preset who asks for a stream.
struct Asked {
    int stream = 0;
    Receiver receiver;
};

/// In the order of their groups, without comparing any.
std::vector<Asked> by_group(const Order& order, const std::vector<Asked>& list) {
    std::vector<int> next(order.place.size() + 1, 0);
    for (const auto& each : list) ++next[at(order.place[at(each.stream)]) + 1];
    std::partial_sum(next.begin(), next.end(), next.begin());
    std::vector<Asked> sorted(list.size());
    for (const auto& each : list) sorted[at(next[at(order.place[at(each.stream)])]++)] = each;
    return sorted;
}

/// Per preset.
std::map<model::PresetId, std::vector<Asked>> asked(const Reader& r) {
    std::map<model::PresetId, std::vector<Asked>> lists;
    for (const auto& [row, stream, decoder] : r.wiring.subscriptions) {
        if (stream < 0 || decoder < 0) continue;
        const auto& way = r.forwarding.streams[at(stream)];
        if (!way.on_network() || way.group.link_local()) continue;
        if (const auto receiver = receiver_of(r.network, r.paths, decoder, way.vlan))
            lists[row->preset].push_back({stream, *receiver});
    }
    return lists;
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
    if (most.groups == 0) return;
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
    const Order order(forwarding);
    StreamWalk walk(network, trees, forwarding);
    std::vector<Most> by_bridge(network.bridges.size()), by_arc(at(network.arc_count()));
    std::vector<Membership> learned;
    for (const auto& [preset, list] : asked(r)) {
        Tally bridges(by_bridge.size()), arcs(by_arc.size());
        for (const auto& each_asked : by_group(order, list)) {
            const auto& way = forwarding.streams[at(each_asked.stream)];
            learned.clear();
            walk.report(way.vlan, each_asked.receiver, way.group, learned);
            for (const auto& each : learned) {
                const bool by_mac = r.facts(each.bridge).lookup == catalogue::GroupLookup::mac;
                const int group = (by_mac ? order.by_mac : order.by_ip)[at(each_asked.stream)];
                bridges.add(each.bridge, group);
                if (each.arc >= 0) arcs.add(each.arc, group);
            }
        }
        bridges.raise(by_bridge, preset);
        arcs.raise(by_arc, preset);
    }
    for (int b = 0; b < static_cast<int>(by_bridge.size()); ++b) judge_table(r, b, by_bridge[at(b)], out);
    for (int arc = 0; arc < network.arc_count(); ++arc) judge_port(r, runs, arc, by_arc[at(arc)], out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::snooping_table_full
