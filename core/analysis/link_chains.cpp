// A cable: what it measures and may, and how full its link gets each way.
#include "core/analysis/chain_parts.h"
#include "core/analysis/load_words.h"
#include "core/analysis/rule_help.h"
#include "core/graph/run_arcs.h"

namespace streamwright::analysis {

namespace link_chains_detail {

void add_reach(const Facts& facts, int run, std::vector<NumberChain>& out) {
    const auto& length = facts.get<CableLengths>().runs[at(run)];
    NumberChain chain{line(STREAMWRIGHT_TEXT("Length and limit"), {}), {}};
    if (length.permanent) tell(chain, STREAMWRIGHT_TEXT("Installed part"), {}, *length.permanent);
    if (length.leads) tell(chain, STREAMWRIGHT_TEXT("Leads"), {}, *length.leads);
    if (length.channel) tell(chain, STREAMWRIGHT_TEXT("Whole way"), {}, *length.channel, true);
    for (auto& each : limit_chain(facts, run)) chain.lines.push_back(std::move(each));
    keep(std::move(chain), out);
}

void add_worst(const Facts& facts, int arc, base::BitRate capacity, NumberChain& chain) {
    const auto& worst = facts.get<WorstCase>().arcs;
    if (!facts.deferred_known || at(arc) >= worst.size() || worst[at(arc)].wire.is_zero()) return;
    const auto rate = worst[at(arc)].wire;
    tell(chain,
         worst[at(arc)].at_most ? STREAMWRIGHT_TEXT("Whatever is routed, at most")
                                : STREAMWRIGHT_TEXT("Whatever is routed, at worst"),
         {}, rate.ceil(), false, rate > base::Rate(capacity));
}

void add_load(const Facts& facts, int arc, std::vector<NumberChain>& out) {
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& network = facts.get<graph::NetworkGraph>();
    const auto& capacity = facts.get<LinkCapacity>().arcs[at(arc)];
    const auto& loads = facts.get<LinkLoads>();
    if (!capacity) return;
    const auto ends = graph::arc_ends(wiring, facts.get<graph::Runs>(), network, arc);
    NumberChain chain{line(STREAMWRIGHT_TEXT("Load from %1 to %2"), {named(ends.from), named(ends.to)}), {}};
    const auto* fullest = fullest_preset(loads, arc);
    const auto& load = fullest ? *fullest : loads.idle;
    const auto& on_arc = load.arcs[at(arc)];
    for (auto& term : load_terms(wiring, network, facts.get<VlanPaths>(), facts.get<Forwarding>(), arc, on_arc.streams))
        tell(chain, std::move(term.pattern), std::move(term.values), std::string());
    if (fullest)
        tell(chain, STREAMWRIGHT_TEXT("Sum in preset %1, the fullest"), {named(load.preset)}, on_arc.whole, true,
             on_arc.wire > base::Rate(*capacity));
    else
        tell(chain, STREAMWRIGHT_TEXT("Sum, nothing subscribed"), {}, on_arc.whole, true);
    add_worst(facts, arc, *capacity, chain);
    tell(chain, STREAMWRIGHT_TEXT("The link carries"), {}, *capacity);
    keep(std::move(chain), out);
}

}  // namespace link_chains_detail

void add_link_chains(const Facts& facts, int cable, std::vector<NumberChain>& out) {
    const int run = facts.get<graph::Runs>().run_of_cable[at(cable)];
    link_chains_detail::add_reach(facts, run, out);
    for (const int arc : graph::arcs_of_run(facts.get<graph::NetworkGraph>(), run))
        link_chains_detail::add_load(facts, arc, out);
}

}  // namespace streamwright::analysis
