// Laboratory networks (tests/reference/lab/SOURCE.md) as ordinary designs, and what the analysis says of them.
#pragma once

#include "core/model/design.h"

#include <nlohmann/json.hpp>

namespace streamwright::lab {
using nlohmann::json;

/// Tags are the lab's names; the first `cuts` of its cuts are made. Throws one sentence where the input has no meaning.
model::Design lab_design(const json& input, std::size_t cuts = 0);
/// {"phases": [{"root", "blocked", "loads": [{"kind", "link", "from", "to", "streams"}]}]}, one phase more per cut.
json predict(const json& input);
/// {"answers": [{"link", "from", "to", "pull", "ideal", "witness": {decoder: [streams]}}]} in Mbit/s, of "rates".
json predict_worst(json input);

}  // namespace streamwright::lab
