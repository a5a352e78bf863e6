// The chain of numbers by which a run of cable is judged: what it measures, what it may, and what the limit is made of.
// The properties panel shows it, documents print it; rules say only what breaks it.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/base/text.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

struct LimitLine {
    std::string pattern;              // English, places %1 to %9
    std::vector<base::Value> values;  // fill the pattern
    base::Value figure;               // shown at its right
    bool sum = false;                 // closes a sum
    bool over = false;                // breaks the limit beside it
};

/// What a copper run may measure: by reach, grade and warmth.
struct CopperLimit {
    std::string phy, grade;
    base::Length channel;    // longest whole
    base::Length installed;  // longest fixed part, by the strictest rule in force
    base::Temperature warmth;
    std::string rule;  // of warmth; empty at 20 degrees C
    std::string source;
};
/// Nothing where the run is no copper link, its grade is not stated or the speed does not go over it.
std::optional<CopperLimit> copper_limit(const Facts& facts, int run);

/// What a fibre run may measure and lose; the facts of the way itself stand in FibreChannels.
struct FibreLimit {
    std::string phy;
    std::optional<base::Length> least, most;
    std::optional<base::Loss> budget;
    std::string reach_source, budget_source;
};
std::optional<FibreLimit> fibre_limit(const Facts& facts, int run);

/// The lines for a run, in the order of the reckoning; none where nothing limits it.
std::vector<LimitLine> limit_chain(const Facts& facts, int run);

}  // namespace streamwright::analysis
