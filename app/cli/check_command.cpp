// check: the findings of a design, for people or as JSON; the page of rules; the files of types.
#include "app/cli/commands.h"
#include "app/cli/explain.h"
#include "app/cli/finding_json.h"
#include "app/cli/finding_text.h"
#include "app/cli/types_report.h"
#include "core/analysis/analyser.h"
#include "core/analysis/report.h"
#include "core/deliver/rule_page.h"
#include "core/io/design_file.h"

#include <ostream>

namespace streamwright::app {

namespace check_detail {

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
    if (options.explain) return explain(options, streams);
    if (options.types) return report_types(*options.types, options.json, streams);
    if (options.file.empty()) {
        streams.err << "check needs a design file: streamwright check FILE.\n";
        return exit_cannot;
    }
    return check_design(options, streams);
}

}  // namespace streamwright::app
