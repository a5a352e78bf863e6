// What the reach rules read of a run: its grade, its warmth, and cable types of the design that would reach further.
#pragma once

#include "core/analysis/rule_help.h"
#include "core/standards/copper_reach.h"
#include "core/standards/fibre_reach.h"

#include <optional>
#include <string>

namespace streamwright::analysis {

std::optional<standards::CopperGrade> copper_grade(catalogue::CableGrade grade);
std::optional<standards::FibreGrade> fibre_grade(catalogue::CableGrade grade);
/// "Cat 6A", "OM3".
std::string grade_name(catalogue::CableGrade grade);

struct CopperRun {
    std::optional<standards::CopperGrade> grade;  // the weakest; none: one of the cables does not state it
    std::string name;
    bool screened = true;  // all cables
};
/// Nothing where the run is not of balanced copper throughout.
std::optional<CopperRun> copper_of(const graph::Wiring& wiring, const graph::Run& run);

struct FibreRun {
    std::optional<standards::FibreGrade> grade;  // the weakest; none: one of the cables does not state it
    std::string name;
};
std::optional<FibreRun> fibre_of(const graph::Wiring& wiring, const graph::Run& run);

/// The hottest that is planned for the run: of the design, and of the rooms at its ends; 20 degrees C at least.
base::Temperature warmth_of(const graph::Wiring& wiring, const graph::Run& run);

/// What the installed part of a run may measure: 10 m less than the channel, and less by heat. Three published rules
/// differ by up to 3 m; beyond the most lenient is an error, between them a caution.
struct CopperLimits {
    base::Length full, strict, lenient;
};
/// Nothing above 60 degrees C, where no document gives a length.
std::optional<CopperLimits> copper_limits(const standards::CopperReach& reach, base::Temperature warmth, bool screened);

/// Another installed cable type of the design over which the run would reach.
std::optional<Remedy> better_copper(const graph::Wiring& wiring, const graph::Run& run, base::BitRate rate,
                                    const RunLength& length);
std::optional<Remedy> better_fibre(const graph::Wiring& wiring, const graph::Run& run, const std::string& phy,
                                   const RunLength& length);

}  // namespace streamwright::analysis
