// IPv4 multicast groups: the MAC address a group falls on, the blocks of the address space, and which groups a live
// plan must keep clear of.
#pragma once

#include "core/base/net_address.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>
#include <vector>

namespace streamwright::standards {

inline constexpr Citation group_mac_source{"IETF", "RFC 1112", "section 6.4"};
inline constexpr Citation control_block_source{"IETF", "RFC 5771", "section 4"};
inline constexpr Citation control_mac_source{"IETF", "RFC 4541", "section 2.1.2 rule 2"};
inline constexpr Citation top_of_scope_source{"IETF", "RFC 2365", "section 9"};
inline constexpr Citation organization_scope_source{"IETF", "RFC 2365", "section 6.2"};

/// 224.0.0.0/4.
bool is_group(base::Ipv4 address);

/// The low 23 bits of the group after 01-00-5E.
base::MacAddress group_mac(base::Ipv4 group);

/// The 32 groups that share the MAC address of this one, ascending, itself among them.
std::vector<base::Ipv4> groups_sharing_mac(base::Ipv4 group);

/// 224.0.0.0/24, flooded to every port of the VLAN.
bool in_local_control_block(base::Ipv4 group);
/// x.0.0.y and x.128.0.y: on the MAC addresses of the control block, so many switches flood them too.
bool on_control_block_mac(base::Ipv4 group);
/// The top /24 of the local and of the organization-local scope (239.255.255.0/24, 239.195.255.0/24).
bool in_reserved_top(base::Ipv4 group);

/// A block of the group address space.
struct GroupBlock {
    std::string_view name;
    base::Ipv4 first, last;
    bool for_plans;  // a design may take groups here for itself
    Citation source;
};
std::span<const GroupBlock> group_blocks();
/// The smallest block that holds the group; null outside 224.0.0.0/4 and in what no block covers.
const GroupBlock* group_block(base::Ipv4 group);

/// Where plans take groups from: the organization-local scope 239.192.0.0/14 without its first group and its reserved
/// top /24. None of them falls on the MAC addresses of the control block, and no two share one.
inline constexpr base::Ipv4 first_plan_group{0xEFC00001}, last_plan_group{0xEFC3FEFF};

/// The verdict on a group for a stream of a live plan.
enum class GroupVerdict {
    good,
    not_a_group,
    control_block,
    control_block_mac,
    documentation,
    reserved_top,
    not_for_plans
};
GroupVerdict judge_group(base::Ipv4 group);

}  // namespace streamwright::standards
