// A VLAN with more devices than its subnet has addresses: the last ones get none, and a larger subnet changes the
// masks of all others, so it is chosen before addresses are given out.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::subnet_too_small {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT(
    "%1 has %2 devices that need an address, and %3 holds %4: %5 too few. The smallest that fits with a fifth "
    "to spare is /%6.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 950", "section 2.1"},
    {"IETF", "RFC 4632", "section 3.1"},
    {"trade", "growth", "keep a fifth of the addresses free", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "subnet-too-small",
    .theme = Theme::addresses,
    .title = "Subnet too small for its VLAN",
    .meaning =
        "Devices that find no address are not reached, or take one that another has. A larger subnet later means new "
        "masks on every device.",
    .measured =
        "Devices with a network port that is cabled into the VLAN, switches that are managed in it, and its gateway "
        "are "
        "counted and held against the subnet's addresses, network and broadcast address left out.",
    .remedy = "Take a shorter prefix before addresses are given out, or spread the devices over more VLANs.",
    .offers = "Widen the subnet around the present one, where no other VLAN is in the way.",
    .patterns = patterns,
    .sources = sources};

constexpr int shortest_prefix = 8;

/// The members of a stack share one address.
using Host = std::pair<std::string, int>;

std::map<model::VlanId, std::set<Host>> count_hosts(const graph::Wiring& wiring, const graph::Runs& runs,
                                                    const AddressPlan& plan) {
    std::map<model::VlanId, std::set<Host>> hosts;
    const auto host_of = [&](int device) {
        const auto& stack = wiring.devices[at(device)].row->bridging.stack;
        return stack.empty() ? Host{{}, device} : Host{stack, 0};
    };
    for (int device = 0; device < static_cast<int>(wiring.devices.size()); ++device) {
        const auto* type = wiring.devices[at(device)].type;
        if (!type || type->module) continue;
        for (int port = 0; port < static_cast<int>(type->ports.size()); ++port) {
            if (!wiring.is_network_port({device, port}) || wiring.cables_at({device, port}).empty()) continue;
            if (const auto vlan = vlan_of_address(wiring, runs, device, std::nullopt))
                hosts[*vlan].insert(host_of(device));
            break;
        }
    }
    for (const auto& use : plan.hosts)
        if (use.vlan && !use.querier) hosts[*use.vlan].insert(host_of(use.device));
    return hosts;
}

/// Shorter prefixes until a fifth more hosts would fit.
int fitting_prefix(std::int64_t hosts) {
    int length = 30;
    while (length > shortest_prefix && base::Ipv4Prefix{{}, length}.usable_hosts() * 5 < hosts * 6) --length;
    return length;
}

std::optional<Remedy> widened(const graph::Wiring& wiring, const model::Vlan& vlan, int length) {
    auto row = vlan;
    row.subnet = base::Ipv4Prefix::around(vlan.subnet->network, length);
    for (const auto& other : wiring.design.vlans)
        if (other.id != vlan.id && other.subnet && other.subnet->overlaps(*row.subnet)) return std::nullopt;
    return Remedy{line(STREAMWRIGHT_TEXT("Widen %1 to %2"), {named(vlan.id), base::print(*row.subnet)}),
                  model::AddRows{{row}}};
}

void judge(const graph::Wiring& wiring, const AddressPlan& plan, const model::Vlan& vlan, std::int64_t hosts,
           Findings& out) {
    const auto has = vlan.subnet->usable_hosts();
    const bool gateway_apart =
        vlan.gateway && std::none_of(plan.hosts.begin(), plan.hosts.end(), [&](const HostUse& use) {
            return use.vlan == vlan.id && use.address == *vlan.gateway;
        });
    const auto needed = hosts + (gateway_apart ? 1 : 0);
    if (needed <= has) return;
    const int length = fitting_prefix(needed);
    auto finding = found(
        words.id, Severity::error, {vlan.id},
        {named(vlan.id), needed, base::print(*vlan.subnet), has, needed - has, static_cast<std::int64_t>(length)});
    finding.measured = needed;
    finding.limit = has;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("devices: %1, a gateway beside them: %2, together %3"),
                                 {hosts, needed - hosts, needed}));
    if (auto remedy = widened(wiring, vlan, length)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const AddressPlan& plan, Findings& out) {
    const auto all = static_cast<std::int64_t>(wiring.devices.size());
    const auto could = [&](const model::Vlan& vlan) { return vlan.subnet && all + 1 > vlan.subnet->usable_hosts(); };
    if (std::none_of(wiring.design.vlans.begin(), wiring.design.vlans.end(), could)) return;
    const auto hosts = count_hosts(wiring, runs, plan);
    for (const auto& vlan : wiring.design.vlans)
        if (const auto here = hosts.find(vlan.id); could(vlan) && here != hosts.end())
            judge(wiring, plan, vlan, static_cast<std::int64_t>(here->second.size()), out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::subnet_too_small
