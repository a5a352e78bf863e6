// Prompt. PoE: what each switch has, sets aside and really gives, port by port, and what arrives at the far end of the
// cable (IEEE 802.3 clauses 33, 79 and 145).
#pragma once

#include "core/base/units.h"
#include "core/graph/runs.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace streamwright::analysis {

/// The cable between a supplying port and a device.
struct PoeCable {
    base::Length length;
    bool length_known = false;  // else the 100 m that the classes assume
    bool by_gauge = false;      // from the gauge of each cable and its warmth; else as IEEE 802.3 assumes
    base::Temperature warmth;   // of the copper; only where by_gauge
    std::int64_t microohm = 0;  // out and back
    friend bool operator==(const PoeCable&, const PoeCable&) = default;
};

struct PoeFeed {
    graph::PortAt supply, device;  // switch port and powered port
    int run = 0;
    int wanted_class = 0;
    int given_class = 0;    // highest that the supplying port gives, by its type and the limit set on it
    int granted_class = 0;  // the lesser of the two
    std::optional<base::Power> port_limit;
    model::PoePriority priority = model::PoePriority::low;
    base::Power reserved;  // at the switch, set aside by class, by draw or by what the device asks for
    base::Power drawn;     // at the device
    base::Power flowing;   // at the switch, while the device draws that: the draw and the cable's loss
    base::Power arriving;  // most that is left at the device when the port gives all of the granted class
    PoeCable cable;
    std::int64_t supply_mv = 0, device_mv = 0;  // least at the port; at the device while it draws; 0: breaks down
    bool starts = true;                         // the budget lasts for it, in the order of priority and ports
    friend bool operator==(const PoeFeed&, const PoeFeed&) = default;
};

struct SwitchPower {
    int device = 0;
    catalogue::SupplySet supplies = catalogue::SupplySet::one;
    std::optional<catalogue::PoeAllocation> allocation;  // none: neither set nor stated by the type
    std::optional<base::Power> budget;                   // none: the type does not state it for these supplies
    std::optional<base::Power> one_supply;               // two that add up: what is left when one fails
    base::Power reserved, drawn;                         // sums over its feeds, at the switch
    std::vector<int> feeds;                              // indices into PowerBudget::feeds, those served first before
    friend bool operator==(const SwitchPower&, const SwitchPower&) = default;
};

struct PowerBudget {
    std::vector<PoeFeed> feeds;         // by supply port
    std::vector<SwitchPower> switches;  // that supply anything, by device
    friend bool operator==(const PowerBudget&, const PowerBudget&) = default;
};

PowerBudget find_power_budget(const graph::Wiring&, const graph::Runs&);

/// How many of the switch's devices a budget lasts for: critical before high before low, then by port; one that no
/// longer fits is passed over and the next is tried (common practice; IEEE 802.3 leaves the order open).
std::vector<int> served_by(const PowerBudget& power, const SwitchPower& supplier, base::Power budget);

}  // namespace streamwright::analysis
