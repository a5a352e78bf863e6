// Endpoints set up one by one are work that grows; makers state how many of a family they mean to be run so.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <string>

namespace streamwright::analysis::rules::management_server_missing {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT(
    "%1 endpoints of the family \"%2\", but it is meant to be set up one by one up to %3, and there is no management "
    "server.")};

constexpr RuleWords words{.id = "management-server-missing",
                          .severity = Severity::warning,
                          .theme = Theme::plan,
                          .title = "Too many endpoints without a management server",
                          .meaning = "Names, presets and updates set in each endpoint by hand differ within weeks.",
                          .measured =
                              "The endpoints of each family are counted and held against the number up to which the "
                              "maker means them to be set up one by one.",
                          .remedy = "Plan a management server for the family.",
                          .patterns = patterns,
                          .no_source = "A value of the type; where the type is silent, so is the rule."};

struct Family {
    std::int64_t endpoints = 0;
    std::optional<int> most;  // the smallest that a type of the family states
    std::optional<model::DeviceId> first;
};

std::map<std::string, Family> families_of(const graph::Wiring& wiring) {
    std::map<std::string, Family> families;
    for (const auto& device : wiring.devices) {
        if (!device.type || !device.type->codec) continue;
        auto& family = families[device.type->codec->family];
        ++family.endpoints;
        const auto& most = device.type->codec->most_without_server;
        if (most && (!family.most || *most < *family.most)) family.most = most;
        if (!family.first) family.first = device.row->id;
    }
    return families;
}

void check(const graph::Wiring& wiring, Findings& out) {
    const bool served = std::any_of(wiring.devices.begin(), wiring.devices.end(), [](const auto& device) {
        return device.type && device.type->kind == catalogue::DeviceKind::management_server;
    });
    if (served) return;
    for (const auto& [name, family] : families_of(wiring)) {
        if (!family.most || family.endpoints <= *family.most) continue;
        auto finding =
            found(words.id, Severity::warning, {*family.first}, {family.endpoints, name, std::int64_t{*family.most}});
        finding.measured = family.endpoints;
        finding.limit = std::int64_t{*family.most};
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 placed - %2 without a server = %3 too many"),
                                     {family.endpoints, std::int64_t{*family.most}, family.endpoints - *family.most}));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::management_server_missing
