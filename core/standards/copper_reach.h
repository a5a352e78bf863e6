// How far Ethernet runs over balanced cabling: by physical layer and grade, split into permanent link and cords,
// shortened in warm places.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <optional>
#include <span>
#include <string_view>

namespace streamwright::standards {

enum class CopperGrade { cat5e, cat6, cat6a, cat8 };

struct CopperReach {
    std::string_view phy;  // "10GBASE-T"
    base::BitRate rate;
    CopperGrade grade;
    base::Length channel;  // at 20 degrees C, cords included
    bool conditional;      // not unconditional: alien crosstalk and bundling decide
    Citation source;
};

std::span<const CopperReach> copper_reaches();
/// Nothing: that speed is not defined over that grade.
std::optional<CopperReach> copper_reach(base::BitRate rate, CopperGrade grade);

/// Permanent link 90 m, channel 100 m at 20 degrees C (TIA-568.2-D, ISO/IEC 11801-1); shorter channels (30 m, 55 m)
/// limit the permanent link by the 10 m that the cords may take.
base::Length permanent_link_limit(base::Length channel);
Citation permanent_link_source();

/// Two published ways to shorten a length for heat; which one is used is always named beside the result.
enum class DeratingRule {
    linear,   // length x (1 - rise of insertion loss)
    quotient  // length / (1 + rise of insertion loss)
};

/// Insertion loss rises by 0.4 % a degree from 20 to 40, by 0.6 % from 40 to 60 (unscreened), by 0.2 % (screened):
/// TIA-568-C.2 clause 6.4.7. Up to 20 degrees C nothing is taken off; above 60 the last slope is continued.
base::Length derated(base::Length limit, base::Temperature average, bool screened, DeratingRule rule);
Citation derating_source();

}  // namespace streamwright::standards
