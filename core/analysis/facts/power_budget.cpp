#include "core/analysis/facts/power_budget.h"

#include "core/analysis/facts/cable_warmth.h"
#include "core/standards/poe.h"

#include <algorithm>
#include <tuple>

namespace streamwright::analysis {

namespace power_budget_detail {

using catalogue::PoeAllocation;
using catalogue::PoeSide;
using catalogue::SupplySet;
using standards::PoeClass;
using namespace base::literals;

const catalogue::PoePort* poe_at(const graph::Wiring& wiring, const std::optional<graph::PortAt>& port, PoeSide side) {
    if (!port) return nullptr;
    const auto& poe = wiring.port_type(*port).poe;
    return poe && poe->side == side ? &*poe : nullptr;
}

bool could_feed(const graph::Wiring& wiring, const std::optional<graph::PortAt>& near,
                const std::optional<graph::PortAt>& far) {
    return poe_at(wiring, near, PoeSide::supplies) && poe_at(wiring, far, PoeSide::takes);
}

const model::PoeSettings& settings_of(const graph::Wiring& wiring, graph::PortAt port) {
    static const model::PoeSettings plain;
    const auto* set = wiring.port_override(port);
    return set ? set->poe : plain;
}

/// The highest class that the port gives: that of its type, or the highest within the limit set on it.
const PoeClass* given_class(const catalogue::PoePort& port, const model::PoeSettings& set) {
    const auto* given = standards::poe_class(port.poe_class);
    if (!given || set.off) return nullptr;
    if (!set.limit || given->at_supply <= *set.limit) return given;
    const PoeClass* within = nullptr;
    for (const auto& each : standards::poe_classes())
        if (each.number > 0 && each.at_supply <= *set.limit && each.at_supply <= given->at_supply) within = &each;
    return within;
}

std::int64_t assumed_microohm(const PoeClass& poe, base::Length length) {
    return std::int64_t{standards::poe_type(poe.type)->loop_milliohm} * 1000 * (length.count() / 1000) / 100'000;
}

/// Resistance by gauge where every cable states it; else what IEEE 802.3 assumes for the length; else for 100 m.
PoeCable cable_of(const graph::Wiring& wiring, const graph::Run& run, const PoeClass& poe) {
    PoeCable cable{{}, true, true, cable_warmth(wiring, run).total(), 0};
    for (const int index : run.cables) {
        const auto& each = wiring.cables[static_cast<std::size_t>(index)];
        const auto length = each.row->length ? each.row->length : each.type ? each.type->made_length : std::nullopt;
        cable.length_known = cable.length_known && length;
        if (!length) continue;
        cable.length += *length;
        const auto part = each.type && each.type->awg
                              ? standards::loop_microohm(*each.type->awg, *length, poe.pairs, cable.warmth)
                              : std::nullopt;
        cable.by_gauge = cable.by_gauge && part;
        cable.microohm += part.value_or(0);
    }
    if (!cable.length_known) cable.length = 100_m;
    cable.by_gauge = cable.by_gauge && cable.length_known;
    if (cable.by_gauge) return cable;
    cable.microohm = assumed_microohm(poe, cable.length);
    cable.warmth = {};
    return cable;
}

/// What the port gives away so that the device gets what it draws; never more than its class.
base::Power at_supply(base::Power drawn, const PoeClass& poe, std::int64_t microohm) {
    const auto flow = standards::feed_device(drawn, standards::poe_type(poe.type)->least_supply_mv, microohm);
    return flow ? std::min(flow->at_supply, poe.at_supply) : poe.at_supply;
}

/// Devices that ask by LLDP are set aside what they ask for and the loss of the longest cable; others their class.
base::Power set_aside(PoeAllocation by, const PoeFeed& feed, const PoeClass& got, bool asks) {
    if (by == PoeAllocation::by_draw) return feed.flowing;
    if (by == PoeAllocation::by_lldp && asks) return at_supply(feed.drawn, got, assumed_microohm(got, 100_m));
    return got.at_supply;
}

std::optional<PoeAllocation> allocation_of(const graph::WiredDevice& bridge) {
    if (bridge.row->bridging.poe_allocation) return bridge.row->bridging.poe_allocation;
    const auto& facts = bridge.type->bridging;
    if (!facts || !facts->poe_by_class) return std::nullopt;
    return *facts->poe_by_class ? PoeAllocation::by_class : PoeAllocation::by_draw;
}

void add_arrival(PoeFeed& feed, const PoeClass& got) {
    feed.supply_mv = standards::poe_type(got.type)->least_supply_mv;
    feed.arriving = standards::feed_from_supply(got.at_supply, feed.supply_mv, feed.cable.microohm).at_device;
    const auto flow = standards::feed_device(feed.drawn, feed.supply_mv, feed.cable.microohm);
    feed.flowing = flow ? std::min(flow->at_supply, got.at_supply) : got.at_supply;
    feed.device_mv = flow ? flow->device_mv : 0;
}

std::optional<PoeFeed> feed_over(const graph::Wiring& wiring, const graph::Run& run, int index, bool from_a) {
    const auto& near = from_a ? run.a : run.b;
    const auto& far = from_a ? run.b : run.a;
    if (!could_feed(wiring, near, far)) return std::nullopt;
    const auto* supplies = poe_at(wiring, near, PoeSide::supplies);
    const auto* takes = poe_at(wiring, far, PoeSide::takes);
    const auto& set = settings_of(wiring, *near);
    const auto* wanted = standards::poe_class(takes->poe_class);
    const auto* given = given_class(*supplies, set);
    if (!wanted || !given) return std::nullopt;
    const auto& got = given->at_supply < wanted->at_supply ? *given : *wanted;
    PoeFeed feed{*near, *far, index, wanted->number, given->number, got.number, set.limit, set.priority};
    feed.drawn = takes->draw.count() > 0 ? std::min(takes->draw, got.at_device) : got.at_device;
    feed.cable = cable_of(wiring, run, got);
    add_arrival(feed, got);
    const auto by = allocation_of(wiring.devices[static_cast<std::size_t>(near->device)]);
    feed.reserved = set_aside(by.value_or(PoeAllocation::by_class), feed, got, takes->lldp.value_or(false));
    return feed;
}

SwitchPower supplier_of(const graph::WiredDevice& bridge, int device) {
    SwitchPower supplier{device, bridge.row->bridging.supplies, allocation_of(bridge), {}, {}, {}, {}, {}};
    const auto& facts = bridge.type->bridging;
    if (!facts) return supplier;
    const bool added = supplier.supplies == SupplySet::two_added;
    supplier.budget = added ? facts->poe_budget_two : facts->poe_budget;
    if (added) supplier.one_supply = facts->poe_budget;
    return supplier;
}

/// Feeds are large: their order is found before any is moved.
std::vector<PoeFeed> by_supply(const std::vector<PoeFeed>& feeds) {
    std::vector<std::tuple<graph::PortAt, graph::PortAt, int, const PoeFeed*>> order;
    order.reserve(feeds.size());
    for (const auto& feed : feeds) order.emplace_back(feed.supply, feed.device, feed.run, &feed);
    std::sort(order.begin(), order.end());
    std::vector<PoeFeed> sorted;
    sorted.reserve(feeds.size());
    for (const auto& each : order) sorted.push_back(*std::get<const PoeFeed*>(each));
    return sorted;
}

void put_in_order(PowerBudget& budget) {
    for (auto& supplier : budget.switches) {
        std::stable_sort(supplier.feeds.begin(), supplier.feeds.end(), [&](int a, int b) {
            return budget.feeds[static_cast<std::size_t>(a)].priority >
                   budget.feeds[static_cast<std::size_t>(b)].priority;
        });
        if (!supplier.budget) continue;
        for (const int feed : supplier.feeds) budget.feeds[static_cast<std::size_t>(feed)].starts = false;
        for (const int feed : served_by(budget, supplier, *supplier.budget))
            budget.feeds[static_cast<std::size_t>(feed)].starts = true;
    }
}

}  // namespace power_budget_detail

PowerBudget find_power_budget(const graph::Wiring& wiring, const graph::Runs& runs) {
    using namespace power_budget_detail;
    PowerBudget budget;
    const auto could = [&](const graph::Run& run) {
        return could_feed(wiring, run.a, run.b) || could_feed(wiring, run.b, run.a);
    };
    graph::ByKind<bool> feeding(runs);
    std::vector<PoeFeed> feeds;
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        if (!feeding.of(i, could)) continue;
        for (const bool from_a : {true, false})
            if (auto feed = feed_over(wiring, runs.list[i], static_cast<int>(i), from_a)) feeds.push_back(*feed);
    }
    budget.feeds = by_supply(feeds);
    for (int i = 0; i < static_cast<int>(budget.feeds.size()); ++i) {
        const auto& feed = budget.feeds[static_cast<std::size_t>(i)];
        const int device = feed.supply.device;
        if (budget.switches.empty() || budget.switches.back().device != device)
            budget.switches.push_back(supplier_of(wiring.devices[static_cast<std::size_t>(device)], device));
        auto& supplier = budget.switches.back();
        supplier.reserved += feed.reserved;
        supplier.drawn += feed.flowing;
        supplier.feeds.push_back(i);
    }
    put_in_order(budget);
    return budget;
}

std::vector<int> served_by(const PowerBudget& power, const SwitchPower& supplier, base::Power budget) {
    std::vector<int> served;
    base::Power sum;
    for (const int feed : supplier.feeds) {
        const auto reserved = power.feeds[static_cast<std::size_t>(feed)].reserved;
        if (sum + reserved > budget) continue;
        sum += reserved;
        served.push_back(feed);
    }
    return served;
}

}  // namespace streamwright::analysis
