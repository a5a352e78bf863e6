// What the reach rules read of a run beyond its grade: what copper may measure in its warmth, and cable types of the
// design that would reach further.
#pragma once

#include "core/analysis/facts/cable_grades.h"
#include "core/analysis/facts/cable_warmth.h"
#include "core/analysis/rule_help.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// The hottest that is planned for the run, with the rise of its bundle; 20 degrees C at least.
base::Temperature warmth_of(const graph::Wiring& wiring, const graph::Run& run);

/// The published rules that the design holds warm copper to.
std::vector<standards::DeratingRule> rules_in_force(model::WarmRule rule);
/// "the linear rule of TIA-568-C.2 and ISO/IEC 11801"
std::string rule_words(standards::DeratingRule rule);
/// The channel of the row, or what the design's settings say of it.
base::Length channel_reach(const model::CablingSettings& settings, const standards::CopperReach& reach);

/// What the installed part of a run may measure: 10 m less than the channel, and less by heat. Where the design names
/// no rule, three published ones differ by up to 3 m; beyond the most lenient is an error, between them a caution.
struct CopperLimits {
    base::Length channel, full, strict, lenient;
    standards::DeratingRule strict_rule = standards::DeratingRule::linear, lenient_rule = strict_rule;
};
/// Nothing above 60 degrees C, where no document gives a length.
std::optional<CopperLimits> copper_limits(const model::CablingSettings& settings, const standards::CopperReach& reach,
                                          base::Temperature warmth, bool screened);

/// Another installed cable type of the design over which the run would reach.
std::optional<Remedy> better_copper(const graph::Wiring& wiring, const graph::Run& run, base::BitRate rate,
                                    const RunLength& length);
std::optional<Remedy> better_fibre(const graph::Wiring& wiring, const graph::Run& run, const std::string& phy,
                                   const RunLength& length);

}  // namespace streamwright::analysis
