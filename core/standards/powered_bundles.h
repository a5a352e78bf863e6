// Cables that carry power warm each other: what is advised for bundles, and which conductors carry it. Local electrical
// codes come first; from memory where marked, and so advice only.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <array>
#include <string_view>

namespace streamwright::standards {

inline constexpr int most_cables_in_powered_bundle = 24;  // all energised, type 3 or 4
inline constexpr base::Temperature bundle_rise_target = base::Temperature::from_count(15'000);
inline constexpr Citation powered_bundle_source{"TIA", "TSB-184-A", "powered bundles", Standing::memory};

/// Bundle sizes of the ampacity table, each band up to this many cables; the table moved in later editions.
inline constexpr std::array<int, 7> ampacity_bands{1, 7, 19, 37, 61, 91, 192};
inline constexpr Citation ampacity_source{"NFPA", "70", "table 725.144(A), 2017 and 2020", Standing::memory};
/// The band, counted from 0, in which so many cables fall; 7 above the table.
constexpr int ampacity_band(int cables) {
    int band = 0;
    while (band < static_cast<int>(ampacity_bands.size()) && ampacity_bands[static_cast<std::size_t>(band)] < cables)
        ++band;
    return band;
}

/// Pins of the 8-pin connector that carry power over two pairs.
inline constexpr std::string_view alternative_a_pins = "1,2,3,6", alternative_b_pins = "4,5,7,8";
inline constexpr Citation pins_source{"IEEE", "802.3", "table 145-3"};

/// Above the class a device may take up to what the port gives where the channel is measured; never planned on.
inline constexpr Citation extended_power_source{"IEEE", "802.3", "clause 145, extended power", Standing::memory};

}  // namespace streamwright::standards
