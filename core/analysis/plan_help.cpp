#include "core/analysis/plan_help.h"

namespace streamwright::analysis {

void ask(const graph::Wiring& wiring, std::string_view rule, std::optional<bool> model::SecurityPlan::*question,
         const std::string& answer, Findings& out) {
    if (wiring.design.streams.empty()) return;
    auto settings = wiring.design.settings();
    auto& answered = settings.security.*question;
    if (answered.value_or(false)) return;
    auto finding = found(rule, answered ? Severity::warning : Severity::advice, {}, {}, answered ? 1 : 0);
    answered = true;
    finding.remedies.push_back({line(answer, {}), model::SetSettings{std::move(settings)}});
    out.push_back(std::move(finding));
}

}  // namespace streamwright::analysis
