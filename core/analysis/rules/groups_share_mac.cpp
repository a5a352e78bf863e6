// 32 groups share each Ethernet multicast address (RFC 1112 6.4); switches that look up by it cannot tell them apart.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::groups_share_mac {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 (%2) and %3 (%4) share the MAC address %5; switches that look up streams by MAC address send "
                      "both wherever one is wanted."),
    STREAMWRIGHT_TEXT(
        "%1 (%2) and %3 (%4) share the MAC address %5. The switches here look up by IP address and keep them "
        "apart; the receivers' network chips do not.")};

constexpr standards::Citation sources[] = {{"IETF", "RFC 1112", "section 6.4"},
                                           {"IETF", "RFC 9166", "forwarding-table-type"}};

constexpr RuleWords words{.id = "groups-share-mac",
                          .theme = Theme::multicast,
                          .title = "Groups that share a MAC address",
                          .meaning =
                              "Only the low 23 bits of a group reach the MAC address. A decoder that asked for one "
                              "stream gets both, and its port overfills.",
                          .measured =
                              "The low 23 bits of each group make its MAC address; those of all streams that can "
                              "meet in one VLAN are compared. A warning where all switches there look up by IP "
                              "address.",
                          .remedy = "Give one of the two streams a group whose low 23 bits nobody else uses.",
                          .offers = "Give the second stream a group with a MAC address of its own.",
                          .patterns = patterns,
                          .sources = sources};

/// Whether every bridge of the VLAN that snoops looks up by IP address, as far as types state it.
bool apart_by_ip(const VlanPaths& paths, const Forwarding& forwarding, const std::optional<model::VlanId>& vlan) {
    const auto index = paths.index(vlan);
    if (!index || at(*index) >= forwarding.vlans.size()) return false;
    const auto& bridges = forwarding.vlans[at(*index)].bridges;
    return std::all_of(bridges.begin(), bridges.end(), [](const BridgeSnooping& bridge) {
        return !bridge.in_vlan || !bridge.snoops || (bridge.lookup == catalogue::GroupLookup::ip && !bridge.unstated);
    });
}

void check(const graph::Wiring& wiring, const AddressPlan& plan, const VlanPaths& paths, const Forwarding& forwarding,
           Findings& out) {
    auto groups = plan.groups;
    std::sort(groups.begin(), groups.end(), [](const GroupUse& a, const GroupUse& b) {
        return std::tie(a.mac, a.group, a.stream) < std::tie(b.mac, b.group, b.stream);
    });
    const auto streams = streams_by_index(wiring);
    for (std::size_t i = 0; i < groups.size(); ++i)
        for (std::size_t j = i + 1; j < groups.size() && groups[j].mac == groups[i].mac; ++j) {
            const auto &a = groups[i], &b = groups[j];
            if (a.group == b.group || (a.vlan && b.vlan && a.vlan != b.vlan)) continue;
            const bool apart = apart_by_ip(paths, forwarding, a.vlan ? a.vlan : b.vlan);
            const auto &first = *streams[at(a.stream)], &second = *streams[at(b.stream)];
            auto finding = found(
                words.id, apart ? Severity::warning : Severity::error, {first.id, second.id},
                {named(first.id), base::print(a.group), named(second.id), base::print(b.group), base::print(a.mac)},
                apart ? 1 : 0);
            if (auto remedy = other_group(plan, second)) finding.remedies.push_back(std::move(*remedy));
            out.push_back(std::move(finding));
            break;  // the next of a longer chain is named with its own neighbour
        }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::groups_share_mac
