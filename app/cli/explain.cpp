#include "app/cli/explain.h"

#include "app/cli/finding_text.h"
#include "core/analysis/analyser.h"
#include "core/analysis/number_chains.h"
#include "core/base/nearest.h"
#include "core/deliver/rule_page.h"
#include "core/io/design_file.h"

#include <algorithm>
#include <ostream>

namespace streamwright::app {

namespace explain_detail {

using analysis::Reported;
using analysis::Subject;

std::string nearest_rule(const std::string& id) {
    std::vector<std::string_view> ids;
    for (const auto& rule : analysis::all_rules()) ids.push_back(rule.words.id);
    const auto meant = base::nearest(id, ids);
    return meant ? "; did you mean '" + std::string(*meant) + "'?" : std::string(".");
}

/// What is explained, and what it is explained from.
struct Explained {
    const analysis::Analysis& analysis;
    std::vector<Reported> reported;
    base::Phrasebook book;
    std::ostream& out;
    std::vector<Subject> told;

    std::string words(const std::string& pattern, const std::vector<base::Value>& values) const {
        return base::printable(base::fill({pattern, values}, book));
    }

    /// Whether there are any; told once.
    bool chains(const Subject& subject) {
        if (std::find(told.begin(), told.end(), subject) != told.end()) return true;
        told.push_back(subject);
        const auto list = analysis::number_chains(analysis.facts, subject);
        for (const auto& chain : list) {
            out << '\n' << words(chain.title.pattern, chain.title.values) << '\n';
            for (const auto& line : chain.lines) {
                const auto figure = base::printable(base::print(line.figure, book));
                out << (line.over  ? "  ! "
                        : line.sum ? "  = "
                                   : "    ")
                    << words(line.pattern, line.values) << (figure.empty() ? "" : ": " + figure) << '\n';
            }
        }
        return !list.empty();
    }

    void finding(const Reported& each) {
        print_finding(out, each, book);
        for (const auto& subject : each.finding.subjects) chains(subject);
    }

    /// How many findings `wanted` picks.
    template <class Wanted>
    int findings(Wanted&& wanted) {
        int count = 0;
        for (const auto& each : reported)
            if (wanted(each.finding)) {
                if (count++ > 0) out << '\n';
                finding(each);
            }
        return count;
    }

    void subject(const Subject& named) {
        out << words("%1", {analysis::ref(named)}) << " (" << analysis::subject_text(named) << ")\n";
        for (const auto& each : reported)
            if (std::ranges::find(each.finding.subjects, named) != each.finding.subjects.end()) {
                out << '\n';
                print_finding(out, each, book);
            }
        if (!chains(named)) out << "No number is reckoned for it alone.\n";
    }
};

int explain_rule(const std::string& id, Streams streams) {
    if (const auto* rule = analysis::find_rule(id)) {
        streams.out << deliver::rule_text(rule->words);
        return exit_done;
    }
    streams.err << "There is no rule '" << base::printable(id) << "'" << nearest_rule(id)
                << " 'streamwright check --rules' prints all of them; with a design file also tags and findings are "
                   "explained.\n";
    return exit_cannot;
}

int explain_in(const model::Design& design, const std::string& id, Streams streams) {
    const auto analysis = analysis::analyse(design);
    Explained explained{
        analysis, analysis::report(design, analysis.findings), analysis::english(design), streams.out, {}};
    if (const auto* rule = analysis::find_rule(id)) {
        streams.out << deliver::rule_text(rule->words) << '\n';
        if (explained.findings([&](const auto& finding) { return finding.rule == id; }) == 0)
            streams.out << "It finds nothing in this design.\n";
        return exit_done;
    }
    if (explained.findings([&](const auto& finding) { return finding.key() == id; }) > 0) return exit_done;
    const auto subjects = analysis::subjects_named(design, id);
    for (const auto& subject : subjects) explained.subject(subject);
    if (!subjects.empty()) return exit_done;
    streams.err << "Nothing in this design is called '" << base::printable(id)
                << "', and there is no such rule or finding" << nearest_rule(id)
                << " Give a tag, a tag and a port, a rule, or a key of 'check --json'.\n";
    return exit_cannot;
}

}  // namespace explain_detail

int explain(const CheckOptions& options, Streams streams) {
    if (options.file.empty()) return explain_detail::explain_rule(*options.explain, streams);
    const auto opened = io::open_design(options.file);
    if (opened) return explain_detail::explain_in(opened->design, *options.explain, streams);
    streams.err << opened.error().english() << '\n';
    return exit_cannot;
}

}  // namespace streamwright::app
