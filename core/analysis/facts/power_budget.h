// Prompt. PoE: what each switch has, reserves and really gives (IEEE 802.3 clauses 33 and 145).
#pragma once

#include "core/base/units.h"
#include "core/graph/runs.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

struct PoeFeed {
    graph::PortAt supply, device;  // switch port and powered port
    int run = 0;
    int wanted_class = 0;
    int given_class = 0;   // highest the supplying port gives
    base::Power reserved;  // at the switch: class power where reserved by class, else draw with cable loss
    base::Power drawn;     // at the device
    friend bool operator==(const PoeFeed&, const PoeFeed&) = default;
};

struct SwitchPower {
    int device = 0;
    std::optional<base::Power> budget;  // none: the type does not state it
    base::Power reserved, drawn;        // sums over its feeds, at the switch
    std::vector<int> feeds;             // indices into PowerBudget::feeds
    friend bool operator==(const SwitchPower&, const SwitchPower&) = default;
};

struct PowerBudget {
    std::vector<PoeFeed> feeds;         // by supply port
    std::vector<SwitchPower> switches;  // that supply anything, by device
    friend bool operator==(const PowerBudget&, const PowerBudget&) = default;
};

PowerBudget find_power_budget(const graph::Wiring&, const graph::Runs&);

}  // namespace streamwright::analysis
