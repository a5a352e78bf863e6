// What the rule and the schedule of control share: what is asked for, and who gives it.
#pragma once

#include "core/graph/wiring.h"

#include <string>
#include <vector>

namespace streamwright::analysis {

/// Any one of these: what is asked for here, else what the type takes; none: works without. The type must be known.
std::vector<catalogue::ControlMethod> asked_control(const graph::WiredDevice& device);
/// "IR or serial".
std::string control_words(const std::vector<catalogue::ControlMethod>& methods);
/// Endpoints pass control along the link and control processors give it; displays and sources only take it.
bool gives_control(const graph::WiredDevice& device);

}  // namespace streamwright::analysis
