// Bridges of one spanning tree that count path costs on two scales: 1 Gb/s costs 20,000 on the long one and 4 on the
// short one, so ways through short counters look almost free. A bridge whose link ports all have a cost set by hand
// counts on no scale; a type that does not state its scale is left out.
#include "core/analysis/rule.h"
#include "core/analysis/tree_help.h"

#include <limits>

namespace streamwright::analysis::rules::mixed_cost_scales {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT(
    "One spanning tree counts on two scales: %1 by short path costs (1 Gb/s is 4), %2 by long ones (1 Gb/s is "
    "20000).")};

constexpr standards::Citation sources[] = {{"IEEE", "802.1Q", "Table 13-4 (long path costs)"},
                                           {"IEEE", "802.1D-1998", "Table 8-5 (short path costs)"}};

constexpr RuleWords words{.id = "mixed-cost-scales",
                          .severity = Severity::warning,
                          .theme = Theme::links,
                          .title = "Short and long path costs in one tree",
                          .meaning = "The tree takes slow ways because they look cheap, and the fast trunk is blocked.",
                          .measured =
                              "The scales that the types of the bridges of one spanning tree state are compared. Where "
                              "links stand blocked it is a warning, else advice.",
                          .remedy =
                              "Set all switches to long path costs, or set the cost of the links of the few others by "
                              "hand.",
                          .offers = "Set the path cost by hand where one port does it.",
                          .patterns = patterns,
                          .sources = sources};

/// Bridges of a part by their scale.
struct Scales {
    std::vector<int> counting_short, counting_long;
    bool mixed() const { return !counting_short.empty() && !counting_long.empty(); }
};

Scales scales_of(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkCapacity& capacity,
                 const RootPart& part) {
    Scales scales;
    for (const int bridge : part.bridges) {
        const int device = network.bridges[at(bridge)].devices.front();
        const auto counts_long = wiring.devices[at(device)].type->bridging->long_path_costs;
        if (counts_long) (*counts_long ? scales.counting_long : scales.counting_short).push_back(bridge);
    }
    if (!scales.mixed()) return {};
    const auto by_hand = [&](int bridge) { return uncosted_ends(wiring, network, capacity, bridge).empty(); };
    std::erase_if(scales.counting_short, by_hand);
    std::erase_if(scales.counting_long, by_hand);
    return scales;
}

/// The cost of the other scale set by hand, where these bridges count by one port only.
std::optional<Remedy> set_cost(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                               const LinkCapacity& capacity, const std::vector<int>& bridges, bool to_long) {
    if (bridges.size() != 1) return std::nullopt;
    const auto ends = uncosted_ends(wiring, network, capacity, bridges.front());
    if (ends.size() != 1) return std::nullopt;
    const auto rate = *capacity.arcs[at(network.link_arc(ends.front().link, true))];
    const auto cost = to_long ? long_path_cost(rate) : short_path_cost(rate);
    if (to_long && cost > std::numeric_limits<std::uint16_t>::max()) return std::nullopt;  // its costs have 16 bits
    const auto port = end_port(network, ends.front());
    auto row = port_settings(wiring, port);
    row.path_cost = static_cast<int>(cost);
    return Remedy{line(STREAMWRIGHT_TEXT("Set the path cost of %1 to %2"), {port_ref(wiring, port), cost}),
                  model::ConfigurePort{std::move(row), nullptr}};
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkCapacity& capacity,
           const SpanningTrees& trees, Findings& out) {
    for (const auto& part : root_parts(wiring, network, trees)) {
        const auto scales = scales_of(wiring, network, capacity, part);
        if (!scales.mixed()) continue;
        const auto root = device_id(wiring, network.bridges[at(part.root)].devices.front());
        const int first = scales.counting_short.front();
        auto finding = found(
            words.id, part.blocked.empty() ? Severity::advice : Severity::warning,
            {device_id(wiring, network.bridges[at(first)].devices.front()), root},
            {bridge_refs(wiring, network, scales.counting_short), bridge_refs(wiring, network, scales.counting_long)});
        if (auto remedy = set_cost(wiring, network, capacity, scales.counting_short, true))
            finding.remedies.push_back(std::move(*remedy));
        else if (auto other = set_cost(wiring, network, capacity, scales.counting_long, false))
            finding.remedies.push_back(std::move(*other));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::mixed_cost_scales
