// How cable is laid and terminated: bends, untwist, resistance of what is installed. What people on site need beside
// lengths.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

namespace streamwright::standards {

/// Least radius of a bend, in outside diameters of the cable.
struct BendRadius {
    int installed;
    int while_pulled;  // 0: not stated
    Citation source;
};
inline constexpr BendRadius copper_bend{4, 0, {"TIA", "568.0", "four pairs, installed, no tension"}};
/// Sources conflict: TIA-568.0-D takes 4, older practice 8; the careful one is printed.
inline constexpr BendRadius screened_copper_bend{8, 0, {"TIA", "568.0", "older practice", Standing::practice}};
inline constexpr BendRadius fibre_bend{10, 20, {"TIA", "568.0", "fibre"}};

/// Most that a pair may be untwisted at its termination; 6 mm for category 6 and 6A is a rule of some makers.
inline constexpr base::Length pair_untwist = base::Length::from_count(13'000);
inline constexpr base::Length careful_pair_untwist = base::Length::from_count(6'000);
inline constexpr Citation pair_untwist_source{"TIA", "568", "pair untwist"};

/// Share of a pathway that may be full when it is designed.
inline constexpr int pathway_fill_percent = 40;
inline constexpr Citation pathway_fill_source{"TIA", "569", "pathway fill at design"};

/// Direct current: one conductor of 100 m, and the loop of one pair over a channel and a permanent link, in
/// thousandths of an ohm. A meter on site should show no more.
inline constexpr int conductor_milliohm_per_100m = 9'380;
inline constexpr Citation conductor_source{"TIA", "568.2-D", "DC resistance, 20 degrees C", Standing::memory};
inline constexpr int channel_loop_milliohm = 25'000;
inline constexpr int permanent_link_loop_milliohm = 21'000;
inline constexpr Citation loop_source{"ISO/IEC", "11801-1", "DC loop resistance", Standing::memory};

}  // namespace streamwright::standards
