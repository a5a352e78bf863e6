// Two devices with one address answer for each other.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::address_twice {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 and %2 both have the address %3."),
                                         STREAMWRIGHT_TEXT("%1 has the address %2, which is the gateway of %3.")};

constexpr standards::Citation sources[] = {{"IETF", "RFC 5227", "section 1", standards::Standing::memory}};

constexpr RuleWords words{.id = "address-twice",
                          .theme = Theme::addresses,
                          .title = "Address used twice",
                          .meaning =
                              "Both devices drop in and out of reach; control and pictures fail at random, which "
                              "takes hours to find on site.",
                          .measured =
                              "All fixed addresses of a VLAN are compared with each other and with its gateway. "
                              "Members of one stack share theirs and count once.",
                          .remedy = "Give one of the two another address.",
                          .offers = "Give the device the next free address of the subnet.",
                          .patterns = patterns,
                          .sources = sources};

/// Members of a stack are one bridge and share their addresses.
bool one_bridge(const graph::Wiring& wiring, int a, int b) {
    const auto& stack = wiring.devices[at(a)].row->bridging.stack;
    return a == b || (!stack.empty() && stack == wiring.devices[at(b)].row->bridging.stack);
}

bool meet(const HostUse& a, const HostUse& b) { return !a.vlan || !b.vlan || a.vlan == b.vlan; }

bool routes(const graph::Wiring& wiring, int device, model::VlanId vlan) {
    for (const auto id : wiring.devices[at(device)].row->bridging.multicast_router_vlans)
        if (id == vlan) return true;
    return false;
}

void judge_gateway(const graph::Wiring& wiring, const AddressPlan& plan, const HostUse& use, Findings& out) {
    const auto* vlan = use.vlan ? wiring.design.vlans.find(*use.vlan) : nullptr;
    const auto* type = wiring.devices[at(use.device)].type;
    // A switch may well be the gateway; an endpoint is none.
    if (!vlan || vlan->gateway != use.address || routes(wiring, use.device, vlan->id)) return;
    if (!type || type->kind == catalogue::DeviceKind::network_switch) return;
    const auto id = device_id(wiring, use.device);
    auto finding =
        found(words.id, Severity::error, {id, vlan->id}, {named(id), base::print(use.address), named(vlan->id)}, 1);
    if (auto remedy = other_address(wiring, plan, use)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const AddressPlan& plan, Findings& out) {
    const auto& hosts = plan.hosts;
    for (std::size_t i = 0; i < hosts.size(); ++i) {
        judge_gateway(wiring, plan, hosts[i], out);
        for (std::size_t j = i + 1; j < hosts.size() && hosts[j].address == hosts[i].address; ++j) {
            if (one_bridge(wiring, hosts[i].device, hosts[j].device) || !meet(hosts[i], hosts[j])) continue;
            const auto first = device_id(wiring, hosts[i].device), second = device_id(wiring, hosts[j].device);
            auto finding = found(words.id, Severity::error, {first, second},
                                 {named(first), named(second), base::print(hosts[i].address)});
            if (auto remedy = other_address(wiring, plan, hosts[j])) finding.remedies.push_back(std::move(*remedy));
            out.push_back(std::move(finding));
            break;  // the next of a longer chain is named with its own neighbour
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::address_twice
