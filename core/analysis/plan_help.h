// What the rules about the security plan share: an open question is advice, an answer of no is a warning.
#pragma once

#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <optional>
#include <string>
#include <string_view>

namespace streamwright::analysis {

/// Asks one question of the plan once the design has a stream: variant 0 where it is open, 1 where the answer is no.
/// The finding is about the whole design and has no subject. The remedy answers yes.
void ask(const graph::Wiring& wiring, std::string_view rule, std::optional<bool> model::SecurityPlan::*question,
         const std::string& answer, Findings& out);

}  // namespace streamwright::analysis
