// Snooping switches learn who wants a stream only while somebody asks. Without a querier memberships fade after the
// membership time, and then the switches' mode for unknown groups rules.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/model/new_vlan.h"
#include "core/standards/igmp.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::no_querier {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT(
        "%1 carries streams (%2) and has no querier: about %3 after start %4 floods them to every port, together %5."),
    STREAMWRIGHT_TEXT(
        "%1 carries streams (%2) and has no querier: about %3 after start %4 stops passing them on, and pictures go "
        "black."),
    STREAMWRIGHT_TEXT(
        "%1 carries streams (%2) and has no querier: %4 floods them to every port from the start, together %5."),
    STREAMWRIGHT_TEXT(
        "%4 carries streams (%2) and has no querier, and no VLAN is set up to give it one: snooping forgets members "
        "about %3 after start.")};

constexpr standards::Citation sources[] = {{"IETF", "RFC 4541", "section 2.1"},
                                           {"IETF", "RFC 2236", "section 8.4 (membership interval)"},
                                           {"IETF", "RFC 9776", "section 8.4 (membership interval)"}};

constexpr RuleWords words{.id = "no-querier",
                          .theme = Theme::multicast,
                          .title = "Streams on a VLAN without a querier",
                          .meaning =
                              "It works in the workshop and fails minutes after the show begins. Snooping "
                              "switches forget who wants a stream when nobody asks.",
                          .measured =
                              "In each VLAN, and in each part of it that the spanning tree joins, the switch that "
                              "asks for members is looked for. The time until memberships fade comes from "
                              "robustness, query interval and response time.",
                          .remedy =
                              "Set up one querier in the VLAN, with an address in it, best on the switch with most "
                              "encoders.",
                          .offers =
                              "Make the switch with most encoders the querier of the VLAN; where the design has no "
                              "VLAN yet, set one up with it.",
                          .patterns = patterns,
                          .sources = sources};

/// Streams of one VLAN in one part of the network where nobody asks.
struct Silent {
    std::vector<int> streams;
    std::map<int, int> sources_at;  // per bridge
};

base::Duration membership_time(const model::Settings& settings) {
    using namespace base::literals;
    const standards::IgmpTimers timers{settings.robustness, 1_s * settings.query_interval_s,
                                       1_s * settings.query_response_s};
    const bool newer = settings.igmp == model::IgmpDocument::rfc9776;
    return standards::membership_time(timers,
                                      newer ? standards::IgmpDocument::rfc9776 : standards::IgmpDocument::rfc2236);
}

/// The switch that a built-in one hangs on, nearest first; built-in switches of endpoints do not ask (common practice).
int nearest_switch(const graph::NetworkGraph& network, const VlanSnooping& snooping, int from) {
    std::vector<int> reached{from};
    std::set<int> seen{from};
    for (std::size_t i = 0; i < reached.size(); ++i) {
        if (!network.bridges[at(reached[i])].endpoint) return reached[i];
        for (const int arc : snooping.out(reached[i]))
            if (const int next = network.bridge_after(arc); next >= 0 && seen.insert(next).second)
                reached.push_back(next);
    }
    return from;
}

std::map<std::pair<VlanIndex, int>, Silent> silent_parts(const graph::NetworkGraph& network, const SpanningTrees& trees,
                                                         const Forwarding& forwarding) {
    std::map<std::pair<VlanIndex, int>, Silent> parts;
    for (int s = 0; s < static_cast<int>(forwarding.streams.size()); ++s) {
        const auto& way = forwarding.streams[at(s)];
        if (!way.on_network()) continue;
        const int bridge = way.first_bridge(network);
        if (forwarding.vlans[at(way.vlan)].querier_of[at(bridge)] >= 0) continue;
        auto& part = parts[{way.vlan, trees.trees[at(way.vlan)].root_of[at(bridge)]}];
        part.streams.push_back(s);
        ++part.sources_at[nearest_switch(network, forwarding.vlans[at(way.vlan)], bridge)];
    }
    return parts;
}

/// Bridges of the part; those that snoop first, and switches before endpoints' built-in ones.
std::vector<int> members(const graph::NetworkGraph& network, const SpanningTrees& trees, const VlanSnooping& snooping,
                         VlanIndex vlan, int root) {
    std::vector<int> bridges;
    for (int b = 0; b < static_cast<int>(snooping.bridges.size()); ++b)
        if (snooping.bridges[at(b)].in_vlan && trees.trees[at(vlan)].root_of[at(b)] == root) bridges.push_back(b);
    std::stable_partition(bridges.begin(), bridges.end(), [&](int b) { return !network.bridges[at(b)].endpoint; });
    std::stable_partition(bridges.begin(), bridges.end(), [&](int b) { return snooping.bridges[at(b)].snoops; });
    return bridges;
}

