// check: the findings of a design, for people or as JSON; and the page of rules.
#include "app/cli/commands.h"
#include "app/cli/finding_json.h"
#include "core/analysis/analyser.h"
#include "core/analysis/report.h"
#include "core/io/design_file.h"

#include <nlohmann/json.hpp>

#include <ostream>

namespace streamwright::app {

namespace check_detail {

using analysis::Reported;

void print_finding(std::ostream& out, const Reported& reported, const base::Phrasebook& book) {
    const auto& finding = reported.finding;
    out << base::enum_text(finding.severity) << (reported.waiver && !reported.waiver_outdated ? " (waived)" : "")
        << ": " << base::printable(analysis::sentence(finding, book)) << '\n';
    for (const auto& term : finding.terms) out << "    " << base::printable(base::fill(term, book)) << '\n';
    if (const auto source = source_text(finding); !source.empty()) out << "    source: " << source << '\n';
    for (const auto& remedy : finding.remedies)
        out << "    remedy: " << base::printable(base::fill(remedy.label, book)) << '\n';
    out << "    rule: " << finding.rule << '\n';
}

void print_rules(std::ostream& out) {
    for (const auto& rule : analysis::all_rules()) {
        const auto& words = rule.words;
        out << words.id << " (" << base::enum_text(words.severity) << ")\n    " << words.title << ". " << words.meaning
            << "\n    source: ";
        if (words.sources.empty()) out << words.no_source;
        for (std::size_t i = 0; i < words.sources.size(); ++i) out << (i ? "; " : "") << words.sources[i].text();
        out << "\n\n";
    }
}

}  // namespace check_detail

int check_command(const CheckOptions& options, Streams streams) {
    using namespace check_detail;
    if (options.rules) {
        print_rules(streams.out);
        return exit_done;
    }
    if (options.file.empty()) {
        streams.err << "check needs a design file: streamwright check FILE.\n";
        return exit_cannot;
    }
    const auto opened = io::open_design(options.file);
    if (!opened) {
        streams.err << opened.error().english() << '\n';
        return exit_cannot;
    }
    const auto& design = opened->design;
    const auto analysis = analysis::analyse(design);
    const auto reported = analysis::report(design, analysis.findings);
    const auto counts = analysis::count(reported);
    const auto book = analysis::english(design);
    if (options.json) {
        streams.out << findings_json(design, reported, counts, book) << '\n';
    } else {
        for (const auto& each : reported) print_finding(streams.out, each, book);
        streams.out << counts.error << " errors, " << counts.warning << " warnings, " << counts.advice << " advice\n";
    }
    return counts.error > 0 ? exit_errors_found : exit_done;
}

}  // namespace streamwright::app
