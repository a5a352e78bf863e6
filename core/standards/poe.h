// Power over Ethernet by class (IEEE 802.3 clauses 33 and 145), and the arithmetic of a feed over its cable.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <optional>
#include <span>

namespace streamwright::standards {

struct PoeClass {
    int number;
    base::Power supplied;  // at the supplying port
    base::Power arriving;  // at the device, over 100 m
    int pairs;             // powered
    Citation source;
};

std::span<const PoeClass> poe_classes();
std::optional<PoeClass> poe_class(int number);

/// A feed solved from what the device draws: I = (V - sqrt(V^2 - 4 P R)) / 2R.
struct PoeFeedSolution {
    base::Power supplied;  // at the port
    base::Power lost;      // in the cable
};
/// Volts in thousandths, loop resistance in thousandths of an ohm. Nothing: the cable cannot carry that power.
std::optional<PoeFeedSolution> solve_feed(base::Power drawn, std::int64_t supply_mV, std::int64_t loop_mohm);

}  // namespace streamwright::standards
