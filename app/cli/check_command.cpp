// check: the findings of a design, for people or as JSON; the page of rules; the files of types.
#include "app/cli/commands.h"
#include "app/cli/finding_json.h"
#include "app/cli/types_report.h"
#include "core/analysis/analyser.h"
#include "core/analysis/report.h"
#include "core/base/nearest.h"
#include "core/deliver/rule_page.h"
#include "core/io/design_file.h"

#include <ostream>

namespace streamwright::app {

namespace check_detail {

using analysis::Reported;

void print_finding(std::ostream& out, const Reported& reported, const base::Phrasebook& book) {
    const auto& finding = reported.finding;
    out << base::enum_text(finding.severity) << (reported.waiver && !reported.waiver_outdated ? " (accepted)" : "")
        << ": " << base::printable(analysis::sentence(finding, book)) << '\n';
    for (const auto& term : finding.terms) out << "    " << base::printable(base::fill(term, book)) << '\n';
    if (const auto source = source_text(finding); !source.empty()) out << "    source: " << source << '\n';
    for (const auto& remedy : finding.remedies)
        out << "    remedy: " << base::printable(base::fill(remedy.label, book)) << '\n';
    out << "    rule: " << finding.rule << '\n';
}

int explain(const std::string& id, Streams streams) {
    if (const auto* rule = analysis::find_rule(id)) {
        streams.out << deliver::rule_text(rule->words);
        return exit_done;
    }
    std::vector<std::string_view> ids;
    for (const auto& rule : analysis::all_rules()) ids.push_back(rule.words.id);
    const auto meant = base::nearest(id, ids);
    streams.err << "There is no rule '" << base::printable(id) << "'"
                << (meant ? "; did you mean '" + std::string(*meant) + "'?" : std::string("."))
                << " 'streamwright check --rules' prints all of them.\n";
    return exit_cannot;
}

int check_design(const CheckOptions& options, Streams streams) {
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

}  // namespace check_detail

int check_command(const CheckOptions& options, Streams streams) {
    using namespace check_detail;
    if (options.rules) {
        streams.out << deliver::rules_text();
        return exit_done;
    }
    if (options.explain) return explain(*options.explain, streams);
    if (options.types) return report_types(*options.types, options.json, streams);
    if (options.file.empty()) {
        streams.err << "check needs a design file: streamwright check FILE.\n";
        return exit_cannot;
    }
    return check_design(options, streams);
}

}  // namespace streamwright::app
