// The geometry of 19-inch racks. Depth is not standardised: it is data of each cabinet.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <array>

namespace streamwright::standards {

inline constexpr base::Length rack_unit = base::Length::from_count(44'450);
inline constexpr base::Length rack_panel_width = base::Length::from_count(482'600);
inline constexpr base::Length rack_hole_centres = base::Length::from_count(465'100);
inline constexpr base::Length rack_opening = base::Length::from_count(450'000);
/// Steps from hole to hole within one unit, from its lower edge pattern upward; they sum to one unit.
inline constexpr std::array<base::Length, 3> rack_hole_steps{
    base::Length::from_count(15'875), base::Length::from_count(15'875), base::Length::from_count(12'700)};
inline constexpr Citation rack_source{"IEC", "60297-3-100", "(EIA-310)"};

/// Mounting height of so many units.
constexpr base::Length rack_height(int units) { return rack_unit * units; }
/// Height of a front panel: 1/32 inch less than its units, so that neighbours clear (EIA-310, from memory).
constexpr base::Length panel_height(int units) { return rack_unit * units - base::Length::from_count(790); }

}  // namespace streamwright::standards
