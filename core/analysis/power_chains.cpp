// PoE: what arrives at a device over its cable, and what a switch has set aside of its budget.
#include "core/analysis/chain_parts.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis {

namespace power_chains_detail {

NumberChain fed(const graph::Wiring& wiring, const PoeFeed& feed) {
    NumberChain chain{line(STREAMWRIGHT_TEXT("Power from %1"), {port_ref(wiring, feed.supply)}), {}};
    tell(chain, STREAMWRIGHT_TEXT("Class asked for"), {}, std::int64_t{feed.wanted_class});
    tell(chain, STREAMWRIGHT_TEXT("Class that the port gives at most"), {}, std::int64_t{feed.given_class});
    tell(chain, STREAMWRIGHT_TEXT("Set aside at the switch"), {}, feed.reserved);
    tell(chain, STREAMWRIGHT_TEXT("Drawn at the device"), {}, feed.drawn);
    tell(chain,
         feed.cable.length_known ? STREAMWRIGHT_TEXT("Loop of %1 of cable, ohm")
                                 : STREAMWRIGHT_TEXT("Loop of %1 of cable, length not known, ohm"),
         {feed.cable.length}, base::print_decimal((feed.cable.microohm + 5'000) / 10'000, 2));
    tell(chain, STREAMWRIGHT_TEXT("At the switch while that is drawn"), {}, feed.flowing);
    tell(chain, STREAMWRIGHT_TEXT("Arriving at most"), {}, feed.arriving, true, feed.arriving < feed.drawn);
    return chain;
}

NumberChain budget_of(const graph::Wiring& wiring, const PowerBudget& power, const SwitchPower& supplier) {
    NumberChain chain{line(STREAMWRIGHT_TEXT("Power that %1 gives"), {named(device_id(wiring, supplier.device))}), {}};
    for (const int index : supplier.feeds) {
        const auto& feed = power.feeds[at(index)];
        tell(chain, STREAMWRIGHT_TEXT("%1, set aside"), {port_ref(wiring, feed.device)}, feed.reserved, false,
             !feed.starts);
    }
    tell(chain, STREAMWRIGHT_TEXT("Set aside"), {}, supplier.reserved, true,
         supplier.budget && supplier.reserved > *supplier.budget);
    if (supplier.budget) tell(chain, STREAMWRIGHT_TEXT("Budget"), {}, *supplier.budget);
    if (supplier.one_supply) tell(chain, STREAMWRIGHT_TEXT("Budget with one supply"), {}, *supplier.one_supply);
    return chain;
}

}  // namespace power_chains_detail

void add_power_chains(const Facts& facts, int device, std::vector<NumberChain>& out) {
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& power = facts.get<PowerBudget>();
    for (const auto& feed : power.feeds)
        if (feed.device.device == device) keep(power_chains_detail::fed(wiring, feed), out);
    for (const auto& supplier : power.switches)
        if (supplier.device == device) keep(power_chains_detail::budget_of(wiring, power, supplier), out);
}

}  // namespace streamwright::analysis
