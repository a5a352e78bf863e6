// A switch type that does not state what decides where streams go: what the check says of it is "not known".
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <set>

namespace streamwright::analysis::rules::switch_facts_unknown {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("The type of %1 does not state %2: where streams go from there on is not known.")};

constexpr RuleWords words{.id = "switch-facts-unknown",
                          .severity = Severity::advice,
                          .theme = Theme::multicast,
                          .title = "Switch facts not known",
                          .meaning =
                              "Loads behind this switch are a guess until its type says how it treats "
                              "multicast.",
                          .measured =
                              "For each switch on the way of streams its type is asked for snooping, unknown groups,"
                              " lookup, flooding without a querier and queries from 0.0.0.0.",
                          .remedy = "Ask the maker, or try it on a bench, and write it into the type.",
                          .patterns = patterns,
                          .no_source = "Says only what the check cannot know."};

/// What the type leaves out of what forwarding reads.
std::string left_out(const catalogue::SwitchFacts& facts) {
    std::string text;
    const auto add = [&](bool stated, const char* name) {
        if (!stated) text += (text.empty() ? "" : ", ") + std::string(name);
    };
    add(facts.snooping.has_value(), "IGMP snooping");
    if (facts.snooping == false) return text;
    add(facts.unknown_groups.has_value(), "unknown groups");
    add(facts.lookup.has_value(), "lookup by IP or MAC address");
    add(facts.floods_without_querier.has_value(), "flooding without a querier");
    add(facts.zero_query_makes_router_port.has_value(), "queries from 0.0.0.0");
    return text;
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const Forwarding& forwarding,
           Findings& out) {
    std::set<VlanIndex> used;
    for (const auto& way : forwarding.streams)
        if (way.source_leaf || way.source_bridge) used.insert(way.vlan);
    for (std::size_t bridge = 0; bridge < network.bridges.size(); ++bridge) {
        bool unstated = false;
        for (const auto vlan : used) {
            const auto& snooping = forwarding.vlans[at(vlan)].bridges[bridge];
            unstated = unstated || (snooping.in_vlan && snooping.unstated);
        }
        if (!unstated) continue;
        const int device = network.bridges[bridge].devices.front();
        const auto* type = wiring.devices[at(device)].type;
        auto text = type && type->bridging ? left_out(*type->bridging) : std::string();
        if (text.empty()) text = "how it treats multicast";
        const auto id = device_id(wiring, device);
        out.push_back(found(words.id, Severity::advice, {id}, {named(id), std::move(text)}));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::switch_facts_unknown
