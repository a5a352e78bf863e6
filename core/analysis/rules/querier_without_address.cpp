// A querier that asks from 0.0.0.0. It never wins an election, and a switch that follows the recommendation makes no
// router port of its queries, so reports and streams do not cross that switch. Where the type does not state what it
// does with such queries, another rule says so.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::querier_without_address {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 asks in %2 without an address: %3 makes no router port of a query from 0.0.0.0, so reports "
                      "and streams do not cross it."),
    STREAMWRIGHT_TEXT("%1 asks in %2 without an address: against %3 it loses every election, and is no reserve for "
                      "it."),
    STREAMWRIGHT_TEXT("%1 asks in %2 without an address. That holds while it is alone; it loses every election "
                      "against one that has an address.")};

constexpr standards::Citation sources[] = {{"IETF", "RFC 4541", "section 2.1.1 (queries from 0.0.0.0)"},
                                           {"IETF", "RFC 2236", "section 3 (election)", standards::Standing::memory}};

constexpr RuleWords words{.id = "querier-without-address",
                          .theme = Theme::multicast,
                          .title = "Querier without an address",
                          .meaning =
                              "On the bench with one switch it works. With a second one, memberships are not passed "
                              "on, and pictures behind it stay black.",
                          .measured =
                              "For each querier without an address the other switches of its part of the VLAN are "
                              "asked what they make of a query from 0.0.0.0: an error where one ignores it, a warning "
                              "where another querier wins, advice where it works.",
                          .remedy = "Give the querier an address in the VLAN.",
                          .offers = "Give it the switch's own address in the VLAN, or a free one.",
                          .patterns = patterns,
                          .sources = sources};

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
    const AddressPlan& plan;
};

/// Where the device meets the VLAN; none: nowhere.
std::optional<int> bridge_in(const Reader& r, int device, VlanIndex vlan) {
    const int own = r.network.bridge_of_device[at(device)];
    if (own >= 0 && r.forwarding.vlans[at(vlan)].bridges[at(own)].in_vlan) return own;
    for (const int leaf : r.network.leaves_of_device[at(device)])
        if (r.paths.leaves[at(leaf)].carries(vlan)) return r.network.leaves[at(leaf)].bridge;
    return std::nullopt;
}

/// A device of the same part whose querier has an address.
std::optional<int> winner(const Reader& r, int bridge, VlanIndex vlan, model::VlanId id) {
    const auto& roots = r.trees.trees[at(vlan)].root_of;
    for (int d = 0; d < static_cast<int>(r.wiring.devices.size()); ++d)
        for (const auto& querier : r.wiring.devices[at(d)].row->bridging.queriers) {
            if (querier.vlan != id || !querier.address || querier.address->bits == 0) continue;
            const auto there = bridge_in(r, d, vlan);
            if (there && roots[at(*there)] == roots[at(bridge)]) return d;
        }
    return std::nullopt;
}

/// A snooping bridge of the same part whose type ignores queries from 0.0.0.0.
std::optional<int> strict_bridge(const Reader& r, int bridge, VlanIndex vlan) {
    const auto& roots = r.trees.trees[at(vlan)].root_of;
    const auto& snooping = r.forwarding.vlans[at(vlan)].bridges;
    for (int b = 0; b < static_cast<int>(snooping.size()); ++b) {
        if (b == bridge || !snooping[at(b)].in_vlan || !snooping[at(b)].snoops) continue;
        const int first = r.network.bridges[at(b)].devices.front();
        if (roots[at(b)] == roots[at(bridge)] &&
            r.wiring.devices[at(first)].type->bridging->zero_query_makes_router_port == false)
            return first;
    }
    return std::nullopt;
}

std::optional<Remedy> give_address(const Reader& r, int device, model::VlanId vlan) {
    auto row = device_settings(r.wiring, device);
    std::optional<base::Ipv4> address;
    for (const auto& each : row.addresses)
        if (each.address && each.vlan == vlan && !address) address = each.address;
    if (const auto* known = r.wiring.design.vlans.find(vlan); known && !address) address = free_address(r.plan, *known);
    if (!address) return std::nullopt;
    for (auto& querier : row.bridging.queriers)
        if (querier.vlan == vlan) querier.address = address;
    return Remedy{line(STREAMWRIGHT_TEXT("Let %1 ask from %2"), {named(row.id), base::print(*address)}),
                  model::ConfigureDevice{std::move(row)}};
}

void judge(const Reader& r, int device, const model::Querier& querier, Findings& out) {
    const auto vlan = r.paths.index(querier.vlan);
    const auto bridge = vlan ? bridge_in(r, device, *vlan) : std::nullopt;
    if (!bridge) return;
    const auto id = device_id(r.wiring, device);
    const auto other = winner(r, *bridge, *vlan, querier.vlan);
    const auto& asking = r.forwarding.vlans[at(*vlan)].queriers;
    if (!other && std::find(asking.begin(), asking.end(), *bridge) == asking.end()) return;  // it is set and silent
    const auto strict = other ? std::nullopt : strict_bridge(r, *bridge, *vlan);
    std::vector<base::Value> values{named(id), named(querier.vlan)};
    if (const auto third = other ? other : strict) values.emplace_back(named(device_id(r.wiring, *third)));
    auto finding = found(words.id,
                         strict  ? Severity::error
                         : other ? Severity::warning
                                 : Severity::advice,
                         {id, querier.vlan}, std::move(values),
                         strict  ? 0
                         : other ? 1
                                 : 2);
    if (auto remedy = give_address(r, device, querier.vlan)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
           const SpanningTrees& trees, const Forwarding& forwarding, const AddressPlan& plan, Findings& out) {
    const Reader reader{wiring, network, paths, trees, forwarding, plan};
    for (int d = 0; d < static_cast<int>(wiring.devices.size()); ++d) {
        std::vector<model::VlanId> told;
        for (const auto& querier : wiring.devices[at(d)].row->bridging.queriers) {
            if (querier.address && querier.address->bits != 0) continue;
            if (std::find(told.begin(), told.end(), querier.vlan) != told.end()) continue;
            told.push_back(querier.vlan);
            judge(reader, d, querier, out);
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::querier_without_address
