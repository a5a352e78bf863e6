// Streams of an AV VLAN where they have no business: in a VLAN for people or on a radio.
//
// What the design says for certain, and nothing else is told:
// - a port that carries the AV VLAN beside a wireless or corporate one, to a device that neither encodes nor decodes
// and
//   has no address in the AV VLAN: an access point, an office socket;
// - a link whose ends put untagged frames into the AV VLAN and into a wireless or corporate one, where the switch at
// the
//   AV end floods streams;
// - a stream sent in a wireless VLAN.
// Trunks between switches may carry any VLAN, and what a snooping switch keeps back does not leak.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::vlan_leaks {

using model::VlanPurpose;

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 to %2 carries %3 beside %4: %5 reach it."),
    STREAMWRIGHT_TEXT("%1 to %2 carries %3 beside %4: whatever is flooded in it, or asked for, reaches it."),
    STREAMWRIGHT_TEXT("%1 joins %3 to %4, and %2 floods streams into it: %5."),
    STREAMWRIGHT_TEXT("%1 is sent in %2, a wireless VLAN: on the air multicast is slow and unacknowledged.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 9119", "section 3 (multicast over wireless media)"},
    {"IETF", "RFC 4541", "section 2.1.2 (flooding)"},
    {"IEEE", "802.1Q", "clause 6.9 (port VLAN identifier)", standards::Standing::memory}};

constexpr RuleWords words{
    .id = "vlan-leaks",
    .theme = Theme::multicast,
    .title = "AV streams leak into a wireless or office VLAN",
    .meaning =
        "One picture stream fills the air time of an access point, and all who work there stand "
        "still; in an office VLAN people can watch what is shown elsewhere.",
    .measured =
        "Ports to other devices that carry an AV VLAN with streams beside a wireless or corporate "
        "VLAN, links that join such VLANs untagged where streams are flooded, and streams sent in "
        "a wireless VLAN. It is an error where streams arrive, a warning where they only may.",
    .remedy =
        "Keep AV VLANs off ports to access points and offices. A device that belongs in the AV VLAN "
        "as well, such as a router, is told by its address there.",
    .offers = "Take the AV VLAN off the port.",
    .patterns = patterns,
    .sources = sources};

struct Reader {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const VlanPaths& paths;
    const Forwarding& forwarding;
    const LinkLoads& loads;
    std::vector<std::optional<VlanPurpose>> purposes;  // per VLAN index
    std::vector<bool> used;                            // per VLAN index: an AV VLAN with streams
    std::vector<const model::Stream*> streams;

    bool foreign(VlanIndex vlan) const {
        const auto purpose = purposes[at(vlan)];
        return purpose == VlanPurpose::wireless || purpose == VlanPurpose::corporate;
    }
    std::vector<base::Ref> names(const std::set<int>& some) const {
        std::vector<base::Ref> refs;
        for (const int stream : some) refs.push_back(named(streams[at(stream)]->id));
        return refs;
    }
};

/// Streams of the VLAN that load the arc, in a preset or when nothing is subscribed.
std::set<int> streams_on(const Reader& r, int arc, VlanIndex vlan) {
    std::set<int> found;
    const auto add = [&](const PresetLoad& load) {
        for (const int stream : load.arcs[at(arc)].streams)
            if (r.forwarding.streams[at(stream)].vlan == vlan) found.insert(stream);
    };
    add(r.loads.idle);
    for (const auto& preset : r.loads.presets) add(preset);
    return found;
}

bool belongs(const Reader& r, int device, model::VlanId vlan) {
    const auto& addresses = r.wiring.devices[at(device)].row->addresses;
    return encodes(r.wiring, device) || decodes(r.wiring, device) ||
           std::any_of(addresses.begin(), addresses.end(), [&](const auto& each) { return each.vlan == vlan; });
}

std::optional<Remedy> take_off(const Reader& r, graph::PortAt port, VlanIndex vlan, VlanIndex other) {
    const auto* set = r.wiring.port_override(port);
    if (!set) return std::nullopt;
    auto row = *set;
    const auto id = *r.paths.vlans[at(vlan)], kept = *r.paths.vlans[at(other)];
    if (std::erase(row.tagged, id) == 0) {
        row.untagged = kept;  // it was the untagged one
        std::erase(row.tagged, kept);
    }
    return Remedy{line(STREAMWRIGHT_TEXT("Take %1 off %2"), {named(id), port_ref(r.wiring, port)}),
                  model::ConfigurePort{std::move(row), nullptr}};
}

