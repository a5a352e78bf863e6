// The page of rules: what each one means, how it is measured, what it says and what to do. One text, for the terminal
// and for the user guide, made from the rules themselves so that neither can fall behind.
#pragma once

#include "core/analysis/rule.h"

#include <string>

namespace streamwright::deliver {

/// One rule for a terminal: its id and the gravest severity it gives at the margin, all else indented beneath.
std::string rule_text(const analysis::RuleWords& words);

/// All rules for a terminal, by id.
std::string rules_text();

/// The chapter of the user guide (Markdown): grouped by theme, a list at the head, one section a rule.
std::string rules_guide();

}  // namespace streamwright::deliver
