#include "app/cli/finding_text.h"

#include "app/cli/finding_json.h"

#include <ostream>

namespace streamwright::app {

void print_finding(std::ostream& out, const analysis::Reported& reported, const base::Phrasebook& book) {
    const auto& finding = reported.finding;
    out << base::enum_text(finding.severity) << (reported.waiver && !reported.waiver_outdated ? " (accepted)" : "")
        << ": " << base::printable(analysis::sentence(finding, book)) << '\n';
    for (const auto& term : finding.terms) out << "    " << base::printable(base::fill(term, book)) << '\n';
    if (const auto source = source_text(finding); !source.empty()) out << "    source: " << source << '\n';
    for (const auto& remedy : finding.remedies)
        out << "    remedy: " << base::printable(base::fill(remedy.label, book)) << '\n';
    out << "    rule: " << finding.rule << '\n';
}

}  // namespace streamwright::app
