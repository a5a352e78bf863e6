#include "core/analysis/facts/power_budget.h"

#include "core/standards/poe.h"

#include <algorithm>
#include <tuple>

namespace streamwright::analysis {

namespace power_budget_detail {

using catalogue::PoeSide;
using namespace base::literals;

const catalogue::PoePort* poe_at(const graph::Wiring& wiring, const std::optional<graph::PortAt>& port, PoeSide side) {
    if (!port) return nullptr;
    const auto& poe = wiring.port_type(*port).poe;
    return poe && poe->side == side ? &*poe : nullptr;
}

/// Length of the run; without one the 100 m that IEEE 802.3 assumes.
base::Length length_of(const graph::Wiring& wiring, const graph::Run& run) {
    base::Length sum;
    for (const int index : run.cables) {
        const auto& cable = wiring.cables[static_cast<std::size_t>(index)];
        if (cable.row->length)
            sum += *cable.row->length;
        else if (cable.type && cable.type->made_length)
            sum += *cable.type->made_length;
        else
            return 100_m;
    }
    return sum;
}

/// What the port gives away so that the device gets what it draws; never more than its class.
base::Power with_cable_loss(base::Power drawn, const standards::PoeClass& poe, base::Length length) {
    const auto* type = standards::poe_type(poe.type);
    const auto microohm = std::int64_t{type->loop_milliohm} * 1000 * (length.count() / 1000) / 100'000;
    const auto flow = standards::feed_device(drawn, type->least_supply_mv, microohm);
    return flow ? std::min(flow->at_supply, poe.at_supply) : poe.at_supply;
}

/// The class that the device is really given: its own, or the port's where that is less.
standards::PoeClass granted(const standards::PoeClass& wanted, const standards::PoeClass& given) {
    return given.at_supply < wanted.at_supply ? given : wanted;
}

struct Sums {
    PoeFeed feed;
    base::Power at_switch;
};

std::optional<Sums> feed_over(const graph::Wiring& wiring, const graph::Run& run, int index, bool from_a) {
    const auto& near = from_a ? run.a : run.b;
    const auto& far = from_a ? run.b : run.a;
    const auto* supplies = poe_at(wiring, near, PoeSide::supplies);
    const auto* takes = poe_at(wiring, far, PoeSide::takes);
    if (!supplies || !takes) return std::nullopt;
    const auto* wanted = standards::poe_class(takes->poe_class);
    const auto* given = standards::poe_class(supplies->poe_class);
    if (!wanted || !given) return std::nullopt;
    const auto got = granted(*wanted, *given);
    const auto drawn = takes->draw.count() > 0 ? std::min(takes->draw, got.at_device) : got.at_device;
    const auto at_switch = with_cable_loss(drawn, got, length_of(wiring, run));
    const auto* type = wiring.devices[static_cast<std::size_t>(near->device)].type;
    const bool by_draw = type->bridging && type->bridging->poe_by_class == false;
    return Sums{{*near, *far, index, takes->poe_class, supplies->poe_class, by_draw ? at_switch : got.at_supply, drawn},
                at_switch};
}

}  // namespace power_budget_detail

PowerBudget find_power_budget(const graph::Wiring& wiring, const graph::Runs& runs) {
    using namespace power_budget_detail;
    std::vector<Sums> feeds;
    for (int i = 0; i < static_cast<int>(runs.list.size()); ++i)
        for (const bool from_a : {true, false})
            if (auto feed = feed_over(wiring, runs.list[static_cast<std::size_t>(i)], i, from_a))
                feeds.push_back(*feed);
    std::sort(feeds.begin(), feeds.end(), [](const Sums& a, const Sums& b) {
        return std::tie(a.feed.supply, a.feed.device, a.feed.run) < std::tie(b.feed.supply, b.feed.device, b.feed.run);
    });
    PowerBudget budget;
    for (const auto& [feed, at_switch] : feeds) {
        if (budget.switches.empty() || budget.switches.back().device != feed.supply.device) {
            const auto* type = wiring.devices[static_cast<std::size_t>(feed.supply.device)].type;
            budget.switches.push_back(
                {feed.supply.device, type->bridging ? type->bridging->poe_budget : std::nullopt, {}, {}, {}});
        }
        auto& supplier = budget.switches.back();
        supplier.reserved += feed.reserved;
        supplier.drawn += at_switch;
        supplier.feeds.push_back(static_cast<int>(budget.feeds.size()));
        budget.feeds.push_back(feed);
    }
    return budget;
}

}  // namespace streamwright::analysis
