// A port marked for an endpoint leads to another bridge that runs the spanning tree. BPDU guard shuts such a port at
// the first BPDU, also if the other bridge is only started later; an edge port forwards before the tree knows of a
// loop.
#include "core/analysis/rule.h"
#include "core/analysis/tree_help.h"

namespace streamwright::analysis::rules::edge_port_to_bridge {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 has BPDU guard and leads to %2, which sends BPDUs: the port will be shut."),
    STREAMWRIGHT_TEXT("%1 is an edge port and leads to %2, which sends BPDUs: after each start it forwards before the "
                      "spanning tree knows of a loop.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1Q", "clause 13.33 (edge ports)"},
    {"trade", "switches", "BPDU guard shuts a port that hears a BPDU", standards::Standing::practice}};

constexpr RuleWords words{.id = "edge-port-to-bridge",
                          .theme = Theme::links,
                          .title = "Edge port or BPDU guard on the way to a switch",
                          .meaning =
                              "The trunk goes dark moments after the switches have started, and everything behind it "
                              "with it.",
                          .measured =
                              "For each port with either mark the bridges beyond its cable are looked up, also through "
                              "those that only hand BPDUs on. The guard is an error, the edge mark alone a warning.",
                          .remedy = "Keep both marks for ports to endpoints.",
                          .offers = "Take the marks away from the port.",
                          .patterns = patterns,
                          .sources = sources};

void judge(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkCapacity& capacity, LinkEnd end,
           graph::PortAt port, Findings& out) {
    const auto* set = wiring.port_override(port);
    if (!set || (!set->edge && !set->bpdu_guard)) return;
    const auto heard = bridge_heard(wiring, network, capacity, end);
    if (!heard) return;
    const auto other = device_id(wiring, network.bridges[at(*heard)].devices.front());
    const bool guard = set->bpdu_guard;
    auto finding = found(words.id, guard ? Severity::error : Severity::warning, {port_subject(wiring, port), other},
                         {port_ref(wiring, port), named(other)}, guard ? 0 : 1);
    auto row = *set;
    row.edge = row.bpdu_guard = false;
    finding.remedies.push_back({line(STREAMWRIGHT_TEXT("Make %1 a port to a switch"), {port_ref(wiring, port)}),
                                model::ConfigurePort{std::move(row), nullptr}});
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkCapacity& capacity,
           Findings& out) {
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
        const auto& link = network.links[at(i)];
        if (!capacity.arcs[at(network.link_arc(i, true))]) continue;
        for (const bool at_a : {true, false}) {
            if (bpdus_of(wiring, network.bridges[at(at_a ? link.a : link.b)]) != catalogue::Bpdus::run) continue;
            for (const auto port : at_a ? link.a_ports : link.b_ports)
                judge(wiring, network, capacity, {i, at_a}, port, out);
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::edge_port_to_bridge
