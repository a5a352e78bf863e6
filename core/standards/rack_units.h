// Rack geometry (IEC 60297-3-100, EIA-310).
#pragma once

#include "core/base/units.h"

namespace streamwright::standards {

inline constexpr base::Length rack_unit = base::Length::from_count(44450);
inline constexpr base::Length rack_panel_width = base::Length::from_count(482600);

constexpr base::Length rack_height(int units) { return rack_unit * units; }

}  // namespace streamwright::standards
