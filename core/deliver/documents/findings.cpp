// The findings of the check, gravest first, with what was measured against which limit, and what was accepted and why.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

namespace streamwright::deliver {

namespace findings_detail {

std::string subjects_of(const Source& source, const analysis::Finding& finding) {
    std::vector<std::string> names;
    for (const auto& subject : finding.subjects)
        names.push_back(print(base::Value(analysis::ref(subject)), source.book));
    return listed(names);
}

std::string arithmetic_of(const Source& source, const analysis::Finding& finding) {
    std::string text;
    for (const auto& term : finding.terms) text += (text.empty() ? "" : "; ") + fill(term, source.book);
    return text;
}

std::string sources_of(const analysis::Finding& finding) {
    const auto* rule = analysis::find_rule(finding.rule);
    if (!rule) return {};
    std::vector<std::string> texts;
    for (const auto& citation : rule->words.sources) texts.push_back(citation.text());
    return listed(texts);
}

std::string acceptance_of(const Source& source, const analysis::Reported& reported) {
    const auto* waiver = reported.waiver ? source.design.waivers.find(*reported.waiver) : nullptr;
    if (!waiver) return {};
    auto text = waiver->reason + (waiver->by.empty() ? "" : ", " + waiver->by);
    if (reported.waiver_outdated) text += " (made for an older form of the rule; asks again)";
    return text;
}

std::string value_words(const Source& source, const std::optional<base::Value>& value) {
    return value ? print(*value, source.book) : std::string{};
}

TableRow row_of(const Source& source, const analysis::Reported& reported) {
    const auto& finding = reported.finding;
    TableRow row;
    if (!finding.subjects.empty()) row.subject = analysis::subject_text(finding.subjects.front());
    const bool accepted = reported.waiver && !reported.waiver_outdated;
    row.group = accepted ? "accepted" : std::string(base::enum_text(finding.severity));
    row.cells = {text_cell(row.group),
                 text_cell(subjects_of(source, finding)),
                 text_cell(analysis::sentence(finding, source.book)),
                 text_cell(arithmetic_of(source, finding)),
                 text_cell(value_words(source, finding.measured)),
                 text_cell(value_words(source, finding.limit)),
                 text_cell(sources_of(finding)),
                 text_cell(acceptance_of(source, reported)),
                 text_cell(std::string(finding.rule))};
    return row;
}

std::vector<Column> columns() {
    return {{"Severity", ColumnKind::text, 18}, {"Subjects", ColumnKind::text, 34, true},
            {"Finding", ColumnKind::text, 110}, {"Sum", ColumnKind::text, 60},
            {"Measured", ColumnKind::text, 24}, {"Limit", ColumnKind::text, 24},
            {"Source", ColumnKind::text, 44},   {"Accepted because", ColumnKind::text, 50},
            {"Rule", ColumnKind::text, 36}};
}

}  // namespace findings_detail

Content make_findings_list(const Source& source) {
    using namespace findings_detail;
    TablePart table;
    table.name = "Findings";
    table.title = "Findings";
    table.columns = columns();
    for (const auto& reported : source.findings) table.rows.push_back(row_of(source, reported));
    std::ranges::stable_partition(table.rows, [](const TableRow& row) { return row.group != "accepted"; });
    if (table.rows.empty()) table.notes.push_back("Nothing to report: all rules were checked.");
    return {"findings", "Findings", {std::move(table)}};
}

}  // namespace streamwright::deliver
