#include "app/cli/finding_json.h"

#include "app/cli/terminal_safe.h"
#include "core/analysis/rule.h"

#include <nlohmann/json.hpp>

namespace streamwright::app {

namespace finding_json_detail {

using Json = nlohmann::ordered_json;

/// A value with its unit: quantities in their base unit, so that no digit is lost.
Json with_unit(const base::Value& value, const base::Phrasebook& book) {
    const auto whole = [](std::int64_t count, const char* unit) { return Json{{"value", count}, {"unit", unit}}; };
    if (const auto* v = std::get_if<std::int64_t>(&value)) return whole(*v, "count");
    if (const auto* v = std::get_if<base::BitRate>(&value)) return whole(v->count(), "bps");
    if (const auto* v = std::get_if<base::Length>(&value)) return whole(v->count(), "um");
    if (const auto* v = std::get_if<base::Power>(&value)) return whole(v->count(), "mW");
    if (const auto* v = std::get_if<base::Loss>(&value)) return whole(v->count(), "mdB");
    if (const auto* v = std::get_if<base::Temperature>(&value)) return whole(v->count(), "mdegC");
    if (const auto* v = std::get_if<base::Duration>(&value)) return whole(v->count(), "ns");
    if (const auto* v = std::get_if<base::Percent>(&value)) return whole(v->tenths, "permille");
    return Json{{"value", base::print(value, book)}, {"unit", "text"}};
}

Json finding_row(const analysis::Reported& reported, const base::Phrasebook& book) {
    const auto& finding = reported.finding;
    Json row{{"rule", std::string(finding.rule)},
             {"key", finding.key()},
             {"severity", std::string(base::enum_text(finding.severity))}};
    row["subjects"] = Json::array();
    for (const auto& subject : finding.subjects) row["subjects"].push_back(analysis::subject_text(subject));
    row["message"] = analysis::sentence(finding, book);
    row["measured"] = finding.measured ? with_unit(*finding.measured, book) : Json(nullptr);
    row["limit"] = finding.limit ? with_unit(*finding.limit, book) : Json(nullptr);
    row["source"] = source_text(finding);
    row["remedies"] = Json::array();
    for (const auto& remedy : finding.remedies) row["remedies"].push_back(base::fill(remedy.label, book));
    row["waived"] = reported.waiver.has_value() && !reported.waiver_outdated;
    return row;
}

}  // namespace finding_json_detail

std::string source_text(const analysis::Finding& finding) {
    const auto* rule = analysis::find_rule(finding.rule);
    if (!rule) return {};
    std::string text;
    for (const auto& source : rule->words.sources) text += (text.empty() ? "" : "; ") + source.text();
    return text.empty() ? std::string(rule->words.no_source) : text;
}

std::string findings_json(const model::Design& design, const std::vector<analysis::Reported>& reported,
                          const analysis::Counts& counts, const base::Phrasebook& book) {
    using namespace finding_json_detail;
    Json top;
    top["design"] = design.settings().title;
    top["counts"] = {{"error", counts.error}, {"warning", counts.warning}, {"advice", counts.advice}};
    top["findings"] = Json::array();
    for (const auto& each : reported) top["findings"].push_back(finding_row(each, book));
    return terminal_safe(top.dump(1, ' ', false, Json::error_handler_t::replace));
}

}  // namespace streamwright::app
