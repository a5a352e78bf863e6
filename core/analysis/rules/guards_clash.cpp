// Loop guard waits for BPDUs and blocks the port when they cease; an edge port and BPDU guard expect that none ever
// come. One port cannot want both.
#include "core/analysis/rule.h"
#include "core/analysis/tree_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::guards_clash {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 has loop guard, which expects BPDUs, and BPDU guard, which shuts the port at the first one."),
    STREAMWRIGHT_TEXT("%1 has loop guard, which expects BPDUs, and is an edge port, where none come.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1Q", "clause 13.33 (edge ports)"},
    {"trade", "switches", "loop guard on trunks, BPDU guard on edge ports", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "guards-clash",
    .severity = Severity::warning,
    .theme = Theme::links,
    .title = "Guards that exclude each other on one port",
    .meaning = "One of the two guards does nothing, or the port is shut: which, depends on the maker.",
    .measured = "The marks of each port are compared.",
    .remedy =
        "Loop guard belongs on ports to switches, the edge mark and BPDU guard on ports to "
        "endpoints.",
    .offers = "Keep what fits that which the port leads to.",
    .patterns = patterns,
    .sources = sources};

bool leads_to_bridge(const graph::NetworkGraph& network, graph::PortAt port) {
    const auto holds = [&](const std::vector<graph::PortAt>& ports) {
        return std::find(ports.begin(), ports.end(), port) != ports.end();
    };
    return std::any_of(network.links.begin(), network.links.end(),
                       [&](const auto& link) { return holds(link.a_ports) || holds(link.b_ports); });
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, Findings& out) {
    for (const auto& set : wiring.design.port_overrides) {
        if (!set.loop_guard || (!set.bpdu_guard && !set.edge)) continue;
        const auto port = wiring.port_at(set.port);
        if (!port || !wiring.is_network_port(*port)) continue;
        auto row = set;
        const bool trunk = leads_to_bridge(network, *port);
        if (trunk)
            row.edge = row.bpdu_guard = false;
        else
            row.loop_guard = false;
        auto finding = found(words.id, Severity::warning, {port_subject(wiring, *port)}, {port_ref(wiring, *port)},
                             set.bpdu_guard ? 0 : 1);
        finding.remedies.push_back({line(trunk ? STREAMWRIGHT_TEXT("Keep loop guard alone at %1")
                                               : STREAMWRIGHT_TEXT("Take loop guard away from %1"),
                                         {port_ref(wiring, *port)}),
                                    model::ConfigurePort{std::move(row), nullptr}});
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::guards_clash