std::optional<Remedy> set_querier(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                  const AddressPlan& plan, int bridge, model::VlanId vlan, bool alone) {
    auto row = device_settings(wiring, network.bridges[at(bridge)].devices.front());
    const auto* known = wiring.design.vlans.find(vlan);
    const auto address = known ? querier_address(plan, row, *known) : std::nullopt;
    if (!address && !alone) return std::nullopt;  // switches do not follow a querier without an address
    row.bridging.queriers.push_back({vlan, address});
    return Remedy{line(STREAMWRIGHT_TEXT("Make %1 the querier of %2"), {named(row.id), named(vlan)}),
                  model::ConfigureDevice{std::move(row)}};
}

/// The design has no VLAN: one is made and asked in. A rule has no source of fresh ids, and the same finding must offer
/// the same edit again, so the VLAN takes the bits of its switch.
Remedy set_up_vlan(const graph::Wiring& wiring, const graph::NetworkGraph& network, const AddressPlan& plan,
                   int bridge) {
    const auto row = device_settings(wiring, network.bridges[at(bridge)].devices.front());
    model::SetUpVlan edit{model::new_vlan(wiring.design, model::VlanId(row.id.bits())), true, row.id, {}};
    edit.from = querier_address(plan, row, edit.row);
    return {
        line(STREAMWRIGHT_TEXT("Set up VLAN %1 with %2 as its querier"), {std::int64_t{edit.row.vid}, named(row.id)}),
        std::move(edit)};
}

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
    const AddressPlan& plan;
};

std::optional<Remedy> remedy(const Reader& r, int bridge, std::optional<model::VlanId> vlan, bool alone) {
    if (r.network.bridges[at(bridge)].endpoint) return std::nullopt;  // no switch here could ask
    if (!vlan) return set_up_vlan(r.wiring, r.network, r.plan, bridge);
    return set_querier(r.wiring, r.network, r.plan, bridge, *vlan, alone);
}

void judge(const Reader& r, VlanIndex vlan, int root, const Silent& part, Findings& out) {
    const auto& snooping = r.forwarding.vlans[at(vlan)];
    const auto bridges = members(r.network, r.trees, snooping, vlan, root);
    if (bridges.empty() || !snooping.bridges[at(bridges.front())].snoops) return;  // nobody filters, nothing fades
    const int busiest = std::max_element(part.sources_at.begin(), part.sources_at.end(), [](auto& a, auto& b) {
                            return a.second < b.second;
                        })->first;
    const int speaking = snooping.bridges[at(busiest)].snoops ? busiest : bridges.front();
    const auto id = r.paths.vlans[at(vlan)];
    const auto device = device_id(r.wiring, r.network.bridges[at(speaking)].devices.front());
    const auto rows = streams_by_index(r.wiring);
    base::Rate together;
    for (const int stream : part.streams) together += wire_rate(*rows[at(stream)], false);
    const auto& settings = r.wiring.design.settings();
    const bool floods = snooping.bridges[at(speaking)].unknown == catalogue::UnknownGroups::flood;
    const int variant = !id ? 3 : snooping.bridges[at(speaking)].floods_all ? 2 : floods ? 0 : 1;
    std::vector<Subject> subjects;
    if (id) subjects.emplace_back(*id);
    subjects.emplace_back(device);
    auto finding = found(
        words.id, Severity::error, std::move(subjects),
        {id ? base::Value(named(*id)) : base::Value(std::string()), static_cast<std::int64_t>(part.streams.size()),
         membership_time(settings), named(device), together.ceil()},
        variant);
    finding.measured = std::int64_t{0};
    finding.limit = std::int64_t{1};
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("membership time: %1 x %2 s + response %3 s = %4"),
                                 {std::int64_t{settings.robustness}, std::int64_t{settings.query_interval_s},
                                  std::int64_t{settings.query_response_s}, membership_time(settings)}));
    if (auto cure = remedy(r, speaking, id, bridges.size() == 1)) finding.remedies.push_back(std::move(*cure));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
           const SpanningTrees& trees, const Forwarding& forwarding, const AddressPlan& plan, Findings& out) {
    const Reader reader{wiring, network, paths, trees, forwarding, plan};
    for (const auto& [where, part] : silent_parts(network, trees, forwarding))
        judge(reader, where.first, where.second, part, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::no_querier
