// Findings as JSON, in the form that the command line promises.
#pragma once

#include "core/analysis/report.h"
#include "core/model/design.h"

#include <string>
#include <vector>

namespace streamwright::app {

/// {"design","counts","findings":[...]}, always English, in report order.
std::string findings_json(const model::Design& design, const std::vector<analysis::Reported>& reported,
                          const analysis::Counts& counts, const base::Phrasebook& book);

/// The sources of the finding's rule, "; " between them; why there is none where there is none.
std::string source_text(const analysis::Finding& finding);

}  // namespace streamwright::app
