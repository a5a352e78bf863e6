// Findings joined with the design's waivers, and made into words.
#pragma once

#include "core/analysis/finding.h"
#include "core/base/text.h"
#include "core/model/design.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

struct Reported {
    Finding finding;
    std::optional<model::WaiverId> waiver;  // accepted with a reason
    bool waiver_outdated = false;           // made for an older revision of the rule: asks again
};

struct Counts {
    int error = 0, warning = 0, advice = 0;  // waived findings are not counted
};

/// Gravest first, then rule, then key.
std::vector<Reported> report(const model::Design& design, const std::vector<Finding>& findings);
Counts count(const std::vector<Reported>& reported);

/// The rule's sentence with this finding's values.
std::string sentence(const Finding& finding, const base::Phrasebook& book);
/// Names rows by their present tags ("ENC-201", "SW-S2 9").
base::Phrasebook english(const model::Design& design);

}  // namespace streamwright::analysis
