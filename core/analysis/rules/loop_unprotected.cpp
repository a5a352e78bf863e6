// Links that forward all the way round: the spanning tree blocks none of them, because it is off on the way or because
// a bridge there swallows BPDUs. A bridge that hands BPDUs on does no harm while another on the loop runs the tree.
#include "core/analysis/rule.h"
#include "core/analysis/tree_help.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace streamwright::analysis::rules::loop_unprotected {

using catalogue::Bpdus;

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 closes a loop through %2, and nothing blocks it: no switch on it runs a spanning tree."),
    STREAMWRIGHT_TEXT("%1 closes a loop through %2, and nothing blocks it: %3 lets no BPDUs through.")};

constexpr standards::Citation sources[] = {{"IEEE", "802.1Q", "clause 13 (spanning tree protocols)"}};

constexpr RuleWords words{.id = "loop-unprotected",
                          .theme = Theme::links,
                          .title = "Loop that no spanning tree breaks",
                          .meaning =
                              "The first broadcast goes round for ever: within a second every port is full, and "
                              "nothing in the VLAN answers any more.",
                          .measured =
                              "In each VLAN the links that forward at both ends are followed. One that joins two "
                              "switches already joined closes a loop.",
                          .remedy = "Run the spanning tree on the switches of the loop, or take one of its links away.",
                          .offers = "Turn the spanning tree on where it is off, or disable one port of the loop.",
                          .patterns = patterns,
                          .sources = sources};

/// The links that close a loop of forwarding links, each with the rest of its loop.
std::vector<std::pair<int, std::vector<int>>> loops_of(const graph::NetworkGraph& network, const Tree& tree) {
    std::vector<int> parent(network.bridges.size());
    std::iota(parent.begin(), parent.end(), 0);
    const auto top = [&](int bridge) {
        while (parent[at(bridge)] != bridge) bridge = parent[at(bridge)] = parent[at(parent[at(bridge)])];
        return bridge;
    };
    std::vector<std::pair<int, std::vector<int>>> loops;
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
        if (!tree.forwards(i)) continue;
        const int a = top(network.links[at(i)].a), b = top(network.links[at(i)].b);
        if (a != b) {
            parent[at(a)] = b;
            continue;
        }
        loops.emplace_back(i, std::vector<int>{});
    }
    if (loops.empty()) return loops;
    Tree open = tree;  // forwards only over links that close nothing
    for (const auto& [link, rest] : loops) open.a_role[at(link)] = TreeRole::down;
    const auto forest = active_forest(network, open);
    for (auto& [link, rest] : loops)
        rest = active_way(network, forest, network.links[at(link)].a, network.links[at(link)].b)
                   .value_or(std::vector<int>{});
    return loops;
}

/// The bridges of the loop, by index.
std::vector<int> bridges_on(const graph::NetworkGraph& network, int closing, const std::vector<int>& rest) {
    std::set<int> bridges{network.links[at(closing)].a, network.links[at(closing)].b};
    for (const int link : rest) bridges.insert({network.links[at(link)].a, network.links[at(link)].b});
    return {bridges.begin(), bridges.end()};
}

std::optional<Remedy> turn_tree_on(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                   const std::vector<int>& bridges) {
    for (const int bridge : bridges) {
        auto row = device_settings(wiring, network.bridges[at(bridge)].devices.front());
        if (!row.bridging.tree_off) continue;
        row.bridging.tree_off = false;
        return Remedy{line(STREAMWRIGHT_TEXT("Run the spanning tree on %1"), {named(row.id)}),
                      model::ConfigureDevice{std::move(row)}};
    }
    return std::nullopt;
}

/// Disables the closing link at its end on a switch, rather than at one on an endpoint.
std::optional<Remedy> disable_end(const graph::Wiring& wiring, const graph::NetworkGraph& network, int closing) {
    const auto& link = network.links[at(closing)];
    if (link.runs.size() != 1) return std::nullopt;
    const auto port = end_port(network, {closing, !network.bridges[at(link.a)].endpoint});
    auto row = port_settings(wiring, port);
    row.disabled = true;
    return Remedy{line(STREAMWRIGHT_TEXT("Disable %1"), {port_ref(wiring, port)}),
                  model::ConfigurePort{std::move(row), nullptr}};
}

void judge(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network, int closing,
           const std::vector<int>& rest, Findings& out) {
    const auto bridges = bridges_on(network, closing, rest);
    auto dropping = bridges;
    std::erase_if(dropping, [&](int b) { return bpdus_of(wiring, network.bridges[at(b)]) != Bpdus::dropped; });
    const auto cable = link_cable(wiring, runs, network.links[at(closing)]);
    std::vector<base::Value> values{named(cable), bridge_refs(wiring, network, bridges)};
    if (!dropping.empty()) values.emplace_back(bridge_refs(wiring, network, dropping));
    auto finding = found(words.id, Severity::error, {cable}, std::move(values), dropping.empty() ? 0 : 1);
    if (dropping.empty())
        if (auto remedy = turn_tree_on(wiring, network, bridges)) finding.remedies.push_back(std::move(*remedy));
    if (auto remedy = disable_end(wiring, network, closing)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const SpanningTrees& trees, Findings& out) {
    std::set<int> told;
    for (const auto& tree : trees.trees)
        for (const auto& [closing, rest] : loops_of(network, tree))
            if (told.insert(closing).second) judge(wiring, runs, network, closing, rest, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::loop_unprotected
