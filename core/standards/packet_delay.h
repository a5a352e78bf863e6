// What delays a packet on its way: putting it on each line, and the way itself.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <cstdint>

namespace streamwright::standards {

/// Fine enough that a jumbo frame on 100 Gb/s and a metre of cable are whole numbers of it.
using Picoseconds = std::int64_t;

/// The time that octets take on a line: 8 x octets / rate, rounded up. A switch that stores and forwards takes the
/// whole frame in before it sends it on, so each line of a way adds it once more.
Picoseconds serialisation(std::int64_t octets, base::BitRate rate);
inline constexpr Citation store_and_forward_source{"IETF", "RFC 1242", "section 3.8 (latency of store and forward)",
                                                   Standing::memory};

/// A channel of 100 m may take 534 + 36 / sqrt(f / MHz) ns, 545 ns at 10 MHz.
inline constexpr Picoseconds copper_delay_per_metre = 5450;
inline constexpr Citation copper_delay_source{"TIA", "568", "propagation delay of the channel at 10 MHz",
                                              Standing::memory};
/// Index 1.467 over the speed of light.
inline constexpr Picoseconds fibre_delay_per_metre = 4900;
inline constexpr Citation fibre_delay_source{"physics", "n / c", "index 1.467"};
/// What people reckon with.
inline constexpr Picoseconds fibre_delay_rule_per_metre = 5000;

/// Per metre, rounded up.
Picoseconds propagation(base::Length length, Picoseconds per_metre);

}  // namespace streamwright::standards
