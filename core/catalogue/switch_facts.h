// Everything that checks read of a switch. Each fact is optional: what is not stated is unknown and said so,
// never filled with a silent default.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"

#include <optional>
#include <vector>

namespace streamwright::catalogue {

/// What happens to a group without a member known on this switch (RFC 4541 2.1.2 rule 3 allows the first two).
enum class UnknownGroups { flood, router_ports, drop };
/// Lookup of a stream in the snooping table (RFC 9166 forwarding-table-type).
enum class GroupLookup { ip, mac };
/// What a built-in switch of an endpoint does with BPDUs.
enum class Bpdus { run, passed, dropped };
enum class TreeKind { common, per_vlan };
/// What may decide on which member of an aggregation group a frame goes.
enum class MemberChoice { source_mac, destination_mac, source_ip, destination_ip, destination_port };

/// What a switch sets aside for a powered port: the watts of its class, those it measures, or those the device asks for
/// by LLDP (IEEE 802.3 clause 79).
enum class PoeAllocation { by_class, by_draw, by_lldp };
/// Power supplies in a switch: one; two that add their PoE watts; two of which one alone must carry all.
enum class SupplySet { one, two_added, two_redundant };

struct SwitchFacts {
    std::optional<bool> snooping;  // able to snoop IGMP
    std::optional<UnknownGroups> unknown_groups;
    std::optional<GroupLookup> lookup;
    std::optional<bool> floods_without_querier;        // as the Linux bridge does
    std::optional<bool> zero_query_makes_router_port;  // a query from 0.0.0.0; RFC 4541: no; Linux bridge: yes
    std::optional<bool> queries_without_snooping;      // a querier set here sends although snooping is off
    std::optional<bool> fast_leave;
    std::optional<int> group_table_size;  // groups
    std::optional<int> groups_per_port;
    std::optional<int> vlan_limit;
    std::optional<Bpdus> bpdus;
    std::optional<TreeKind> trees;
    std::optional<bool> rapid_tree;
    std::optional<bool> query_on_topology_change;  // as querier it asks at once when the tree changes (RFC 4541 2.1.1)
    std::optional<bool> long_path_costs;
    std::optional<base::Power> poe_budget;  // for the whole switch
    std::optional<bool> poe_by_class;       // reserved by class; false: by measured draw
    std::optional<int> addresses_per_port;
    std::optional<int> address_table_size;  // MAC addresses
    std::optional<base::Duration> forwarding_latency;
    std::optional<int> frame_limit;        // octets, untagged, with FCS
    std::optional<int> aggregation_limit;  // members of one group
    /// The last octets of these fields, exclusive-or, modulo the number of members, choose the member (common practice;
    /// IEEE 802.1AX leaves the choice open).
    std::optional<std::vector<MemberChoice>> member_by;
    std::optional<bool> stackable;
    std::optional<base::Power> poe_budget_two;  // with two supplies that add up; poe_budget is that of one
    friend bool operator==(const SwitchFacts&, const SwitchFacts&) = default;
};

}  // namespace streamwright::catalogue

template <>
struct streamwright::base::EnumText<streamwright::catalogue::UnknownGroups> {
    using E = streamwright::catalogue::UnknownGroups;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::flood, "flood"}, {E::router_ports, "router_ports"}, {E::drop, "drop"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::GroupLookup> {
    using E = streamwright::catalogue::GroupLookup;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{{{E::ip, "ip"}, {E::mac, "mac"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::Bpdus> {
    using E = streamwright::catalogue::Bpdus;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::run, "run"}, {E::passed, "passed"}, {E::dropped, "dropped"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::TreeKind> {
    using E = streamwright::catalogue::TreeKind;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{
        {{E::common, "common"}, {E::per_vlan, "per_vlan"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::PoeAllocation> {
    using E = streamwright::catalogue::PoeAllocation;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::by_class, "by_class"}, {E::by_draw, "by_draw"}, {E::by_lldp, "by_lldp"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::SupplySet> {
    using E = streamwright::catalogue::SupplySet;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::one, "one"}, {E::two_added, "two_added"}, {E::two_redundant, "two_redundant"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::MemberChoice> {
    using E = streamwright::catalogue::MemberChoice;
    static constexpr std::array<std::pair<E, std::string_view>, 5> names{{{E::source_mac, "source_mac"},
                                                                          {E::destination_mac, "destination_mac"},
                                                                          {E::source_ip, "source_ip"},
                                                                          {E::destination_ip, "destination_ip"},
                                                                          {E::destination_port, "destination_port"}}};
};
