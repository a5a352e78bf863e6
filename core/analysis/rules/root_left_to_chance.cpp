// Several bridges share the best priority, so the lowest bridge address among them makes the root: often the oldest
// switch of the house. Without a loop it only decides who speaks first; with one it decides which links stand blocked.
#include "core/analysis/rule.h"
#include "core/analysis/tree_help.h"
#include "core/standards/spanning_tree_costs.h"

#include <algorithm>
#include <tuple>

namespace streamwright::analysis::rules::root_left_to_chance {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 is root of the spanning tree by chance: %2 share priority %3, and the lowest bridge address "
                      "decides."),
    STREAMWRIGHT_TEXT("%1 is root of the spanning tree by chance: %2 share priority %3, and the lowest bridge address "
                      "decides. By that choice %4 is blocked."),
    STREAMWRIGHT_TEXT(
        "Which of %2 becomes root of the spanning tree is left to chance: they share priority %3, and the "
        "lowest bridge address decides.")};

constexpr standards::Citation sources[] = {{"IEEE", "802.1Q", "clause 13 (the lowest bridge identifier is root)"},
                                           {"IEEE", "802.1Q", "Table 13-3 (priority 32768 unless set, steps of 4096)"}};

constexpr RuleWords words{
    .id = "root-left-to-chance",
    .severity = Severity::warning,
    .theme = Theme::links,
    .title = "Root of the spanning tree left to chance",
    .meaning =
        "The oldest switch may become root, and the trunk between the fast ones is blocked. A "
        "switch exchanged later moves the root, and with it the way of every stream.",
    .measured =
        "For each spanning tree of more than one switch the priority of its root is compared with "
        "those of the others. Where links stand blocked it is a warning, else advice.",
    .remedy = "Give the switch in the middle of the network a lower priority than all others.",
    .offers = "Lower the priority of the switch with the fastest links to others.",
    .patterns = patterns,
    .sources = sources};

/// The switch whose links to other bridges are fastest together; of equals the present root, then the first. The
/// built-in switch of an endpoint only where there is no other.
int best_placed(const graph::NetworkGraph& network, const LinkCapacity& capacity, const RootPart& part) {
    std::vector<std::int64_t> speed(network.bridges.size(), 0);
    for (int i = 0; i < static_cast<int>(network.links.size()); ++i) {
        const auto& link = network.links[at(i)];
        const auto& rate = capacity.arcs[at(network.link_arc(i, true))];
        if (!rate || link.a == link.b) continue;
        speed[at(link.a)] += rate->count();
        speed[at(link.b)] += rate->count();
    }
    const auto place = [&](int bridge) {
        return std::tuple(!network.bridges[at(bridge)].endpoint, speed[at(bridge)], bridge == part.root);
    };
    return *std::max_element(part.bridges.begin(), part.bridges.end(),
                             [&](int a, int b) { return place(a) < place(b); });
}

bool has_address(const graph::Wiring& wiring, const graph::NetworkGraph& network, int bridge) {
    const auto& devices = network.bridges[at(bridge)].devices;
    return std::any_of(devices.begin(), devices.end(),
                       [&](int device) { return wiring.devices[at(device)].row->bridging.address.has_value(); });
}

std::optional<Remedy> lower_priority(const graph::Wiring& wiring, const graph::Bridge& bridge, int lowest) {
    if (lowest < standards::bridge_priority_step) return std::nullopt;  // nothing is below 0
    const int priority = lowest > standards::bridge_priority_step ? standards::bridge_priority_step : 0;
    auto row = device_settings(wiring, bridge.devices.front());
    row.bridging.priority = priority;
    return Remedy{line(STREAMWRIGHT_TEXT("Give %1 priority %2"), {named(row.id), std::int64_t{priority}}),
                  model::ConfigureDevice{std::move(row)}};
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const SpanningTrees& trees, Findings& out) {
    for (const auto& part : root_parts(wiring, network, trees)) {
        const int lowest = bridge_priority(wiring, network.bridges[at(part.root)]);
        auto equal = part.bridges;
        std::erase_if(equal, [&](int b) { return bridge_priority(wiring, network.bridges[at(b)]) != lowest; });
        if (equal.size() < 2) continue;
        const auto root = device_id(wiring, network.bridges[at(part.root)].devices.front());
        std::vector<base::Value> values{named(root), bridge_refs(wiring, network, equal), std::int64_t{lowest}};
        std::vector<base::Ref> blocked;
        for (const int link : part.blocked) blocked.push_back(named(link_cable(wiring, runs, network.links[at(link)])));
        if (!blocked.empty()) values.emplace_back(blocked);
        const bool known =
            std::all_of(equal.begin(), equal.end(), [&](int b) { return has_address(wiring, network, b); });
        auto finding =
            found(words.id, blocked.empty() ? Severity::advice : Severity::warning, {root}, std::move(values),
                  !known            ? 2
                  : blocked.empty() ? 0
                                    : 1);
        const auto& best = network.bridges[at(best_placed(network, capacity, part))];
        if (auto remedy = lower_priority(wiring, best, lowest)) finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::root_left_to_chance
