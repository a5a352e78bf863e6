// Frames between the ends of a blocked link go round by the active tree. Where a link of that way is slower than the
// blocked one, the slow link carries what the fast one could. Costs by speed on one scale do so only where the root is
// badly placed; costs set by hand and short costs, which stop at 10 Gb/s, do so anywhere.
#include "core/analysis/rule.h"
#include "core/analysis/tree_help.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::tree_on_slow_link {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 (%2) stands blocked while %3 (%4) carries what goes between its ends."),
    STREAMWRIGHT_TEXT("%1 (%2) stands blocked while %3 (%4) carries what goes between its ends: the path cost set at "
                      "%5 does not follow the speed."),
    STREAMWRIGHT_TEXT("%1 (%2) stands blocked while %3 (%4) carries what goes between its ends: short path costs tell "
                      "no speeds apart above 10 Gb/s.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1Q", "Table 13-4 (path cost by speed)"},
    {"IEEE", "802.1D-1998", "Table 8-5 (short path costs)"},
    {"trade", "switches", "short path cost 1 above 10 Gb/s", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "tree-on-slow-link",
    .severity = Severity::warning,
    .theme = Theme::links,
    .title = "Slow link carries the tree, a faster one is blocked",
    .meaning =
        "The fast trunk lies idle and the slow one drops frames, though the drawing shows "
        "capacity enough.",
    .measured =
        "For each blocked link the way of the spanning tree between its two ends is followed, and "
        "the slowest link on it compared with the blocked one.",
    .remedy =
        "Let path costs follow the speed, on the long scale, and put the root where the fast "
        "links meet.",
    .offers = "Take away the path cost set by hand, or raise that of the slow link.",
    .patterns = patterns,
    .sources = sources};

struct Reader {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    base::BitRate rate(int link) const { return capacity.arcs[at(2 * link)].value_or(base::BitRate{}); }
    bool counts_short(int bridge) const {
        return wiring.devices[at(network.bridges[at(bridge)].devices.front())].type->bridging->long_path_costs == false;
    }
    int bridge(LinkEnd end) const { return end.at_a ? network.links[at(end.link)].a : network.links[at(end.link)].b; }
    std::int64_t usual_cost(LinkEnd end) const {
        return counts_short(bridge(end)) ? short_path_cost(rate(end.link)) : long_path_cost(rate(end.link));
    }
};

/// A port of one of the links whose cost by hand is not what its speed gives.
std::optional<graph::PortAt> cost_by_hand(const Reader& r, const std::vector<int>& links) {
    for (const int link : links)
        for (const bool at_a : {true, false}) {
            const auto& row = r.network.links[at(link)];
            for (const auto port : at_a ? row.a_ports : row.b_ports) {
                const auto* set = r.wiring.port_override(port);
                if (set && set->path_cost && *set->path_cost != r.usual_cost({link, at_a})) return port;
            }
        }
    return std::nullopt;
}

Remedy take_cost_away(const graph::Wiring& wiring, graph::PortAt port) {
    auto row = port_settings(wiring, port);
    row.path_cost.reset();
    return {line(STREAMWRIGHT_TEXT("Let the path cost of %1 follow its speed"), {port_ref(wiring, port)}),
            model::ConfigurePort{std::move(row), nullptr}};
}

/// Of two parallel links the slow one is made dearer than the fast one at the bridge that chooses between them.
std::optional<Remedy> raise_cost(const Reader& r, LinkEnd blocked, int slow) {
    const auto& row = r.network.links[at(slow)];
    const int chooser = r.bridge(blocked), other = r.bridge({blocked.link, !blocked.at_a});
    if (!((row.a == chooser && row.b == other) || (row.a == other && row.b == chooser))) return std::nullopt;
    const auto port = end_port(r.network, {slow, row.a == chooser});
    auto set = port_settings(r.wiring, port);
    const auto cost = std::max(r.usual_cost(blocked), r.usual_cost({slow, row.a == chooser})) + 1;
    set.path_cost = static_cast<int>(cost);
    return Remedy{line(STREAMWRIGHT_TEXT("Set the path cost of %1 to %2"), {port_ref(r.wiring, port), cost}),
                  model::ConfigurePort{std::move(set), nullptr}};
}

void judge(const Reader& r, LinkEnd blocked, int slow, Findings& out) {
    const auto cable = link_cable(r.wiring, r.runs, r.network.links[at(blocked.link)]);
    const auto other = link_cable(r.wiring, r.runs, r.network.links[at(slow)]);
    std::vector<base::Value> values{named(cable), r.rate(blocked.link), named(other), r.rate(slow)};
    const auto set = cost_by_hand(r, {blocked.link, slow});
    const int chooser = r.bridge(blocked);
    const bool saturated =
        !set && r.counts_short(chooser) && short_path_cost(r.rate(slow)) == short_path_cost(r.rate(blocked.link));
    if (set) values.emplace_back(port_ref(r.wiring, *set));
    auto finding = found(words.id, Severity::warning, {cable}, std::move(values), set ? 1 : saturated ? 2 : 0);
    finding.measured = r.rate(slow);
    finding.limit = r.rate(blocked.link);
    finding.terms.push_back(
        line(STREAMWRIGHT_TEXT("slowest link of the way %1 < blocked link %2"), {r.rate(slow), r.rate(blocked.link)}));
    if (set)
        finding.remedies.push_back(take_cost_away(r.wiring, *set));
    else if (saturated)
        if (auto remedy = raise_cost(r, blocked, slow)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const SpanningTrees& trees, Findings& out) {
    const Reader r{wiring, runs, network, capacity};
    std::set<int> told;
    for (const auto& tree : trees.trees) {
        const auto blocked = tree.blocked();
        if (blocked.empty()) continue;
        const auto forest = active_forest(network, tree);
        for (const auto& end : blocked) {
            const auto& link = network.links[at(end.link)];
            if (link.a == link.b || told.count(end.link) != 0) continue;
            const auto way = active_way(network, forest, link.a, link.b);
            if (!way || way->empty()) continue;
            const int slow =
                *std::min_element(way->begin(), way->end(), [&](int x, int y) { return r.rate(x) < r.rate(y); });
            if (r.rate(slow) >= r.rate(end.link)) continue;
            told.insert(end.link);
            judge(r, end, slow, out);
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::tree_on_slow_link
