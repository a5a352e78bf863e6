#include "core/analysis/report.h"

#include "core/analysis/rule.h"

#include <algorithm>
#include <map>
#include <tuple>
#include <utility>

namespace streamwright::analysis {

namespace report_detail {

std::string waiver_key(const std::string& rule, const std::vector<std::string>& subjects) {
    std::string key = rule;
    for (const auto& subject : subjects) key += ' ' + subject;
    return key;
}

std::string tag_or(const std::string& tag, std::string_view id_text) {
    return tag.empty() ? std::string(id_text) : tag;
}

template <class Row>
const Row* find_row(const model::Table<Row>& table, std::string_view id_text) {
    const auto id = Row::Key::parse(id_text);
    return id ? table.find(*id) : nullptr;
}

std::string port_name(const model::Design& design, std::string_view text) {
    const auto slash = text.find('/');
    const auto* device = find_row(design.devices, text.substr(0, slash));
    if (!device || slash == std::string_view::npos) return std::string(text);
    const model::PortKey key{std::string(text.substr(slash + 1))};
    const auto* set = design.port_overrides.find({device->id, key});
    const auto* type = design.type_of(*device);
    const auto* port = type ? type->find_port(key) : nullptr;
    std::string label = key.text;
    if (set && !set->label.empty())
        label = set->label;
    else if (port && !port->label.empty())
        label = port->label;
    return device->tag + ' ' + label;
}

std::string input_name(const model::Design& design, const model::Subscription& row) {
    const auto* device = design.devices.find(row.decoder);
    const auto* preset = design.presets.find(row.preset);
    return (device ? device->tag : row.decoder.text()) + ' ' + row.input.text +
           (preset ? " (" + preset->name + ')' : std::string());
}

std::string vlan_name(const model::Vlan& vlan) {
    return "VLAN " + std::to_string(vlan.vid) + (vlan.name.empty() ? std::string() : ' ' + vlan.name);
}

/// The present name of a row; its id where the row is gone.
std::string name_of(const model::Design& design, const base::Ref& ref) {
    const std::string_view text = ref.text;
    const auto colon = text.find(':');
    if (colon == std::string_view::npos) return ref.text;
    const auto kind = text.substr(0, colon);
    const auto id = text.substr(colon + 1);
    if (kind == "port") return port_name(design, id);
    if (kind == "device")
        if (const auto* row = find_row(design.devices, id)) return tag_or(row->tag, id);
    if (kind == "cable")
        if (const auto* row = find_row(design.cables, id)) return tag_or(row->tag, id);
    if (kind == "stream")
        if (const auto* row = find_row(design.streams, id)) return tag_or(row->tag, id);
    if (kind == "preset")
        if (const auto* row = find_row(design.presets, id)) return tag_or(row->name, id);
    if (kind == "vlan")
        if (const auto* row = find_row(design.vlans, id)) return vlan_name(*row);
    if (kind == "wall")
        if (const auto* row = find_row(design.walls, id)) return tag_or(row->name, id);
    if (kind == "room")
        if (const auto* row = find_row(design.rooms, id))
            return tag_or(row->name.empty() ? row->number : row->name, id);
    if (kind == "subscription")
        if (const auto* row = find_row(design.subscriptions, id)) return input_name(design, *row);
    return ref.text;
}

}  // namespace report_detail

std::vector<Reported> report(const model::Design& design, const std::vector<Finding>& findings) {
    std::map<std::string, const model::Waiver*> waivers;
    for (const auto& waiver : design.waivers) {
        auto& best = waivers[report_detail::waiver_key(waiver.rule, waiver.subjects)];
        if (!best || best->rule_revision < waiver.rule_revision) best = &waiver;
    }
    std::vector<std::pair<std::string, Reported>> keyed;
    keyed.reserve(findings.size());
    for (const auto& finding : findings) {
        Reported entry{finding, {}, false};
        auto key = finding.key();
        if (const auto found = waivers.find(key); found != waivers.end()) {
            const auto* rule = find_rule(finding.rule);
            entry.waiver_outdated = rule && found->second->rule_revision < rule->words.revision;
            entry.waiver = found->second->id;
        }
        keyed.emplace_back(std::move(key), std::move(entry));
    }
    std::stable_sort(keyed.begin(), keyed.end(), [](const auto& a, const auto& b) {
        return std::tie(a.second.finding.severity, a.second.finding.rule, a.first) <
               std::tie(b.second.finding.severity, b.second.finding.rule, b.first);
    });
    std::vector<Reported> reported;
    reported.reserve(keyed.size());
    for (auto& [key, entry] : keyed) reported.push_back(std::move(entry));
    return reported;
}

Counts count(const std::vector<Reported>& reported) {
    Counts counts;
    for (const auto& entry : reported) {
        if (entry.waiver && !entry.waiver_outdated) continue;
        if (entry.finding.severity == Severity::error) ++counts.error;
        if (entry.finding.severity == Severity::warning) ++counts.warning;
        if (entry.finding.severity == Severity::advice) ++counts.advice;
    }
    return counts;
}

std::string sentence(const Finding& finding, const base::Phrasebook& book) {
    const auto* rule = find_rule(finding.rule);
    const auto at = static_cast<std::size_t>(finding.variant);
    if (!rule || finding.variant < 0 || at >= rule->words.patterns.size()) return std::string(finding.rule);
    return base::fill({std::string(rule->words.patterns[at]), finding.values}, book);
}

base::Phrasebook english(const model::Design& design) {
    base::Phrasebook book;
    book.name = [design](const base::Ref& ref) { return report_detail::name_of(design, ref); };
    if (design.settings().imperial) book.numbers.system = base::UnitSystem::imperial;
    return book;
}

}  // namespace streamwright::analysis
