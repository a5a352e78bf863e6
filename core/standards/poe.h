// Power over Ethernet: what a class reserves at the switch and gives the device, and what arrives over a real cable.
// Supplies are budgeted with the watts at the switch (class 8: 90 W), never with those at the device (71.3 W).
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <optional>
#include <span>

namespace streamwright::standards {

struct PoeClass {
    int number;  // 0 to 8
    int type;    // 1 to 4: the least type of supply that gives it
    int pairs;   // 2 or 4
    base::Power at_supply;
    base::Power at_device;  // after 100 m
    Citation source;
};
std::span<const PoeClass> poe_classes();
const PoeClass* poe_class(int number);  // null: no such class

/// The smallest class that feeds a device of that draw (class 1 and up); nothing above class 8.
std::optional<int> class_for_draw(base::Power at_device);

/// What the classes assume of supply and cable, by type 1 to 4; null for others.
struct PoeType {
    int number;
    int least_supply_mv, most_supply_mv;
    int least_device_mv;
    int pair_set_ma;    // most current of one pair set
    int loop_milliohm;  // assumed for 100 m as the type powers: 2 pairs for 1 and 2, 4 pairs for 3 and 4
    Citation source;
};
const PoeType* poe_type(int number);

/// Loop resistance of a powered channel: two conductors in parallel each way with 2 pairs, four with 4 pairs.
/// Gauges 22, 23, 24, 26 and 28; nothing for others. Annealed copper, 0.393 % more per degree above 20.
std::optional<std::int64_t> loop_microohm(int awg, base::Length channel, int pairs,
                                          base::Temperature copper = base::Temperature::from_count(20'000));

/// A feed in its steady state.
struct PoeFlow {
    std::int64_t current_ua = 0;
    std::int64_t device_mv = 0;
    base::Power at_supply;
    base::Power at_device;
    base::Power lost;  // heats the cable
};
/// Solves I from V, P and R: V I = P + I^2 R, the smaller root. Nothing where the cable cannot carry that power.
std::optional<PoeFlow> feed_device(base::Power at_device, std::int64_t supply_mv, std::int64_t microohm);
/// The other way round: what arrives when the supply gives a power.
PoeFlow feed_from_supply(base::Power at_supply, std::int64_t supply_mv, std::int64_t microohm);

inline constexpr Citation poe_flow_source{"IEEE", "802.3", "clauses 33 and 145, circuit arithmetic",
                                          Standing::computed};
inline constexpr Citation poe_budget_source{"IEEE", "802.3", "clause 145, sum of class power at the supply",
                                            Standing::computed};

}  // namespace streamwright::standards
