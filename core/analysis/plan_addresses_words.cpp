// What a plan of addresses does, in words.
#include "core/analysis/plan_addresses.h"
#include "core/analysis/rule_help.h"
#include "core/standards/multicast.h"

namespace streamwright::analysis {

namespace plan_addresses_words_detail {

template <class Id>
std::vector<base::Ref> refs(const std::vector<Id>& ids) {
    std::vector<base::Ref> all;
    for (const auto id : ids) all.push_back(named(id));
    return all;
}

base::Text given_in(const PlannedVlan& vlan) {
    if (!vlan.subnet) return line(STREAMWRIGHT_TEXT("no subnet, no address"), {});
    const auto subnet = base::print(*vlan.subnet);
    if (vlan.switches + vlan.queriers + vlan.endpoints > 0)
        return line(vlan.subnet_given
                        ? STREAMWRIGHT_TEXT("the subnet %1 is new; addresses: switches %2, queriers %3, others %4")
                        : STREAMWRIGHT_TEXT("in %1; addresses: switches %2, queriers %3, others %4"),
                    {subnet, std::int64_t{vlan.switches}, std::int64_t{vlan.queriers}, std::int64_t{vlan.endpoints}});
    return line(vlan.subnet_given ? STREAMWRIGHT_TEXT("the subnet %1 is new; no address is wanted")
                                  : STREAMWRIGHT_TEXT("in %1; no address is wanted"),
                {subnet});
}

PlanLine line_of(const PlannedVlan& vlan) {
    PlanLine made{line("%1", {named(vlan.vlan)}), given_in(vlan), {}, {}};
    if (vlan.subnet)
        made.room = line(STREAMWRIGHT_TEXT("%1 of %2 addresses stay free"), {vlan.free, vlan.subnet->usable_hosts()});
    if (!vlan.subnet)
        made.cannot = vlan.without.empty()
                          ? line(STREAMWRIGHT_TEXT("No subnet of its own holds what is typed in this VLAN."), {})
                          : line(STREAMWRIGHT_TEXT("No subnet of its own holds what is typed in this VLAN; without an "
                                                   "address: %1."),
                                 {refs(vlan.without)});
    else if (!vlan.without.empty())
        made.cannot = line(STREAMWRIGHT_TEXT("The subnet is full; without an address: %1."), {refs(vlan.without)});
    return made;
}

PlanLine groups_of(const PlannedAddresses& plan) {
    PlanLine made{
        line(STREAMWRIGHT_TEXT("Multicast groups"), {}),
        line(STREAMWRIGHT_TEXT("groups given to streams: %1"), {std::int64_t{plan.groups}}),
        line(STREAMWRIGHT_TEXT("%1 groups from %2 to %3 stay free"),
             {plan.groups_free, base::print(standards::first_plan_group), base::print(standards::last_plan_group)}),
        {}};
    if (!plan.without_group.empty())
        made.cannot = line(STREAMWRIGHT_TEXT("No group is left for %1."), {refs(plan.without_group)});
    return made;
}

}  // namespace plan_addresses_words_detail

std::vector<PlanLine> plan_lines(const PlannedAddresses& plan) {
    using namespace plan_addresses_words_detail;
    std::vector<PlanLine> lines;
    for (const auto& vlan : plan.vlans) lines.push_back(line_of(vlan));
    if (!plan.in_no_vlan.empty())
        lines.push_back(
            {line(STREAMWRIGHT_TEXT("In no VLAN"), {}),
             line(STREAMWRIGHT_TEXT("no address"), {}),
             {},
             line(STREAMWRIGHT_TEXT("These are in no VLAN, so no subnet is theirs: %1."), {refs(plan.in_no_vlan)})});
    lines.push_back({line(STREAMWRIGHT_TEXT("Host names"), {}),
                     line(STREAMWRIGHT_TEXT("host names made from tags: %1"), {std::int64_t{plan.host_names}}),
                     {},
                     {}});
    lines.push_back(groups_of(plan));
    return lines;
}

}  // namespace streamwright::analysis
