// Some endpoints encode or decode, one at a time; a design may not ask both of them.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::both_roles_at_once {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 is set to encode and to decode, but its type does one at a time."),
    STREAMWRIGHT_TEXT("%1 sends a stream and is subscribed to another, but its type does one at a time.")};

constexpr RuleWords words{.id = "both-roles-at-once",
                          .theme = Theme::signals,
                          .title = "Endpoint asked to encode and decode at once",
                          .meaning =
                              "Whichever role it takes on site, the other half of what was drawn does not work: one "
                              "more endpoint is needed.",
                          .measured =
                              "The roles set on the device, or the streams it sends and the subscriptions it takes, "
                              "against what its type does at one time.",
                          .remedy =
                              "Place a second endpoint, choose a type that does both at once, or give up one of the "
                              "two roles.",
                          .offers = "Let the device encode only, or decode only, where just one of the two is used.",
                          .patterns = patterns,
                          .no_source = "Follows from the roles that the type states."};

std::optional<Remedy> only(const graph::Wiring& wiring, int device, catalogue::Role role) {
    auto row = device_settings(wiring, device);
    row.roles = {role};
    const auto* label = role == catalogue::Role::encoder ? STREAMWRIGHT_TEXT("Let %1 encode only")
                                                         : STREAMWRIGHT_TEXT("Let %1 decode only");
    return Remedy{line(label, {named(row.id)}), model::ConfigureDevice{std::move(row)}};
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto* type = wiring.devices[at(i)].type;
        if (!type || !type->codec || type->codec->roles_at_once || type->codec->roles.size() < 2) continue;
        const auto& row = *wiring.devices[at(i)].row;
        const bool sends = wiring.devices[at(i)].sends, takes = wiring.devices[at(i)].shows;
        const bool set = row.roles.size() > 1;
        if (!set && !(row.roles.empty() && sends && takes)) continue;
        auto finding = found(words.id, Severity::error, {row.id}, {named(row.id)}, set ? 0 : 1);
        if (sends != takes)
            if (auto remedy = only(wiring, i, sends ? catalogue::Role::encoder : catalogue::Role::decoder))
                finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::both_roles_at_once
