// How far optical Ethernet carries, by the full name of the physical layer and the grade of the fibre: names that look
// alike differ (100GBASE-SR4 is 100 m on OM4, 100GBASE-SR10 150 m), so nothing here is looked up by rate.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

/// The last two are older multimode fibres that have no OM name: 62.5 um with 160 MHz.km and 50 um with 400 MHz.km.
enum class FibreGrade { om1, om2, om3, om4, om5, os1a, os2, old_62_5, old_50 };

constexpr bool is_multimode(FibreGrade grade) { return grade != FibreGrade::os1a && grade != FibreGrade::os2; }

struct FibreReach {
    std::string_view phy;
    FibreGrade grade;
    base::Length least;  // shortest length that works; zero where none is stated
    base::Length most;
    Citation source;
};

std::span<const FibreReach> fibre_reaches();

/// Null where the physical layer does not run on that grade, or is unknown: see is_fibre_phy.
const FibreReach* fibre_reach(std::string_view phy, FibreGrade grade);

/// A physical layer that the table knows.
bool is_fibre_phy(std::string_view phy);

}  // namespace streamwright::standards
