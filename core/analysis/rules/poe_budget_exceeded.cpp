// A switch hands out power until its budget is reserved; ports beyond that stay dark, whatever devices really draw.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>

namespace streamwright::analysis::rules::poe_budget_exceeded {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 reserves %2 of its PoE budget of %3; %4 of %5 devices start (they would draw %6)."),
    STREAMWRIGHT_TEXT("%1 powers %5 devices (%2 reserved), but its type states no PoE budget for its supplies: whether "
                      "all start is not known."),
    STREAMWRIGHT_TEXT(
        "%1 would reserve %2 of its PoE budget of %3 by class, and %6 by draw; its type does not state which "
        "counts: whether all %5 devices start is not known."),
    STREAMWRIGHT_TEXT("If one of the two supplies of %1 fails, %2 are reserved of the %3 that the other gives: %4 of "
                      "%5 devices keep their power.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clauses 33 and 145 (power at the supplying port)"},
    {"IEEE", "802.3", "clause 79 (watts asked for by LLDP)", standards::Standing::memory},
    {"", "", "order of priority, then of ports", standards::Standing::practice}};

constexpr RuleWords words{.id = "poe-budget-exceeded",
                          .theme = Theme::power,
                          .title = "PoE budget of the switch exceeded",
                          .meaning = "The devices on the last ports stay dark, or drop out when another one starts.",
                          .measured =
                              "The power at the supply of all devices that a switch feeds is added up, by class, by "
                              "draw or by what devices ask for over LLDP, as its settings or its type state, and held "
                              "against the budget of its supplies: one, two added, or one of two where the other "
                              "stands by. Critical ports are served first, then high, then low ones, each by number. "
                              "Where the type does not state enough, or where the second of two added supplies is "
                              "needed, the finding is advice.",
                          .remedy =
                              "Spread the devices over switches, take a switch with a larger budget or a second "
                              "supply, reserve by draw where the switch can, or give some devices their own supply.",
                          .patterns = patterns,
                          .sources = sources};

std::vector<base::Text> terms_of(const graph::Wiring& wiring, const PowerBudget& power, const SwitchPower& supplier) {
    std::map<base::Power, std::int64_t> counts;
    std::vector<base::Ref> dark;
    for (const int feed : supplier.feeds) {
        ++counts[power.feeds[at(feed)].reserved];
        if (!power.feeds[at(feed)].starts) dark.push_back(port_ref(wiring, power.feeds[at(feed)].supply));
    }
    std::vector<base::Text> terms;
    for (auto it = counts.rbegin(); it != counts.rend(); ++it)
        terms.push_back(line(STREAMWRIGHT_TEXT("%1 x %2 = %3"), {it->second, it->first, it->first * it->second}));
    if (!dark.empty()) terms.push_back(line(STREAMWRIGHT_TEXT("without power: %1"), {std::move(dark)}));
    return terms;
}

Finding about(const graph::Wiring& wiring, const PowerBudget& power, const SwitchPower& supplier, base::Power budget,
              Severity severity, int variant) {
    const auto id = device_id(wiring, supplier.device);
    const auto started = static_cast<std::int64_t>(served_by(power, supplier, budget).size());
    auto finding = found(words.id, severity, {id},
                         {named(id), supplier.reserved, budget, started,
                          static_cast<std::int64_t>(supplier.feeds.size()), supplier.drawn},
                         variant);
    finding.measured = supplier.reserved;
    finding.terms = terms_of(wiring, power, supplier);
    return finding;
}

/// What is known of the budget as it stands; nothing where all start.
std::optional<Finding> judge(const graph::Wiring& wiring, const PowerBudget& power, const SwitchPower& supplier) {
    if (!supplier.budget) return about(wiring, power, supplier, {}, Severity::advice, 1);
    const auto budget = *supplier.budget;
    std::optional<Finding> finding;
    if (supplier.reserved > budget) {
        const bool undecided = !supplier.allocation && supplier.drawn <= budget;
        finding = undecided ? about(wiring, power, supplier, budget, Severity::advice, 2)
                            : about(wiring, power, supplier, budget, Severity::error, 0);
        finding->limit = budget;
    } else if (supplier.one_supply && supplier.reserved > *supplier.one_supply) {
        finding = about(wiring, power, supplier, *supplier.one_supply, Severity::advice, 3);
        finding->limit = *supplier.one_supply;
    }
    return finding;
}

void check(const graph::Wiring& wiring, const PowerBudget& power, Findings& out) {
    for (const auto& supplier : power.switches) {
        // An injector states the class of its port, and that is all.
        if (!wiring.devices[at(supplier.device)].type->bridging) continue;
        if (auto finding = judge(wiring, power, supplier)) out.push_back(std::move(*finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::poe_budget_exceeded
