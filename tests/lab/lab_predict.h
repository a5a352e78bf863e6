// Tells, in the laboratory's own form, what the analysis predicts for a laboratory network. It holds no rule of
// networks itself.
#pragma once

#include <nlohmann/json.hpp>

namespace streamwright::lab {

/// {"phases": [{"root", "blocked", "loads": [{"kind", "link", "from", "to", "streams"}]}]}, one phase more per cut.
nlohmann::json predict(const nlohmann::json& input);

}  // namespace streamwright::lab