void judge_leaf(const Reader& r, int index, Findings& out) {
    const auto& leaf = r.network.leaves[at(index)];
    const auto& carried = r.paths.leaves[at(index)];
    std::vector<VlanIndex> mine, others;
    for (VlanIndex vlan = 0; vlan < static_cast<VlanIndex>(r.purposes.size()); ++vlan) {
        if (!carried.carries(vlan)) continue;
        if (r.used[at(vlan)]) mine.push_back(vlan);
        if (r.foreign(vlan)) others.push_back(vlan);
    }
    if (others.empty()) return;
    for (const auto vlan : mine) {
        const auto id = *r.paths.vlans[at(vlan)];
        if (belongs(r, leaf.device_port.device, id)) continue;
        const auto there = streams_on(r, r.network.leaf_arc(index, false), vlan);
        std::vector<base::Value> values{port_ref(r.wiring, leaf.bridge_port),
                                        named(device_id(r.wiring, leaf.device_port.device)), named(id),
                                        named(*r.paths.vlans[at(others.front())])};
        if (!there.empty()) values.emplace_back(r.names(there));
        auto finding = found(words.id, there.empty() ? Severity::warning : Severity::error,
                             {port_subject(r.wiring, leaf.bridge_port), id}, std::move(values), there.empty() ? 1 : 0);
        if (auto remedy = take_off(r, leaf.bridge_port, vlan, others.front()))
            finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    }
}

/// Streams of the VLAN that come to the bridge.
std::set<int> streams_at(const Reader& r, int bridge, VlanIndex vlan) {
    std::set<int> found;
    for (int s = 0; s < static_cast<int>(r.forwarding.streams.size()); ++s) {
        const auto& way = r.forwarding.streams[at(s)];
        const bool here =
            way.source_bridge == bridge || (way.source_leaf && r.network.leaves[at(*way.source_leaf)].bridge == bridge);
        if (way.vlan == vlan && here) found.insert(s);
    }
    for (int arc = 0; arc < 2 * static_cast<int>(r.network.links.size()); ++arc)
        if (r.network.bridge_after(arc) == bridge) found.merge(streams_on(r, arc, vlan));
    return found;
}

void judge_link(const Reader& r, int index, Findings& out) {
    const auto& link = r.network.links[at(index)];
    const auto& vlans = r.paths.links[at(index)];
    if (!r.capacity.arcs[at(r.network.link_arc(index, true))]) return;
    for (const bool at_a : {true, false}) {
        const auto near = (at_a ? vlans.a : vlans.b).untagged, far = (at_a ? vlans.b : vlans.a).untagged;
        const int bridge = at_a ? link.a : link.b;
        if (!near || !far || !r.used[at(*near)] || !r.foreign(*far)) continue;
        if (!r.forwarding.vlans[at(*near)].bridges[at(bridge)].floods_all) continue;
        const auto there = streams_at(r, bridge, *near);
        if (there.empty()) continue;
        const auto cable = cable_id(r.wiring, r.runs.list[at(link.runs.front())].cables.front());
        const auto id = *r.paths.vlans[at(*near)];
        out.push_back(found(words.id, Severity::error, {cable, id},
                            {named(cable), named(device_id(r.wiring, r.network.bridges[at(bridge)].devices.front())),
                             named(id), named(*r.paths.vlans[at(*far)]), r.names(there)},
                            2));
    }
}

void judge_streams(const Reader& r, Findings& out) {
    for (std::size_t s = 0; s < r.forwarding.streams.size(); ++s) {
        const auto& way = r.forwarding.streams[s];
        if (!way.on_network() || r.purposes[at(way.vlan)] != VlanPurpose::wireless) continue;
        const auto id = r.streams[s]->id;
        out.push_back(found(words.id, Severity::warning, {id}, {named(id), named(*r.paths.vlans[at(way.vlan)])}, 3));
    }
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           Findings& out) {
    Reader r{wiring, runs, network, capacity, paths, forwarding, loads, {}, {}, streams_by_index(wiring)};
    for (const auto& id : paths.vlans) {
        const auto* row = id ? wiring.design.vlans.find(*id) : nullptr;
        r.purposes.push_back(row ? std::optional(row->purpose) : std::nullopt);
    }
    r.used.assign(paths.vlans.size(), false);
    for (const auto& way : forwarding.streams)
        if (way.on_network() && r.purposes[at(way.vlan)] == VlanPurpose::av) r.used[at(way.vlan)] = true;
    judge_streams(r, out);
    if (std::none_of(r.purposes.begin(), r.purposes.end(), [](const auto& purpose) {
            return purpose == VlanPurpose::wireless || purpose == VlanPurpose::corporate;
        }))
        return;
    for (int i = 0; i < static_cast<int>(network.leaves.size()); ++i) judge_leaf(r, i, out);
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i) judge_link(r, i, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::vlan_leaks
