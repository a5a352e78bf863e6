// Gives out, as one change, everything that addressing still lacks: subnets, addresses, host names and groups. What
// somebody typed stays. It is no edit of the model: which VLAN a device is in is read through patch panels off the runs
// of its cables, which the model does not know, so whoever asked commits the delta, or does not.
#pragma once

#include "core/base/text.h"
#include "core/model/delta.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// What became of one VLAN.
struct PlannedVlan {
    model::VlanId vlan;
    std::optional<base::Ipv4Prefix> subnet;  // none: those typed in the VLAN fit no subnet of their own
    bool subnet_given = false;
    int switches = 0, queriers = 0, endpoints = 0;  // addresses given
    std::int64_t free = 0;                          // addresses that could be given later
    std::vector<model::DeviceId> without;           // no address was left for them
    friend bool operator==(const PlannedVlan&, const PlannedVlan&) = default;
};

struct PlannedAddresses {
    model::Delta delta;
    std::vector<PlannedVlan> vlans;              // by number
    std::vector<model::DeviceId> in_no_vlan;     // they get no address
    int host_names = 0, groups = 0;              // given
    std::int64_t groups_free = 0;                // groups of the block whose MAC address nobody uses
    std::vector<model::StreamId> without_group;  // the block was full
    friend bool operator==(const PlannedAddresses&, const PlannedAddresses&) = default;
};

/// VLANs without a subnet get one around the addresses typed in them, else a free one. Then addresses are given in
/// rising order: switches, queriers, and all else with a network port, each by room and tag, in the VLAN that it is
/// cabled to. The members of a stack share one. A listed interface without an address stays leased where its VLAN hands
/// out leases. A querier takes its switch's address in the VLAN, but never undercuts one whose address was typed: the
/// lowest is the one that asks (RFC 2236). Host names follow tags (RFC 1123). Streams get groups of 239.192.0.0/14 (RFC
/// 2365) in the order of their encoders, no two on one MAC address (RFC 1112).
PlannedAddresses plan_addresses(const model::Design& design);

/// What the plan does in words, a line for each VLAN and one each for what is of no VLAN.
struct PlanLine {
    base::Text about, given, room;
    std::optional<base::Text> cannot;
};
std::vector<PlanLine> plan_lines(const PlannedAddresses& plan);

}  // namespace streamwright::analysis
