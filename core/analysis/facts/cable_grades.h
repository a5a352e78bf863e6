// The grades of cable types as the published tables know them, and the weakest on a run.
#pragma once

#include "core/graph/runs.h"
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
/// Nothing where the run is not of fibre throughout.
std::optional<FibreRun> fibre_of(const graph::Wiring& wiring, const graph::Run& run);

}  // namespace streamwright::analysis
