// How far each optical physical layer runs over each grade of fibre. Keyed by the full name of the physical layer:
// 150 m on OM4 belongs to 100GBASE-SR10, not to 100GBASE-SR4.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <optional>
#include <span>
#include <string_view>

namespace streamwright::standards {

enum class FibreGrade { om1, om2, om3, om4, om5, os1a, os2 };

bool is_singlemode(FibreGrade grade);

struct FibreReach {
    std::string_view phy;
    FibreGrade grade;
    base::Length least, most;
    Citation source;
};

std::span<const FibreReach> fibre_reaches();
/// Nothing: that layer is not defined over that grade.
std::optional<FibreReach> fibre_reach(std::string_view phy, FibreGrade grade);

}  // namespace streamwright::standards
