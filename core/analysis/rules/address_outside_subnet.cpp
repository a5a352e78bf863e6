// An address outside its VLAN's subnet reaches nobody there; the subnet's first and last are not for hosts.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::address_outside_subnet {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 has the address %2, which is outside %3 of %4."),
    STREAMWRIGHT_TEXT("%1 has the address %2, which names the subnet %3 of %4 itself."),
    STREAMWRIGHT_TEXT("%1 has the address %2, which is the broadcast address of %3 of %4."),
    STREAMWRIGHT_TEXT("%1 has the fixed address %2, which %4 also hands out as a lease.")};

constexpr standards::Citation sources[] = {{"IETF", "RFC 950", "section 2.1"}, {"IETF", "RFC 4632", "section 3.1"}};

constexpr RuleWords words{.id = "address-outside-subnet",
                          .theme = Theme::addresses,
                          .title = "Address outside its subnet",
                          .meaning =
                              "The device cannot be reached by its neighbours, or takes an address that means "
                              "something else there.",
                          .measured =
                              "Each fixed address, a querier's included, is compared with the subnet of its VLAN: "
                              "network and broadcast addresses count as outside, except in subnets of two addresses "
                              "or one. An address within the lease range is a warning.",
                          .remedy =
                              "Type an address of the subnet that no lease covers, or correct the subnet of the "
                              "VLAN.",
                          .offers = "Give the device the next free address of the subnet.",
                          .patterns = patterns,
                          .sources = sources};

std::optional<std::pair<int, Severity>> verdict(const model::Vlan& vlan, base::Ipv4 address) {
    if (!vlan.subnet->holds(address)) return std::pair{0, Severity::error};
    const bool ends_reserved = vlan.subnet->length < 31;  // RFC 3021
    if (ends_reserved && address == vlan.subnet->network) return std::pair{1, Severity::error};
    if (ends_reserved && address == vlan.subnet->broadcast()) return std::pair{2, Severity::error};
    const bool leases = vlan.lease_first && vlan.lease_last;
    if (leases && *vlan.lease_first <= address && address <= *vlan.lease_last) return std::pair{3, Severity::warning};
    return std::nullopt;
}

void check(const graph::Wiring& wiring, const AddressPlan& plan, Findings& out) {
    const HostUse* before = nullptr;
    for (const auto& use : plan.hosts) {
        // The same address as host and as querier is one matter.
        const bool again =
            before && before->address == use.address && before->device == use.device && before->vlan == use.vlan;
        before = &use;
        const auto* vlan = use.vlan ? wiring.design.vlans.find(*use.vlan) : nullptr;
        if (again || !vlan || !vlan->subnet) continue;
        const auto judged = verdict(*vlan, use.address);
        if (!judged) continue;
        const auto id = device_id(wiring, use.device);
        auto finding =
            found(words.id, judged->second, {id, vlan->id},
                  {named(id), base::print(use.address), base::print(*vlan->subnet), named(vlan->id)}, judged->first);
        if (auto remedy = other_address(wiring, plan, use)) finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::address_outside_subnet
